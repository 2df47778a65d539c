import type Database from 'better-sqlite3';
import { z } from 'zod';
import { dryDensityAltitudeM } from '../../shared-calc/atmosphere/density-altitude.ts';
import { stationPressureHpa } from '../../shared-calc/atmosphere/station-pressure.ts';
import { climbRows, distanceRows } from '../../shared-calc/climate/departure/aeroplane-rows.ts';
import { runwayWind } from '../../shared-calc/climate/departure/runway-wind.ts';
import type { SafeSide } from '../../shared-calc/climate/safe-side.ts';
import { performanceBook } from '../../shared-calc/performance/departure-book.ts';
import { surfaceKindOf } from '../../shared-calc/performance/surface.ts';
import { readPerformance } from '../store/performance.ts';
import { requireAircraft } from './aircraft.ts';
import type { FieldHours } from './field-record.ts';
import { lastFew } from './last-few.ts';
import { availableM, headingsOf, runwayCases } from './planner-runway.ts';
import { Refusal } from './problem.ts';
import { id, massKg } from './ranges.ts';

const runwayId = id;
const end = z.enum(['first', 'second', 'into the wind']);

/** What is asked of each hour of a record; in the units kept inside (m, degC, m/s). */
export const figureInput = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('densityAltitude') }),
  z.strictObject({ kind: z.literal('temperature') }),
  /** What the vapour in the air adds to density altitude. */
  z.strictObject({ kind: z.literal('humidityShare') }),
  /** Negative is a tailwind, which counts with the gust. */
  z.strictObject({ kind: z.literal('headwind'), runwayId, end }),
  z.strictObject({ kind: z.literal('crosswind'), runwayId, end }),
  /** With every factor, from the aeroplane's own table. */
  z.strictObject({ kind: z.literal('takeOffDistance'), aircraftId: id, massKg, runwayId, end }),
  /** Runway that is left; negative where it is too short. */
  z.strictObject({ kind: z.literal('runwayMargin'), aircraftId: id, massKg, runwayId, end }),
  z.strictObject({ kind: z.literal('climbRate'), aircraftId: id, massKg }),
]);
export type FigureAsked = z.output<typeof figureInput>;

/** How a picture of a figure is asked for, whatever it is drawn over. */
export const figureQuestion = {
  figure: figureInput.default({ kind: 'densityAltitude' }),
  /** Shares of days that are no worse: 0.5 for half of them, 0.9 for nine in ten. */
  shares: z.array(z.number().min(0.5).max(0.99)).min(1).max(5).default([0.5, 0.9]),
  /** In the figure's own unit; null asks nothing. */
  limit: z.number().nullable().default(null),
};

/** Which figure an answer is of: a window that asked for another one meanwhile must not read it in the wrong unit. */
export const figureKind = z.enum([
  'densityAltitude',
  'temperature',
  'humidityShare',
  'headwind',
  'crosswind',
  'takeOffDistance',
  'runwayMargin',
  'climbRate',
]);
type OfAeroplane = Extract<FigureAsked, { aircraftId: string }>;

/** Which way each figure gets worse: quantiles and limits lean that way. */
export function worseOf({ kind }: FigureAsked): SafeSide {
  return kind === 'headwind' || kind === 'runwayMargin' || kind === 'climbRate' ? 'down' : 'up';
}

/** The last few figures of each connection: another quantile, limit or date must not compute them again. */
const lastFigures = lastFew<{ key: string; values: Float64Array }>(4);

/**
 * The figure of every hour, in step with `hours.localHour`; NaN where it cannot be had. What the manual does not answer
 * (hotter, higher, heavier than its table) is infinitely bad, so that it counts against every limit.
 * @throws Refusal where runway or table is not there
 */
export function figureValues(
  db: Database.Database,
  hours: FieldHours,
  figure: FigureAsked,
): { key: string; values: Float64Array } {
  const aeroplane = 'aircraftId' in figure ? aeroplaneOf(db, figure) : null;
  const key = JSON.stringify([
    hours.key,
    figure,
    'runwayId' in figure ? hours.field.runways : null,
    aeroplane,
  ]);
  return lastFigures(db, key, () => ({ key, values: valuesOf(hours, figure, aeroplane) }));
}

type Aeroplane = ReturnType<typeof aeroplaneOf>;

function aeroplaneOf(db: Database.Database, { aircraftId }: OfAeroplane) {
  const record = readPerformance(db, aircraftId);
  const { bestGlideMs, bestGlideRatio } = requireAircraft(db, aircraftId).performance;
  if (record === null)
    throw new Refusal(
      'not-found',
      'This aeroplane has no tables of take-off and climb yet. Enter them on Aircraft.',
    );
  return { record, glide: { bestGlideMs, bestGlideRatio } };
}

function valuesOf(hours: FieldHours, figure: FigureAsked, aeroplane: Aeroplane | null): Float64Array {
  switch (figure.kind) {
    case 'densityAltitude':
      return hours.densityAltitudeM;
    case 'temperature':
      return hours.temperatureC;
    case 'humidityShare':
      return humidityShareM(hours);
    case 'headwind':
    case 'crosswind': {
      const wind = runwayWind(hours, headingsOf(runwayOf(hours, figure)));
      return figure.kind === 'headwind' ? wind.headwindMs : wind.crosswindMs;
    }
    case 'takeOffDistance':
    case 'runwayMargin':
    case 'climbRate':
      if (aeroplane === null) throw new Error('a figure of an aeroplane comes with its tables');
      return aeroplaneFigures(hours, figure, aeroplane);
  }
}

function aeroplaneFigures(
  hours: FieldHours,
  figure: OfAeroplane,
  { record, glide }: Aeroplane,
): Float64Array {
  const entered = {
    book: performanceBook(record, glide),
    massKg: figure.massKg,
    elevationM: hours.field.elevationM,
  };
  if (figure.kind === 'climbRate') {
    if (entered.book.climb === null) throw new Refusal('not-found', 'This aeroplane has no climb table yet.');
    return climbRows(entered)(hours, runwayWind(hours, [0]));
  }
  const runway = runwayOf(hours, figure);
  const surface = surfaceKindOf(runway.record.surface);
  if (entered.book.takeOff === null && entered.book.seaLevel === null)
    throw new Refusal('not-found', 'This aeroplane has no take-off table yet.');
  if (surface === null)
    throw new Refusal(
      'input-refused',
      `The surface '${runway.record.surface}' is not known: no take-off distance can be answered for it.`,
    );
  const lengthM = availableM(runway, 'take-off');
  const distanceM = distanceRows(
    entered,
    'takeOff',
    runwayCases(runway, 'take-off', surface),
  )(hours, runwayWind(hours, headingsOf(runway)));
  return figure.kind === 'takeOffDistance' ? distanceM : distanceM.map((each) => lengthM - each);
}

function runwayOf(
  { field }: FieldHours,
  { runwayId: wanted, end: asked }: { runwayId: string; end: z.output<typeof end> },
) {
  const record = field.runways.find((each) => each.id === wanted);
  if (record === undefined) throw new Refusal('not-found', `${field.name} has no such runway.`);
  return { record, end: asked };
}

function humidityShareM({ densityAltitudeM, temperatureC, settingHpa, field }: FieldHours): Float64Array {
  return densityAltitudeM.map((altitudeM, i) =>
    Number.isNaN(altitudeM)
      ? NaN
      : altitudeM -
        dryDensityAltitudeM(
          stationPressureHpa(settingHpa[i] ?? NaN, field.elevationM),
          temperatureC[i] ?? NaN,
        ),
  );
}
