import { spawnSync } from 'node:child_process';
import { rmSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { benchLibrary } from './bench-library.ts';
import { machineLine, report } from './measure.ts';
import { writeArchiveCsv } from './weather-file.ts';

// Import of a million reports, with all checks, by the program's own request and thread into a library on the disk,
// beside `sqlite3 .import` of the same file in the same run; and how long a save waits meanwhile.
const ROWS = 1_000_000;
const ROUNDS = 5;

console.log(machineLine());
const { folder, path } = await writeArchiveCsv(ROWS);
const place = { name: 'Bench', identifier: null, latitudeDeg: 40, longitudeDeg: -105, elevationM: 1600 };
const median = (values: number[]) => values.toSorted((a, b) => a - b)[Math.floor(values.length / 2)] ?? NaN;

try {
  const ours: number[] = [];
  const theirs: number[] = [];
  const waits: number[] = [];
  let bytesARow = NaN;
  for (let round = -1; round < ROUNDS; round += 1) {
    const file = join(folder, `bench-${String(round)}.tarewing`);
    const { db, ask, close } = await benchLibrary(file);
    const emptyBytes = statSync(file).size;
    const begun = performance.now();
    const importing = ask('weather.import', { path, station: { place } });
    let isDone = false;
    void importing.finally(() => (isDone = true));
    // A save every 20 ms, as soon as the writing thread is free: from the wish to its commit.
    let saves = 0;
    while (!isDone) {
      const wishedMs = performance.now();
      await new Promise((resolve) => setImmediate(resolve));
      const saved = await ask('settings.put', { key: 'bench', value: saves, named: 'bench' });
      if (!saved.ok) throw new Error(saved.problem.sentence);
      if (round >= 0) waits.push(performance.now() - wishedMs);
      saves += 1;
      await new Promise((resolve) => setTimeout(resolve, 20));
    }
    const answer = await importing;
    if (!answer.ok) throw new Error(answer.problem.sentence);
    if (round >= 0) ours.push(performance.now() - begun);
    db.pragma('wal_checkpoint(TRUNCATE)');
    bytesARow = (statSync(file).size - emptyBytes) / ROWS;
    close();

    const rival = join(folder, 'rival.db');
    const rivalBegun = performance.now();
    const { status } = spawnSync('sqlite3', [rival, '.mode csv', `.import ${path} observation`]);
    if (status === 0 && round >= 0) theirs.push(performance.now() - rivalBegun);
    rmSync(rival, { force: true });
  }
  const ms = median(ours);
  if (theirs.length === 0) console.log('sqlite3 is not at hand: the comparison with it is skipped');
  const against = theirs.length === 0 ? {} : { against: 'sqlite3 .import', ratio: ms / median(theirs) };
  report(
    `import: ${Math.round(ROWS / (ms / 1000)).toString()} rows a second (median ${ms.toFixed(0)} ms)` +
      (theirs.length === 0
        ? ''
        : `; sqlite3 .import ${median(theirs).toFixed(0)} ms, ratio ${(ms / median(theirs)).toFixed(2)}, at most 0.25 wanted`),
    { name: 'weather import', value: ROWS / (ms / 1000), unit: 'rows/s', ...against, n: ROWS },
  );
  report(`in the file: ${bytesARow.toFixed(1)} bytes an observation, at most 20 wanted`, {
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
