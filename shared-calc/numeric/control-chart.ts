import { InputProblem, requireRange } from '../problem.ts';

/** Expected range of two independent standard normal quantities: 2 / root pi, as the tables round it. */
const D2_OF_TWO = 1.128;
const LIMIT_SDS = 3;

/** Centre and limits of a chart of single values. */
export interface IndividualsLimits {
  readonly mean: number;
  readonly meanMovingRange: number;
  readonly lower: number;
  readonly upper: number;
}

/**
 * Limits for a chart of single values, the spread taken from the mean of the ranges between neighbours, so that a slow
 * drift does not widen its own limits.
 * @param values at least 2, finite, in the order of time
 * @throws InputProblem where there are fewer than two
 * @throws RangeProblem naming a value that is not finite
 * @source NIST/SEMATECH e-Handbook of Statistical Methods, section 6.3.2.2
 */
export function individualsLimits(values: readonly number[]): IndividualsLimits {
  if (values.length < 2) throw new InputProblem('values', 'limits need at least two values');
  let sum = 0;
  let ranges = 0;
  values.forEach((value, index) => {
    requireRange(`values[${String(index)}]`, value, -1e150, 1e150, '');
    sum += value;
    if (index > 0) ranges += Math.abs(value - (values[index - 1] ?? value));
  });
  const mean = sum / values.length;
  const meanMovingRange = ranges / (values.length - 1);
  const reach = (LIMIT_SDS * meanMovingRange) / D2_OF_TWO;
  return { mean, meanMovingRange, lower: mean - reach, upper: mean + reach };
}

/** Running sums of what lies beyond an allowance, one for each side. */
export interface CusumStep {
  readonly high: number;
  readonly low: number;
  /** Beyond the decision limit: the sum of which side, or null. */
  readonly signal: 'high' | 'low' | null;
}

/**
 * Tabular cumulative sums of deviations from a target, both sides.
 * @param deviations value less target, in the order of time, finite
 * @param allowance  k, more than 0: half of the shift that is to be found
 * @param limit      h, more than 0: a sum above it is a signal
 * @throws RangeProblem
 * @source E. S. Page, Continuous inspection schemes, Biometrika 41, 1954; NIST/SEMATECH e-Handbook, section 6.3.2.3
 */
export function cusum(deviations: readonly number[], allowance: number, limit: number): CusumStep[] {
  requireRange('allowance', allowance, 1e-9, 1e150, '');
  requireRange('limit', limit, 1e-9, 1e150, '');
  let high = 0;
  let low = 0;
  return deviations.map((deviation, index) => {
    requireRange(`deviations[${String(index)}]`, deviation, -1e150, 1e150, '');
    high = Math.max(0, high + deviation - allowance);
    low = Math.max(0, low - deviation - allowance);
    return { high, low, signal: high > limit ? 'high' : low > limit ? 'low' : null };
  });
}
