import { aircraft } from '../../fixtures/demo/aircraft.ts';
import { performance as tables } from '../../fixtures/demo/performance.ts';
import { isaPressureHpa } from '../../shared-calc/atmosphere/standard-atmosphere.ts';
import { climbNumbers, climbReader } from '../../shared-calc/performance/climb-reader.ts';
import { performanceBook } from '../../shared-calc/performance/departure-book.ts';
import { distanceFigures } from '../../shared-calc/performance/departure-figures.ts';
import { distanceNumbers, distanceReader } from '../../shared-calc/performance/distance-reader.ts';
import { humidityStep } from '../../shared-calc/performance/humidity-step.ts';
import type { DistanceRow } from '../../shared-calc/performance/records.ts';
import { beside, machineLine, seeded } from './measure.ts';

// A season's observations (100 000) and a planner's question (8 000) against the demo's tables.
const N = 100_000;
const random = seeded(7);
const MASS_KG = 575;
const runway = { availableM: 1180, surface: 'gravel', slopeRatio: 0.01 } as const;
const temperatureC = Float64Array.from({ length: N }, () => -5 + 42 * random());
const dewPointC = temperatureC.map((t) => t - 2 - 25 * random());
const pressureAltitudeM = Float64Array.from({ length: N }, () => 1250 + 250 * random());
const headwindMs = Float64Array.from({ length: N }, () => -2 + 10 * random());

const book = performanceBook(tables, aircraft.performance);
const reader = distanceReader(book, 'takeOff', runway);
const climb = climbReader(book);
const out = distanceNumbers();
const climbOut = climbNumbers();

function prepared(count: number): number {
  let fits = 0;
  for (let row = 0; row < count; row += 1) {
    reader.read(
      out,
      MASS_KG,
      pressureAltitudeM[row] ?? NaN,
      temperatureC[row] ?? NaN,
      dewPointC[row] ?? NaN,
      headwindMs[row] ?? NaN,
    );
    if (out.marginM >= 0) fits += 1;
  }
  return fits;
}

/** As a spreadsheet does it: look through the printed rows for the neighbours on each axis, for each observation anew. */
function rowSearch(count: number): number {
  const rows = tables.takeOff?.rows ?? [];
  const notes = tables.takeOff?.notes ?? [];
  const perKt = (counts: string) => {
    const note = notes.find((each) => each.counts === counts);
    return (note?.changeRatio ?? 0) / (note?.amount ?? 1);
  };
  let fits = 0;
  for (let i = 0; i < count; i += 1) {
    const altitudeM = pressureAltitudeM[i] ?? NaN;
    const wind = headwindMs[i] ?? NaN;
    const step = humidityStep(isaPressureHpa(altitudeM), temperatureC[i] ?? NaN, dewPointC[i] ?? NaN);
    const roll = between(rows, altitudeM, step.tableTemperatureC, (row) => row.groundRollM ?? NaN);
    const over = between(rows, altitudeM, step.tableTemperatureC, (row) => row.overObstacleM ?? NaN);
    const windRatio = 1 + (wind >= 0 ? perKt('headwind') * 0.5 * wind : perKt('tailwind') * -1.5 * wind);
    const slopeRatio = 1.05;
    const before = step.change.factorRatio * windRatio * slopeRatio;
    if ((over * before + 0.2 * roll * before) * 1.33 <= runway.availableM) fits += 1;
  }
  return fits;
}

function between(
  rows: readonly DistanceRow[],
  altitudeM: number,
  tempC: number,
  valueOf: (row: DistanceRow) => number,
): number {
  const at = (place: (row: DistanceRow) => number | null, asked: number, among: readonly DistanceRow[]) => {
    const places = [...new Set(among.map((row) => place(row) ?? NaN))].sort((a, b) => a - b);
    const below = places.findLast((each) => each <= asked) ?? places[0] ?? NaN;
    const above = places.find((each) => each > asked);
    return { below, above, share: above === undefined ? 0 : Math.max(0, (asked - below) / (above - below)) };
  };
  const read = (among: readonly DistanceRow[], axes: readonly Axis[]): number => {
    const [axis, ...rest] = axes;
    const [first] = among;
    if (axis === undefined || first === undefined) return first === undefined ? NaN : valueOf(first);
    const { below, above, share } = at(axis.place, axis.asked, among);
    const low = read(
      among.filter((row) => axis.place(row) === below),
      rest,
    );
    if (above === undefined || share === 0) return low;
    const high = read(
      among.filter((row) => axis.place(row) === above),
      rest,
    );
    return low + share * (high - low);
  };
  return read(rows, [
    { place: (row) => row.massKg, asked: MASS_KG },
    { place: (row) => row.pressureAltitudeM, asked: altitudeM },
    { place: (row) => row.temperatureC, asked: tempC },
  ]);
}
interface Axis {
  place: (row: DistanceRow) => number | null;
  asked: number;
}

console.log(machineLine());
const FEW = 2_000;
console.log(
  `of ${String(FEW)}: ${String(prepared(FEW))} fit by the reader, ${String(rowSearch(FEW))} by the search`,
);
beside('departure: take-off with humidity, wind, slope and surface, for a record', N, () => prepared(N));
beside('departure: the same for a planner’s question', 8_000, () => prepared(8_000));
beside('departure: the same, few', FEW, () => prepared(FEW), {
  name: 'a search through the printed rows for each observation',
  run: () => rowSearch(FEW),
});
beside('departure: climb and gradient', N, () => {
  let sum = 0;
  for (let row = 0; row < N; row += 1)
    sum += climb.read(
      climbOut,
      MASS_KG,
      pressureAltitudeM[row] ?? NaN,
      temperatureC[row] ?? NaN,
      dewPointC[row] ?? NaN,
      0,
    ).gradientRatio;
  return sum;
});
beside('departure: one answer with every step', FEW, () => {
  let sum = 0;
  for (let row = 0; row < FEW; row += 1)
    sum += distanceFigures(book, 'takeOff', {
      massKg: MASS_KG,
      pressureAltitudeM: pressureAltitudeM[row] ?? NaN,
      temperatureC: temperatureC[row] ?? NaN,
      dewPointC: dewPointC[row] ?? NaN,
      headwindMs: headwindMs[row] ?? NaN,
      runway,
    }).steps.length;
  return sum;
});
