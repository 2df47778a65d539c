import { RAD_PER_DEG } from '../../units/constants.ts';
import { InputProblem, requireRange } from '../../problem.ts';
import type { AirRows } from './air-rows.ts';

/** The wind of each row on the runway: what counts against a limit, and what a distance is entered with. */
export interface RunwayWind {
  /** Across, from either side, by the gust. */
  readonly crosswindMs: Float64Array;
  /** From behind, by the gust; 0 with a headwind. */
  readonly tailwindMs: Float64Array;
  /** Along the runway for a distance: the mean as a headwind, less than 0 by the gust as a tailwind. */
  readonly headwindMs: Float64Array;
  /** The strongest that was reported, from anywhere. */
  readonly gustMs: Float64Array;
  /** The end that is used, by its place in the headings; EITHER_END where the wind does not say which of two. */
  readonly end: Uint8Array;
}

/** Calm, or of variable direction: a pilot may use either end. */
export const EITHER_END = 255;

/**
 * Wind components on a runway, row by row. A headwind counts by the mean, crosswind and tailwind by the gust where one was
 * reported. A wind of variable direction counts fully as crosswind and as tailwind. Without a speed there is no
 * observation (NaN).
 * @param headingsDeg true headings of the take-off, 0 to 360: one end, or both where the take-off is into the wind; with
 *   both the end with more headwind is used, of equal ones the first
 * @throws InputProblem for no heading, RangeProblem for one outside 0 to 360
 * @source common practice; FAA-H-8083-25C ch. 11 for the components
 */
export function runwayWind(air: AirRows, headingsDeg: readonly number[]): RunwayWind {
  if (headingsDeg.length === 0) throw new InputProblem('headingsDeg', 'at least one end is needed');
  headingsDeg.forEach((deg, i) => {
    requireRange(`headingsDeg[${String(i)}]`, deg, 0, 360, 'degrees');
  });
  const count = air.windMs.length;
  const wind = {
    crosswindMs: new Float64Array(count),
    tailwindMs: new Float64Array(count),
    headwindMs: new Float64Array(count),
    gustMs: new Float64Array(count),
    end: new Uint8Array(count),
  };
  const undecided = headingsDeg.length > 1 ? EITHER_END : 0;
  for (let row = 0; row < count; row++) {
    const meanMs = air.windMs[row] ?? NaN;
    const reportedGustMs = air.gustMs[row] ?? NaN;
    const gustMs = reportedGustMs > meanMs ? reportedGustMs : meanMs;
    const fromDeg = air.windFromDeg[row] ?? NaN;
    wind.gustMs[row] = gustMs;
    if (Number.isNaN(fromDeg) && meanMs > 0) {
      wind.crosswindMs[row] = gustMs;
      wind.tailwindMs[row] = gustMs;
      wind.headwindMs[row] = -gustMs;
      wind.end[row] = undecided;
      continue;
    }
    let along = -Infinity;
    let across = 0;
    if (meanMs === 0) wind.end[row] = undecided;
    for (let end = 0; end < headingsDeg.length; end++) {
      // Calm has no direction of its own.
      const angleRad = (meanMs === 0 ? 0 : fromDeg - (headingsDeg[end] ?? 0)) * RAD_PER_DEG;
      const cosine = Math.cos(angleRad);
      // A billionth: of two ends square to the wind the first is taken.
      if (cosine > along + 1e-9) {
        along = cosine;
        across = Math.abs(Math.sin(angleRad));
        if (meanMs !== 0) wind.end[row] = end;
      }
    }
    wind.crosswindMs[row] = gustMs * across;
    wind.tailwindMs[row] = along < 0 ? -gustMs * along : Number.isNaN(gustMs) ? NaN : 0;
    wind.headwindMs[row] = along < 0 ? gustMs * along : meanMs * along;
  }
  return wind;
}
