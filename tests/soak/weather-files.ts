import { existsSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { missing, type ColumnName, type MonthBlock } from '../../main/store/observation-columns.ts';
import { readHead } from '../../main/weather-import/content.ts';
import { FileProblem } from '../../main/weather-import/file-problem.ts';
import type { Mapping } from '../../main/weather-import/mapped/mapping.ts';
import { propose } from '../../main/weather-import/mapped/propose.ts';
import { tableHead } from '../../main/weather-import/mapped/table-head.ts';
import { scanFile } from '../../main/weather-import/scan.ts';

// Every real file of the folder of samples beside the project, read whole: rows kept, rows usable and monthly medians
// against weather-files.json, which weather-files.py computed by other means. Skipped where the folder is not there.

interface Expected {
  observations: number;
  usable: number;
  months: Record<string, Record<string, number | null>>;
}

const folder =
  process.env['WEATHER_SAMPLES'] ?? fileURLToPath(new URL('../../../shared/weather', import.meta.url));
const expected = JSON.parse(readFileSync(new URL('./weather-files.json', import.meta.url), 'utf8')) as Record<
  string,
  Expected
>;

const columns: [field: string, column: ColumnName, offset: number][] = [
  ['t', 'temperatureC100', 0],
  ['td', 'dewPointC100', 0],
  ['alti', 'altimeterSettingHpa100', 100_000],
  ['slp', 'seaLevelPressureHpa100', 100_000],
  ['p', 'stationPressureHpa100', 80_000],
  ['speed', 'windSpeedMs100', 0],
  ['gust', 'gustMs100', 0],
];
/** Hundredths are kept, rounded: half of one, and the rounding of the figures to compare with. */
const tolerance = 0.0051;

let passed = 0;
let failed = 0;
let skipped = 0;
for (const [name, want] of Object.entries(expected)) {
  const path = `${folder}/${name}`;
  if (!existsSync(path)) {
    console.log(`skipped   ${name}: not there`);
    skipped++;
    continue;
  }
  const wrong = await differences(path, want);
  console.log(
    `${wrong.length === 0 ? 'met      ' : 'not met  '} ${name}${wrong.length === 0 ? '' : `: ${wrong.slice(0, 5).join('; ')}`}`,
  );
  if (wrong.length === 0) passed++;
  else failed++;
}
console.log(`${String(passed)} passed, ${String(failed)} failed, ${String(skipped)} skipped`);
process.exitCode = failed === 0 ? 0 : 1;

async function differences(path: string, want: Expected): Promise<string[]> {
  const months = new Map<string, MonthBlock[]>();
  const mapping = await mappingFor(path);
  const summary = await scanFile(
    { path },
    {
      ...(mapping === null ? {} : { mapping }),
      onBlocks: (blocks) => {
        for (const block of blocks) {
          const month = new Date(block.monthStartEpochS * 1000).toISOString().slice(0, 7);
          months.set(month, [...(months.get(month) ?? []), block]);
        }
      },
    },
  );
  const wrong: string[] = [];
  const compare = (what: string, got: number | null, wanted: number | null, within: number) => {
    if (got === null || wanted === null ? got !== wanted : Math.abs(got - wanted) > within)
      wrong.push(`${what} is ${String(got)}, by other means ${String(wanted)}`);
  };
  compare('rows kept', summary.observationCount, want.observations, 0);
  compare('usable rows', summary.usableCount, want.usable, 0);
  if (Object.keys(want.months).length === 0) return wrong;
  for (const month of new Set([...months.keys(), ...Object.keys(want.months)])) {
    const blocks = months.get(month) ?? [];
    const wanted = want.months[month];
    compare(
      `rows of ${month}`,
      blocks.reduce((sum, block) => sum + block.observationCount, 0),
      wanted?.['count'] ?? null,
      0,
    );
    for (const [field, column, offset] of columns) {
      const values = blocks
        .flatMap((block) => [...(block.columns[column] ?? [])])
        .filter((value) => value !== missing)
        .map((value) => (value + offset) / 100);
      compare(`median ${column} of ${month}`, median(values), wanted?.[field] ?? null, tolerance);
    }
  }
  return wrong;
}

/** Tables are read as they are proposed, and the model export at UTC-4, which a person has to say. */
async function mappingFor(path: string): Promise<Mapping | null> {
  try {
    await scanFile({ path });
    return null;
  } catch (error) {
    if (!(error instanceof FileProblem) || error.need !== 'mapping-needed') throw error;
  }
  const table = tableHead(await readHead({ path }, 1 << 20));
  const mapping = table === null ? null : propose(table, path).mapping;
  if (mapping === null) return null;
  return mapping.nature === 'model' ? { ...mapping, zone: { kind: 'offset', minutes: -240 } } : mapping;
}

function median(values: number[]): number | null {
  if (values.length === 0) return null;
  const sorted = values.toSorted((a, b) => a - b);
  const middle = sorted.length >> 1;
  const upper = sorted[middle] ?? NaN;
  return sorted.length % 2 === 1 ? upper : ((sorted[middle - 1] ?? NaN) + upper) / 2;
}
