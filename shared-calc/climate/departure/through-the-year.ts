import { requireRange } from '../../problem.ts';
import { daysNeeded } from '../days-needed.ts';
import type { Judged } from './judge.ts';
import { FIRST_DAYS_OFF } from './hour-odds.ts';
import { MOST_DAYS_OFF } from './rows-around.ts';

/** Days of the year from 0 (1 January) to 365, each as in a leap year, so that 1 March is the same place every year. */
export const DAYS_OF_YEAR = 366;

/** Whether a departure at one hour works on each date of the year; null where even three weeks on either side are too few days. */
export type WorksByDate = readonly (boolean | null)[];

/**
 * Hold one hour of the day against the limits on every date of the year. Each date has its own days around it: a week on
 * either side, up to three where the share asked needs them.
 * @param dayOfYear place of each row's date, 0 to 365 as in a leap year
 * @param share     0.5 to 0.99
 * @throws RangeProblem naming share
 */
export function worksByDate(dayOfYear: Int16Array, judged: Judged, share: number): WorksByDate {
  const needed = daysNeeded(share);
  const days = new Int32Array(DAYS_OF_YEAR);
  const met = new Int32Array(DAYS_OF_YEAR);
  for (let row = 0; row < dayOfYear.length; row++) {
    if (judged.observed[row] !== 1) continue;
    const date = dayOfYear[row] ?? 0;
    requireRange('dayOfYear', date, 0, DAYS_OF_YEAR - 1, '');
    days[date] = (days[date] ?? 0) + 1;
    if (judged.failed[row] === 0) met[date] = (met[date] ?? 0) + 1;
  }
  const around = (counts: Int32Array, date: number, half: number) => {
    let sum = 0;
    for (let off = -half; off <= half; off++) sum += counts[(date + off + DAYS_OF_YEAR) % DAYS_OF_YEAR] ?? 0;
    return sum;
  };
  return Array.from({ length: DAYS_OF_YEAR }, (_, date) => {
    for (let half = FIRST_DAYS_OFF; half <= MOST_DAYS_OFF; half++) {
      const dayCount = around(days, date, half);
      if (dayCount >= needed) return around(met, date, half) >= share * dayCount - 1e-9;
    }
    return null;
  });
}

/** A run of dates on which it works; both ends included, as places in the year. */
export interface DateRun {
  readonly from: number;
  readonly to: number;
}

/**
 * Runs of dates on which a departure works, the year coming round: a run over new year begins before it and ends after it.
 * A date with too few days ends a run.
 */
export function dateRuns(works: WorksByDate): DateRun[] {
  const count = works.length;
  if (works.every((each) => each === true)) return [{ from: 0, to: count - 1 }];
  const runs: DateRun[] = [];
  for (let date = 0; date < count; date++) {
    if (works[date] !== true || works[(date - 1 + count) % count] === true) continue;
    let to = date;
    while (works[(to + 1) % count] === true) to++;
    runs.push({ from: date, to: to % count });
  }
  return runs;
}
