import { requireRange } from '../problem.ts';

/**
 * Days that a quantile needs before it is shown: 10 / (1 - q), so that ten days lie beyond it. 20 for the median,
 * 100 for nine days in ten, 200 for 95 %.
 * @param prob 0.5 to 0.99
 * @throws RangeProblem naming prob
 * @source common practice, no source
 */
export function daysNeeded(prob: number): number {
  requireRange('prob', prob, 0.5, 0.99, '');
  // 10 / (1 - 0.9) is 100.00000000000001: what is a whole number but for that stays one.
  return Math.ceil(10 / (1 - prob) - 1e-9);
}

/** A record of fewer years says nothing of the spread from year to year: it is said, and years are not compared. */
export const YEARS_NEEDED = 3;

/** "Highest of N days" is said from so many days on. */
export const DAYS_FOR_WORST = 20;
