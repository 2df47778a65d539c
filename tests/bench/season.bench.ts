import Database from 'better-sqlite3';
import { fieldDensityAltitudeInto } from '../../shared-calc/climate/field-density-altitude-into.ts';
import {
  CELLS,
  seasonBeyond,
  seasonCells,
  seasonOrder,
  seasonQuantiles,
  seasonWorst,
  type SeasonOrder,
} from '../../shared-calc/climate/season.ts';
import { inTurn, report, seeded, spreadOf } from './measure.ts';

// The season picture over a million hours, exact quantiles in 288 cells: a new limit, a new figure or month window, a new
// elevation. Beside it the plain query of a database that holds month, hour and density altitude already, and for the new
// elevation the plain row-by-row sum.

const ELEVATION_M = 1372;
const random = seeded(3);
const make = (n: number) => {
  const localHour = Int32Array.from({ length: n }, (_, i) => i - 400_000);
  const course = (hour: number) =>
    Math.sin((hour / 24) * 2 * Math.PI) + Math.sin((hour / 8766) * 2 * Math.PI);
  const temperatureC = Float64Array.from(
    localHour,
    (hour) => Math.round(140 + 90 * course(hour) + 60 * random()) / 10,
  );
  return {
    localHour,
    temperatureC,
    dewPointC: temperatureC.map((each) => Math.round(10 * each - 150 * random()) / 10),
    settingHpa: temperatureC.map(() => Math.round(99_500 + 4_000 * random()) / 100),
    densityAltitudeM: new Float64Array(n),
  };
};
type Hours = ReturnType<typeof make>;
const altitudes = ({ densityAltitudeM, settingHpa, temperatureC, dewPointC }: Hours, elevationM: number) => {
  fieldDensityAltitudeInto(densityAltitudeM, settingHpa, temperatureC, dewPointC, elevationM);
  return densityAltitudeM;
};
const picture = (hours: Hours, order: SeasonOrder) => {
  const cells = seasonCells(order, hours.densityAltitudeM);
  return [seasonQuantiles(cells, [0.5, 0.9]), seasonWorst(cells, 'up')];
};

const N = 1_000_000;
const hours = make(N);
altitudes(hours, ELEVATION_M);
const order = seasonOrder(hours.localHour);
const cells = seasonCells(order, hours.densityAltitudeM);
let limit = 2000;
let elevationM = ELEVATION_M;
const ours = inTurn(
  {
    limit: () => seasonBeyond(cells, (limit += 1), 'up'),
    figure: () => picture(hours, order),
    elevation: () => {
      altitudes(hours, (elevationM += 1));
      return picture(hours, order);
    },
  },
  15,
);

const db = new Database(':memory:');
db.exec('CREATE TABLE hour (cell INTEGER NOT NULL, density_altitude_m REAL NOT NULL)');
const insert = db.prepare('INSERT INTO hour VALUES (?, ?)');
db.transaction(() => {
  for (let cell = 0; cell < CELLS; cell++)
    for (let i = cells.starts[cell] ?? 0; i < (cells.starts[cell + 1] ?? 0); i++)
      insert.run(cell, cells.values[i]);
})();
const beyond = db.prepare('SELECT cell, count(*), sum(density_altitude_m > ?) FROM hour GROUP BY cell');
// The R-7 quantile lies between two places of the sorted cell; both are read.
const quantiles = db.prepare(
  `SELECT cell, density_altitude_m, place, days FROM (
     SELECT cell, density_altitude_m, row_number() OVER (PARTITION BY cell ORDER BY density_altitude_m) AS place,
            count(*) OVER (PARTITION BY cell) AS days FROM hour)
   WHERE place IN (1 + (days - 1) / 2, 2 + (days - 1) / 2, 1 + (days - 1) * 9 / 10, 2 + (days - 1) * 9 / 10, days)`,
);
const rival = inTurn({ limit: () => beyond.all(2000) }, 5);
const rivalQuantilesMs = [0, 1, 2].map(() => {
  const begun = performance.now();
  quantiles.all();
  return performance.now() - begun;
});
db.close();

const line = (name: string, mine: number, against: string, theirs: number, n = N) => {
  report(`${name}: ${mine.toFixed(2)} ms; ${against}: ${theirs.toFixed(0)} ms`, {
    name,
    value: mine,
    unit: 'ms',
    against,
    ratio: mine / theirs,
    n,
  });
};
const query = 'the plain query of an SQLite table of cells and altitudes';
const theirsMs = spreadOf(rivalQuantilesMs).medianMs;
line('a new limit on a season of a million hours', ours.limit.medianMs, query, rival.limit.medianMs);
line('a new month window or figure, median, nine in ten and highest', ours.figure.medianMs, query, theirsMs);
line(
  'a new elevation of the field, the same with density altitude anew',
  ours.elevation.medianMs,
  query,
  theirsMs,
);

const seven = make(7_000_000);
const sevenOrder = seasonOrder(seven.localHour);
const sevenMs = inTurn(
  {
    elevation: () => {
      altitudes(seven, ELEVATION_M);
      return picture(seven, sevenOrder);
    },
  },
  3,
).elevation.medianMs;
report(`a new elevation over seven million hours: ${sevenMs.toFixed(0)} ms`, {
  name: 'a new elevation over seven million hours',
  value: sevenMs,
  unit: 'ms',
  n: 7_000_000,
});
