import { spawnSync } from 'node:child_process';
import { createReadStream, createWriteStream, rmSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { pipeline } from 'node:stream/promises';
import { createGzip } from 'node:zlib';
import { benchLibrary, type BenchLibrary } from './bench-library.ts';
import { duckdbRival } from './duckdb-rival.ts';
import { machineLine, report } from './measure.ts';
import { writeArchiveCsv } from './weather-file.ts';

// Import of a million reports as CSV, with all checks, by the program's own request and thread into a library on the
// disk; the same again; and the same packed. Beside `sqlite3 .import` of all columns and DuckDB reading the columns that
// count into a keyed table, round by round. And how long a save waits meanwhile.
const ROWS = 1_000_000;
const ROUNDS = 5;
/** The columns that the reader takes. */
const columns = {
  station: 'VARCHAR',
  valid: 'TIMESTAMP',
  tmpf: 'DOUBLE',
  dwpf: 'DOUBLE',
  drct: 'DOUBLE',
  sknt: 'DOUBLE',
  alti: 'DOUBLE',
  mslp: 'DOUBLE',
  gust: 'DOUBLE',
};

console.log(machineLine());
const { folder, path } = await writeArchiveCsv(ROWS);
const packedPath = join(folder, 'archive.csv.gz');
await pipeline(createReadStream(path), createGzip({ level: 6 }), createWriteStream(packedPath));
const place = { name: 'Bench', identifier: null, latitudeDeg: 40, longitudeDeg: -105, elevationM: 1600 };
const median = (values: readonly number[]) =>
  values.toSorted((a, b) => a - b)[Math.floor(values.length / 2)] ?? NaN;

try {
  const duckdb = await duckdbRival();
  const times = { first: [], again: [], packed: [], inflating: [], sqlite: [], duckdb: [] } as Record<
    'first' | 'again' | 'packed' | 'inflating' | 'sqlite' | 'duckdb',
    number[]
  >;
  const waits: number[] = [];
  let bytesARow = NaN;
  for (let round = -1; round < ROUNDS; round += 1) {
    const note = (way: keyof typeof times, ms: number) => {
      if (round >= 0) times[way].push(ms);
    };
    const file = join(folder, `bench-${String(round)}.tarewing`);
    const library = await benchLibrary(file);
    const emptyBytes = statSync(file).size;
    note('first', await importMs(library, { path, station: { place } }));
    library.db.pragma('wal_checkpoint(TRUNCATE)');
    bytesARow = (statSync(file).size - emptyBytes) / ROWS;
    const stationId = library.db.prepare<[], string>('SELECT id FROM weather_station').pluck().get();
    note('again', await importMs(library, { path, station: { stationId } }));
    library.close();

    const packed = await benchLibrary(file);
    note('packed', await importMs(packed, { path: packedPath, station: { place } }));
    packed.close();
    const inflated = performance.now();
    spawnSync('gzip', ['-dc', packedPath], { stdio: ['ignore', 'ignore', 'ignore'] });
    note('inflating', performance.now() - inflated);

    // The waits are taken in an import of their own, so that the saves weigh on no other figure.
    const saved = await benchLibrary(file);
    await savesDuring(saved, round >= 0 ? waits : []);
    saved.close();

    const rival = join(folder, 'rival.db');
    const begun = performance.now();
    const { status } = spawnSync('sqlite3', [rival, '.mode csv', `.import ${path} observation`]);
    if (status === 0) note('sqlite', performance.now() - begun);
    rmSync(rival, { force: true });
    if (duckdb !== null)
      note(
        'duckdb',
        await duckdb.importMs(join(folder, 'rival.duckdb'), path, columns, ['station', 'valid']),
      );
  }
  if (times.sqlite.length === 0) console.log('sqlite3 is not at hand: the comparison with it is skipped');
  tell('import of CSV', times.first, [
    ['sqlite3 .import', times.sqlite, 0.15],
    ['DuckDB into a keyed table', times.duckdb, 0.4],
  ]);
  tell('the same CSV again', times.again, [['sqlite3 .import', times.sqlite, 0.1]]);
  const packedMs = median(times.packed) - median(times.first);
  report(
    `the same CSV as gzip: median ${median(times.packed).toFixed(0)} ms, ${packedMs.toFixed(0)} ms more; gzip -dc alone ${median(times.inflating).toFixed(0)} ms, no more wanted`,
    {
      name: 'gzip on top of the import',
      value: packedMs,
      unit: 'ms',
      against: 'gzip -dc',
      ratio: packedMs / median(times.inflating),
      n: ROWS,
    },
  );
  report(`in the file: ${bytesARow.toFixed(1)} bytes an observation, at most 22 wanted`, {
    name: 'bytes an observation',
    value: bytesARow,
    unit: 'B',
    n: ROWS,
  });
  const worst = Math.max(...waits);
  report(
    `a save during an import: median ${median(waits).toFixed(1)} ms, longest ${worst.toFixed(1)} ms of ${String(waits.length)}, at most 20 wanted`,
    { name: 'longest save during an import', value: worst, unit: 'ms', n: waits.length },
  );
} finally {
  rmSync(folder, { recursive: true, force: true });
}

async function importMs(library: BenchLibrary, input: object): Promise<number> {
  const begun = performance.now();
  const answer = await library.ask('weather.import', input);
  if (!answer.ok) throw new Error(answer.problem.sentence);
  return performance.now() - begun;
}

/** A save every 20 ms, as soon as the writing thread is free: from the wish to its commit. */
async function savesDuring(library: BenchLibrary, waitsMs: number[]): Promise<void> {
  const importing = library.ask('weather.import', { path, station: { place } });
  let isDone = false;
  void importing.finally(() => (isDone = true));
  for (let saves = 0; !isDone; saves += 1) {
    const wishedMs = performance.now();
    await new Promise((resolve) => setImmediate(resolve));
    const saved = await library.ask('settings.put', { key: 'bench', value: saves, named: 'bench' });
    if (!saved.ok) throw new Error(saved.problem.sentence);
    waitsMs.push(performance.now() - wishedMs);
    await new Promise((resolve) => setTimeout(resolve, 20));
  }
  const answer = await importing;
  if (!answer.ok) throw new Error(answer.problem.sentence);
}

function tell(
  name: string,
  ours: readonly number[],
  rivals: readonly (readonly [name: string, times: readonly number[], wanted: number])[],
): void {
  const ms = median(ours);
  const rate = `${Math.round(ROWS / (ms / 1000)).toString()} rows a second (median ${ms.toFixed(0)} ms)`;
  for (const [against, theirs, wanted] of rivals) {
    if (theirs.length === 0) continue;
    const ratio = ms / median(theirs);
    report(
      `${name}: ${rate}; ${against} ${median(theirs).toFixed(0)} ms, ratio ${ratio.toFixed(2)}, at most ${String(wanted)} wanted`,
      { name, value: ROWS / (ms / 1000), unit: 'rows/s', against, ratio, n: ROWS },
    );
  }
  if (rivals.every(([, theirs]) => theirs.length === 0))
    report(`${name}: ${rate}`, { name, value: ROWS / (ms / 1000), unit: 'rows/s', n: ROWS });
}
