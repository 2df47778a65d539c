import { writeFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { sweepUnfinishedImports } from '../../../main/store/weather-imports.ts';
import { fileLibrary } from '../file-library.ts';
import { seededDraw } from '../requests/undo/draw.ts';
import { temporaryFolder } from '../store/temporary-folder.ts';
import { runUntilKilled } from './killed.ts';

const folder = temporaryFolder();

/** Three years of hourly rows in the archive's layout: 36 months, so that an import has several commits. */
function threeYears(path: string): number {
  const rows: string[] = [];
  for (let epochS = Date.UTC(2021, 0, 1) / 1000; epochS < Date.UTC(2024, 0, 1) / 1000; epochS += 3600) {
    const valid = new Date(epochS * 1000).toISOString().slice(0, 16).replace('T', ' ');
    rows.push(`STRP,${valid},${String(40 + (rows.length % 50))}.0,35.0,30.02`);
  }
  writeFileSync(path, `station,valid,tmpf,dwpf,alti\n${rows.join('\n')}\n`);
  return rows.length;
}

interface Left {
  /** Imports that a person finds. */
  importsCount: number;
  unfinishedCount: number;
}

/** Open what a killed process left, as the next start does: every observation of an import is there, or none. */
async function soundLibrary(path: string, rowsCount: number): Promise<Left> {
  const library = await fileLibrary(path);
  const count = (sql: string) =>
    (library.db.prepare<[], { n: number }>(`SELECT count(*) AS n FROM ${sql}`).get() ?? { n: -1 }).n;
  expect(library.db.pragma('integrity_check', { simple: true })).toBe('ok');
  expect(library.db.pragma('foreign_key_check')).toEqual([]);
  // Even before the sweep nothing of a half import can be seen.
  const imports = (await library.ask('weather.imports', {})) as { observationCount: number }[];
  expect(imports.map((each) => each.observationCount)).toEqual(imports.map(() => rowsCount));
  expect(count('observation')).toBe(imports.length * rowsCount);
  const unfinishedCount = sweepUnfinishedImports(library.db);
  expect(count('weather_import')).toBe(imports.length);
  expect(count('weather_station')).toBe(imports.length);
  if (imports.length === 0) expect(count('observation_block')).toBe(0);
  library.close();
  return { importsCount: imports.length, unfinishedCount };
}

test('kill -9 around every commit of an import and at random instants, 20 times: it is there whole or not at all, and what was left is swept', async () => {
  const path = folder.join('mine.tarewing');
  const file = folder.join('strip.csv');
  const rowsCount = threeYears(file);
  const draw = seededDraw(20_261_125);
  const left: Left[] = [];
  const kill = async (args: string[], killAfterMs: number | null) => {
    await runUntilKilled('importer.ts', [path, file, ...args], killAfterMs);
    left.push(await soundLibrary(path, rowsCount));
  };
  // Commit 1 begins the import, 2 to 7 put six months away each, the next ones take it back and begin again.
  (await fileLibrary(path)).close();
  for (let commit = 1; commit <= 7; commit++) {
    await kill(['before', String(commit)], null);
    await kill(['after', String(commit)], null);
  }
  expect(left.filter(({ unfinishedCount }) => unfinishedCount > 0).length).toBeGreaterThanOrEqual(12);
  for (let run = 0; run < 6; run++) await kill([], 1 + draw.below(400));
  expect(left).toHaveLength(20);
}, 120_000);
