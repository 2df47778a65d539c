import type Database from 'better-sqlite3';
import { z } from 'zod';
import { dryDensityAltitudeM } from '../../shared-calc/atmosphere/density-altitude.ts';
import { stationPressureHpa } from '../../shared-calc/atmosphere/station-pressure.ts';
import type { SafeSide } from '../../shared-calc/climate/safe-side.ts';
import { crosswindFigureMs, headwindFigureMs } from '../../shared-calc/climate/wind-figures.ts';
import { trueDirection } from '../../shared-calc/performance/direction.ts';
import type { FieldHours } from './field-record.ts';

/** What is asked of each hour of a record; in the units kept inside (m, degC, m/s). */
export const figureInput = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('densityAltitude') }),
  z.strictObject({ kind: z.literal('temperature') }),
  /** What the vapour in the air adds to density altitude. */
  z.strictObject({ kind: z.literal('humidityShare') }),
  z.strictObject({ kind: z.literal('headwind'), runwayTrueDeg: z.number().min(0).max(360) }),
  z.strictObject({ kind: z.literal('crosswind'), runwayTrueDeg: z.number().min(0).max(360) }),
]);
export type FigureAsked = z.output<typeof figureInput>;

/** Which way each figure gets worse: quantiles and limits lean that way. */
export function worseOf({ kind }: FigureAsked): SafeSide {
  return kind === 'headwind' ? 'down' : 'up';
}

/** The last few figures of each connection: another quantile, limit or date must not compute them again. */
const kept = new WeakMap<Database.Database, { key: string; values: Float64Array }[]>();
const KEPT_FIGURES = 4;

/** The figure of every hour, in step with `hours.localHour`; NaN where it cannot be had. */
export function figureValues(
  db: Database.Database,
  hours: FieldHours,
  figure: FigureAsked,
): { key: string; values: Float64Array } {
  const key = JSON.stringify([hours.key, figure]);
  const list = kept.get(db) ?? [];
  const before = list.find((each) => each.key === key);
  if (before !== undefined) return before;
  const made = { key, values: valuesOf(hours, figure) };
  kept.set(db, [made, ...list].slice(0, KEPT_FIGURES));
  return made;
}

function valuesOf(hours: FieldHours, figure: FigureAsked): Float64Array {
  switch (figure.kind) {
    case 'densityAltitude':
      return hours.densityAltitudeM;
    case 'temperature':
      return hours.temperatureC;
    case 'humidityShare':
      return humidityShareM(hours);
    case 'headwind':
    case 'crosswind':
      return windMs(hours, figure.kind === 'headwind' ? headwindFigureMs : crosswindFigureMs, figure);
  }
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

function windMs(
  { windFromDeg, windMs: mean, gustMs }: FieldHours,
  of: typeof headwindFigureMs,
  { runwayTrueDeg }: { runwayTrueDeg: number },
): Float64Array {
  const runway = trueDirection(runwayTrueDeg);
  const wind = { fromDeg: NaN, meanMs: NaN, gustMs: NaN };
  return mean.map((meanMs, i) => {
    wind.fromDeg = windFromDeg[i] ?? NaN;
    wind.meanMs = meanMs;
    wind.gustMs = gustMs[i] ?? NaN;
    return of(wind, runway);
  });
}
