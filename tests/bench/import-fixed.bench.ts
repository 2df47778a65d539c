import { spawnSync } from 'node:child_process';
import { createWriteStream } from 'node:fs';
import { mkdtemp, rm } from 'node:fs/promises';
import { rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { once } from 'node:events';
import { benchLibrary } from './bench-library.ts';
import { duckdbRival } from './duckdb-rival.ts';
import { machineLine, report, seeded } from './measure.ts';

// Import of a million fixed-width records of the Integrated Surface Data, with all checks, by the program's own request,
// beside `sqlite3 .import`, and DuckDB into a keyed table, of the same values as CSV, converted beforehand because neither
// can read the kind.
const ROWS = 1_000_000;
const ROUNDS = 5;
const place = { name: 'Bench', identifier: null, latitudeDeg: 40, longitudeDeg: -105, elevationM: 1600 };
/** Those that the reader takes. */
const columns = {
  station: 'VARCHAR',
  time: 'BIGINT',
  temperature: 'INTEGER',
  dew_point: 'INTEGER',
  sea_level: 'INTEGER',
  altimeter: 'INTEGER',
  station_pressure: 'INTEGER',
  direction: 'INTEGER',
  speed: 'INTEGER',
  gust: 'INTEGER',
  latitude: 'INTEGER',
  longitude: 'INTEGER',
  elevation: 'INTEGER',
  type: 'VARCHAR',
};
const median = (values: number[]) => values.toSorted((a, b) => a - b)[Math.floor(values.length / 2)] ?? NaN;

console.log(machineLine());
const folder = await mkdtemp(join(tmpdir(), 'tarewing-bench-'));
const path = join(folder, 'records.txt');
const csvPath = join(folder, 'records.csv');
try {
  await writeRecords();
  const duckdb = await duckdbRival();
  const duckdbTimes: number[] = [];
  const ours: number[] = [];
  const again: number[] = [];
  const theirs: number[] = [];
  for (let round = -1; round < ROUNDS; round += 1) {
    const library = await benchLibrary(join(folder, `bench-${String(round)}.tarewing`));
    for (const times of [ours, again]) {
      const station: unknown =
        times === ours
          ? { place }
          : { stationId: library.db.prepare<[], string>('SELECT id FROM weather_station').pluck().get() };
      const begun = performance.now();
      const answer = await library.ask('weather.import', { path, station });
      if (!answer.ok) throw new Error(answer.problem.sentence);
      if (round >= 0) times.push(performance.now() - begun);
    }
    library.close();
    const rival = join(folder, 'rival.db');
    const begun = performance.now();
    const { status } = spawnSync('sqlite3', [rival, '.mode csv', `.import ${csvPath} observation`]);
    if (status === 0 && round >= 0) theirs.push(performance.now() - begun);
    rmSync(rival, { force: true });
    if (duckdb !== null) {
      const ms = await duckdb.importMs(join(folder, 'rival.duckdb'), csvPath, columns, ['station', 'time']);
      if (round >= 0) duckdbTimes.push(ms);
    }
  }
  const without = theirs.length === 0;
  if (without) console.log('sqlite3 is not at hand: the comparison with it is skipped');
  for (const [name, times, wanted] of [
    ['import of fixed width', ours, 0.2],
    ['the same again', again, 0.1],
  ] as const) {
    const ms = median(times);
    report(
      `${name}: ${Math.round(ROWS / (ms / 1000)).toString()} rows a second (median ${ms.toFixed(0)} ms)` +
        (without
          ? ''
          : `; sqlite3 .import ${median(theirs).toFixed(0)} ms, ratio ${(ms / median(theirs)).toFixed(2)}, at most ${String(wanted)} wanted`),
      {
        name,
        value: ROWS / (ms / 1000),
        unit: 'rows/s',
        ...(without ? {} : { against: 'sqlite3 .import', ratio: ms / median(theirs) }),
        n: ROWS,
      },
    );
  }
  if (duckdbTimes.length > 0)
    report(
      `import of fixed width: ${(median(ours) / median(duckdbTimes)).toFixed(2)} of DuckDB into a keyed table (median ${median(duckdbTimes).toFixed(0)} ms)`,
      {
        name: 'import of fixed width',
        value: ROWS / (median(ours) / 1000),
        unit: 'rows/s',
        against: 'DuckDB into a keyed table',
        ratio: median(ours) / median(duckdbTimes),
        n: ROWS,
      },
    );
} finally {
  await rm(folder, { recursive: true, force: true });
}

/** Invented records, some 250 bytes each as real ones are, one an hour without end, and the values in them as CSV. */
async function writeRecords(): Promise<void> {
  const random = seeded(11);
  const fixed = createWriteStream(path);
  const csv = createWriteStream(csvPath);
  const digits = (value: number, count: number) => String(Math.abs(Math.round(value))).padStart(count, '0');
  const signed = (value: number, count: number) => (value < 0 ? '-' : '+') + digits(value, count);
  csv.write(
    'station,time,temperature,dew_point,sea_level,altimeter,station_pressure,direction,speed,gust,latitude,longitude,elevation,type\n',
  );
  for (let row = 0; row < ROWS; row += 1) {
    const time = new Date(Date.UTC(1905, 0, 1, 0, 53) + row * 3_600_000)
      .toISOString()
      .replace(/[-T:]/g, '')
      .slice(0, 12);
    // A day's course, so that values do not stand alone as a spoilt record's would.
    const temperature = Math.round(100 + 80 * Math.sin((row / 24) * 2 * Math.PI) + 20 * random());
    const dewPoint = temperature - Math.round(150 * random());
    const setting = Math.round(10_150 + 100 * Math.sin(row / 40) + 10 * random());
    const direction = 10 + Math.round(35 * random()) * 10;
    const speed = Math.round(120 * random());
    const gust = speed + 40;
    const groups = `ADDAA101000095GA1045+036585999GA2075+060965999GD12991+0365859GF107991999999999999999999MA1${digits(setting, 5)}5${digits(setting - 1800, 5)}5OC1${digits(gust, 4)}5REMMET09201/01/10 20:53:01 METAR KBEN 020353Z 24006KT 10SM SCT120 BKN200 M04/M09 A3014 RMK AO2 T10391089`;
    const mandatory =
      `725650030177${''}`.slice(0, 11) +
      time +
      '7+39833-104650FM-15+1655KBEN V030' +
      `${digits(direction, 3)}5N${digits(speed, 4)}5` +
      '06096' +
      '5M' +
      'N' +
      '0160935N5' +
      `${signed(temperature, 4)}5${signed(dewPoint, 4)}5${digits(setting + 20, 5)}5`;
    fixed.write(`${String(groups.length).padStart(4, '0')}${mandatory}${groups}\n`);
    if (
      !csv.write(
        `72565003017,${time},${String(temperature)},${String(dewPoint)},${String(setting + 20)},${String(setting)},${String(setting - 1800)},${String(direction)},${String(speed)},${String(gust)},39833,-104650,1655,FM-15\n`,
      )
    )
      await once(csv, 'drain');
  }
  fixed.end();
  csv.end();
  await Promise.all([once(fixed, 'finish'), once(csv, 'finish')]);
}
