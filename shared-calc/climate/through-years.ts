import { theilSen, type RobustSlope } from '../numeric/theil-sen.ts';

/** A change over the years is told from so many on: fewer make a band that says nothing. */
export const YEARS_FOR_TREND = 8;

/**
 * Whether a month's figure changes over the years: the robust slope through the years' medians, clear where its 95 %
 * band leaves nothing out on one side only.
 * @param years   one for each median
 * @param medians in any unit; the slope is that unit a year
 * @returns null with fewer than 8 years
 * @throws InputProblem and RangeProblem as `theilSen`
 */
export function changeOverYears(
  years: readonly number[],
  medians: readonly number[],
): (RobustSlope & { isClear: boolean }) | null {
  if (years.length < YEARS_FOR_TREND) return null;
  const slope = theilSen(years, medians);
  return { ...slope, isClear: slope.low > 0 || slope.high < 0 };
}
