import { requireRange } from '../../problem.ts';
import type { AirRows } from './air-rows.ts';
import type { LimitName, LimitRows } from './judge.ts';
import { runwayWind, type RunwayWind } from './runway-wind.ts';

/** A figure of the aeroplane for each row: from its manual's table at the load asked. */
export type RowFigures = (air: AirRows, wind: RunwayWind) => Float64Array;

/** What is asked of a departure; null where a limit is not asked. */
export interface DepartureLimits {
  readonly densityAltitudeMostM: number | null;
  /** With every factor, against what may be used of the runway. */
  readonly takeOff: { readonly mostM: number; readonly distanceM: RowFigures } | null;
  /** The same for a landing; a question asks one of the two. */
  readonly landing: { readonly mostM: number; readonly distanceM: RowFigures } | null;
  readonly climbRate: { readonly leastMs: number; readonly rateMs: RowFigures } | null;
  readonly climbGradient: { readonly leastRatio: number; readonly gradientRatio: RowFigures } | null;
  readonly crosswindMostMs: number | null;
  readonly tailwindMostMs: number | null;
  /** From any direction. */
  readonly gustMostMs: number | null;
}

const RANGES: Readonly<Record<LimitName, readonly [least: number, most: number, unit: string]>> = {
  takeOff: [1, 10_000, 'm'],
  landing: [1, 10_000, 'm'],
  climbRate: [0, 30, 'm/s'],
  climbGradient: [0, 0.5, ''],
  densityAltitude: [-2000, 6000, 'm'],
  crosswind: [0, 30, 'm/s'],
  tailwind: [0, 30, 'm/s'],
  gust: [0, 60, 'm/s'],
};

/**
 * The figure of each limit for each row of air, ready to be judged; in the order of LIMIT_NAMES.
 * @param headingsDeg true headings of the take-off: one end, or both where it is into the wind. With none, the wind has no
 *   components, and a limit on one has no observation.
 * @throws RangeProblem naming a limit out of its range
 */
export function rowsOfLimits(
  air: AirRows,
  headingsDeg: readonly number[],
  asked: DepartureLimits,
): LimitRows[] {
  const wind = headingsDeg.length === 0 ? windOfNoRunway(air) : runwayWind(air, headingsDeg);
  const { takeOff, landing, climbRate, climbGradient } = asked;
  const limits: LimitRows[] = [];
  const add = (name: LimitName, side: LimitRows['side'], limit: number | null, value: () => Float64Array) => {
    if (limit === null) return;
    const [least, most, unit] = RANGES[name];
    requireRange(name, limit, least, most, unit);
    limits.push({ name, value: value(), limit, side });
  };
  if (takeOff !== null) add('takeOff', 'most', takeOff.mostM, () => takeOff.distanceM(air, wind));
  if (landing !== null) add('landing', 'most', landing.mostM, () => landing.distanceM(air, wind));
  if (climbRate !== null) add('climbRate', 'least', climbRate.leastMs, () => climbRate.rateMs(air, wind));
  if (climbGradient !== null)
    add('climbGradient', 'least', climbGradient.leastRatio, () => climbGradient.gradientRatio(air, wind));
  add('densityAltitude', 'most', asked.densityAltitudeMostM, () => air.densityAltitudeM);
  add('crosswind', 'most', asked.crosswindMostMs, () => wind.crosswindMs);
  add('tailwind', 'most', asked.tailwindMostMs, () => wind.tailwindMs);
  add('gust', 'most', asked.gustMostMs, () => wind.gustMs);
  return limits;
}

/** Whether any limit depends on temperature, pressure and humidity. */
export function asksAir(asked: DepartureLimits): boolean {
  return (
    asked.densityAltitudeMostM !== null ||
    asked.takeOff !== null ||
    asked.landing !== null ||
    asked.climbRate !== null ||
    asked.climbGradient !== null
  );
}

function windOfNoRunway(air: AirRows): RunwayWind {
  const unknown = new Float64Array(air.windMs.length).fill(NaN);
  // Its strength needs no runway.
  const { gustMs, end } = runwayWind(air, [0]);
  return { crosswindMs: unknown, tailwindMs: unknown, headwindMs: unknown, gustMs, end };
}
