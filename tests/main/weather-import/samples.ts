import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { scanFile, type ScanOptions, type ScanSummary } from '../../../main/weather-import/scan.ts';
import { missing, type MonthBlock } from '../../../main/store/observation-columns.ts';

/** Path of a short real sample (tests/samples/weather/README.md). */
export function sample(name: string): string {
  return fileURLToPath(new URL(`../../samples/weather/${name}`, import.meta.url));
}

/** A file with that content, in a folder of its own, or in one folder that files of a series share, each over the last. */
export function fileWith(content: string | Uint8Array, name = 'weather.csv', series?: string): string {
  const folder =
    series === undefined ? newFolder('weather') : (seriesFolders.get(series) ?? newFolder(series));
  if (series !== undefined) seriesFolders.set(series, folder);
  const path = join(folder, name);
  writeFileSync(path, content);
  return path;
}
const seriesFolders = new Map<string, string>();

const folders: string[] = [];

/** Removed when the process ends; Vitest ends its own without a word, and removes them with its temporary folder. */
function newFolder(series: string): string {
  if (folders.length === 0)
    process.once('exit', () => {
      for (const each of folders) rmSync(each, { recursive: true, force: true });
    });
  const folder = mkdtempSync(join(tmpdir(), `tarewing-${series}-`));
  folders.push(folder);
  return folder;
}

/** One observation in plain units, undefined where not reported. */
export interface Plain {
  epochS: number;
  temperatureC?: number;
  dewPointC?: number;
  altimeterSettingHpa?: number;
  seaLevelPressureHpa?: number;
  stationPressureHpa?: number;
  windFromDeg?: number;
  windSpeedMs?: number;
  gustMs?: number;
  flags: number;
}

export async function scanAll(
  path: string,
  stationInFile?: string,
  others: Omit<ScanOptions, 'stationInFile' | 'onBlocks'> = {},
): Promise<{ summary: ScanSummary; rows: Plain[]; blocks: MonthBlock[] }> {
  const blocks: MonthBlock[] = [];
  const summary = await scanFile(
    { path },
    {
      ...others,
      stationInFile,
      onBlocks: (some) => {
        blocks.push(...some);
      },
    },
  );
  return { summary, blocks, rows: blocks.flatMap(plain) };
}

function plain(block: MonthBlock): Plain[] {
  const { columns } = block;
  return Array.from(block.minuteOfMonth, (minute, i) => {
    const value = (column: Int16Array | null, offset: number, scale: number) => {
      const stored = column?.[i] ?? missing;
      return stored === missing ? {} : { value: (stored + offset) * scale };
    };
    const row: Plain = {
      epochS: block.monthStartEpochS + 60 * minute,
      flags: columns.flags?.[i] ?? 0,
    };
    const put = (key: Exclude<keyof Plain, 'epochS' | 'flags'>, found: { value?: number }) => {
      if (found.value !== undefined) row[key] = found.value;
    };
    put('temperatureC', value(columns.temperatureC100, 0, 0.01));
    put('dewPointC', value(columns.dewPointC100, 0, 0.01));
    put('altimeterSettingHpa', value(columns.altimeterSettingHpa100, 100_000, 0.01));
    put('seaLevelPressureHpa', value(columns.seaLevelPressureHpa100, 100_000, 0.01));
    put('stationPressureHpa', value(columns.stationPressureHpa100, 80_000, 0.01));
    put('windFromDeg', value(columns.windFromDeg, 0, 1));
    put('windSpeedMs', value(columns.windSpeedMs100, 0, 0.01));
    put('gustMs', value(columns.gustMs100, 0, 0.01));
    return row;
  });
}

export function utc(text: string): number {
  return Date.parse(`${text}Z`) / 1000;
}
