import { InputProblem, requireRange } from '../problem.ts';
import { normalQuantile } from './normal.ts';

export interface RobustSlope {
  /** Median of the slopes between all pairs; y per x. */
  readonly slope: number;
  /** Ends of the band; NaN-free, and equal to the outermost slopes where the points are very few. */
  readonly low: number;
  readonly high: number;
}

/**
 * A slope that a few wild points do not turn, with its band.
 * @param x          at least three different values in all
 * @param y          as many
 * @param confidence of the band, 0.5 to 0.999; 0.95 unless told
 * @throws InputProblem where lengths differ or points are too few; RangeProblem naming an element or confidence
 * @source H. Theil 1950, "A rank-invariant method of linear and polynomial regression analysis"; P. K. Sen 1968,
 *   "Estimates of the regression coefficient based on Kendall's tau", J. Am. Stat. Assoc. 63, with ties
 */
export function theilSen(x: readonly number[], y: readonly number[], confidence = 0.95): RobustSlope {
  if (x.length !== y.length)
    throw new InputProblem('y', `has ${String(y.length)} values for ${String(x.length)}`);
  if (new Set(x).size < 3) throw new InputProblem('x', 'three different values are needed');
  requireRange('confidence', confidence, 0.5, 0.999, '');
  x.forEach((value, i) => {
    requireRange(`x[${String(i)}]`, value, -1e12, 1e12, '');
  });
  y.forEach((value, i) => {
    requireRange(`y[${String(i)}]`, value, -1e12, 1e12, '');
  });
  const slopes: number[] = [];
  for (let i = 0; i < x.length; i++)
    for (let j = 0; j < i; j++) {
      const run = (x[i] ?? 0) - (x[j] ?? 0);
      if (run !== 0) slopes.push(((y[i] ?? 0) - (y[j] ?? 0)) / run);
    }
  slopes.sort((a, b) => a - b);
  const sd = Math.sqrt((pairsOf(x.length) - tied(x) - tied(y)) / 18);
  const half = normalQuantile((1 + confidence) / 2) * sd;
  const last = slopes.length - 1;
  const at = (place: number) => slopes[Math.min(last, Math.max(0, place))] ?? NaN;
  return {
    slope: slopes.length % 2 === 1 ? at(last / 2) : (at((last - 1) / 2) + at((last + 1) / 2)) / 2,
    low: at(Math.round((slopes.length - half) / 2) - 1),
    high: at(Math.round((slopes.length + half) / 2)),
  };
}

/** Eighteen times the variance of Kendall's sum, for so many values. */
function pairsOf(count: number): number {
  return count * (count - 1) * (2 * count + 5);
}

function tied(values: readonly number[]): number {
  const counts = new Map<number, number>();
  for (const value of values) counts.set(value, (counts.get(value) ?? 0) + 1);
  return [...counts.values()].reduce((sum, count) => sum + (count > 1 ? pairsOf(count) : 0), 0);
}
