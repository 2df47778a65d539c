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
import { duckdbSeason } from './duckdb-season.ts';
import { awaitedInTurn, machineLine, report, seeded, type Spread } from './measure.ts';

// The season picture with exact quantiles in 288 cells: a new limit, a new figure or month window, a new elevation; over a
// million hours and over seven. Beside each DuckDB, in the same run on the same hours, whose cells must say the same.

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
const picture = (order: SeasonOrder, values: Float64Array) => {
  const cells = seasonCells(order, values);
  return { quantiles: seasonQuantiles(cells, [0.5, 0.9]), worst: seasonWorst(cells, 'up') };
};

/** The hours' cells in step with them, as a column of a table would have them. */
function cellColumn({ place, starts }: SeasonOrder): Int32Array {
  const column = new Int32Array(place.length);
  for (let cell = 0; cell < CELLS; cell++)
    for (let i = starts[cell] ?? 0; i < (starts[cell + 1] ?? 0); i++) column[place[i] ?? 0] = cell;
  return column;
}

/** @throws Error where a cell of ours is further from DuckDB's than the 1 cm that the tables of the fast way may cost */
function requireSame(ours: ReturnType<typeof picture>, theirs: readonly number[][]): void {
  for (let cell = 0; cell < CELLS; cell++) {
    const mine = [...ours.quantiles.map(({ quantile }) => quantile[cell]), ours.worst[cell]];
    mine.forEach((value, at) => {
      const other = theirs[cell]?.[at];
      if (typeof value !== 'number' || other === undefined || !(Math.abs(value - other) <= 0.012))
        throw new Error(`Cell ${String(cell)} is ${String(value)} m here and ${String(other)} m in DuckDB.`);
    });
  }
}

const rivalName = 'DuckDB computing the same in SQL, 0.3 wanted';

/** @param mostMs what is wanted at most: null where nothing is said */
function line(name: string, n: number, mostMs: number | null, own?: Spread, other?: Spread): void {
  if (own === undefined) return;
  const ratio = other === undefined ? {} : { against: rivalName, ratio: own.medianMs / other.medianMs };
  report(
    `${name}: ${own.medianMs.toFixed(2)} ms (p95 ${own.p95Ms.toFixed(2)}${mostMs === null ? '' : `; at most ${String(mostMs)} wanted`})` +
      (other === undefined ? '' : `; ${rivalName}: ${other.medianMs.toFixed(1)} ms`),
    { name, value: own.medianMs, unit: 'ms', n, ...ratio },
  );
}

async function measure(n: number, words: string, rounds: number, figureMs: number, limitMs: number | null) {
  const hours = make(n);
  altitudes(hours, ELEVATION_M);
  const order = seasonOrder(hours.localHour);
  const cells = seasonCells(order, hours.densityAltitudeM);
  let limitM = 2000;
  let elevationM = ELEVATION_M;
  const ours = {
    limit: () => seasonBeyond(cells, (limitM += 1), 'up'),
    figure: () => picture(order, hours.densityAltitudeM),
    elevation: () => picture(order, altitudes(hours, (elevationM += 1))),
  };
  const duckdb = await duckdbSeason({ ...hours, cell: cellColumn(order) });
  const theirs: Record<string, () => Promise<unknown>> = {};
  if (duckdb !== null) {
    requireSame(picture(order, hours.densityAltitudeM), await duckdb.figures());
    const beyond = await duckdb.beyond(2000.5);
    if (seasonBeyond(cells, 2000.5, 'up').some((count, cell) => count !== beyond[cell]))
      throw new Error('The days beyond a limit differ from those of DuckDB.');
    requireSame(picture(order, altitudes(hours, ELEVATION_M + 50)), await duckdb.figuresAt(ELEVATION_M + 50));
    theirs['their limit'] = () => duckdb.beyond(limitM);
    theirs['their figure'] = () => duckdb.figures();
    theirs['their elevation'] = () => duckdb.figuresAt(elevationM);
  }
  const spread = await awaitedInTurn({ ...ours, ...theirs }, rounds);
  duckdb?.close();
  line(`a new limit on a season of ${words} hours`, n, limitMs, spread['limit'], spread['their limit']);
  line(
    `a new month window or figure of ${words} hours: median, nine in ten and highest`,
    n,
    figureMs,
    spread['figure'],
    spread['their figure'],
  );
  line(
    `a new elevation of the field over ${words} hours: the same with density altitude anew`,
    n,
    figureMs,
    spread['elevation'],
    spread['their elevation'],
  );
}

console.log(machineLine());
await measure(1_000_000, 'a million', 15, 40, 2);
await measure(7_000_000, 'seven million', 5, 200, null);
