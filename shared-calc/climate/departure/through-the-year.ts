import { requireRange } from '../../problem.ts';
import { civilDate } from '../civil-date.ts';
import { daysNeeded } from '../days-needed.ts';
import type { Judged } from './judge.ts';
import { FIRST_DAYS_OFF } from './hour-odds.ts';
import { MOST_DAYS_OFF } from '../near-date.ts';

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

/** Runs and gaps shorter than this are the chance of single days rather than the season. */
export const WEEK_DAYS = 7;

/**
 * Runs as a person can be told them: those shorter than a week are left out, and gaps shorter than a week are bridged, which
 * is said (`hasGaps`): the share only just fails there.
 */
export function runsToTell(runs: readonly DateRun[]): { runs: DateRun[]; hasGaps: boolean } {
  const lengthOf = ({ from, to }: DateRun) => ((to - from + DAYS_OF_YEAR) % DAYS_OF_YEAR) + 1;
  let hasGaps = false;
  const told: { from: number; to: number }[] = [];
  for (const run of runs) {
    const last = told.at(-1);
    if (last !== undefined && run.from - last.to <= WEEK_DAYS) {
      last.to = run.to;
      hasGaps = true;
    } else told.push({ ...run });
  }
  const [first] = told;
  const last = told.at(-1);
  // Over the new year, and where what was bridged meets its own beginning.
  if (first !== undefined && last !== undefined) {
    const gap = (first.from - last.to + DAYS_OF_YEAR) % DAYS_OF_YEAR;
    if (gap > 1 && gap <= WEEK_DAYS) {
      hasGaps = true;
      if (first === last) return { runs: [{ from: 0, to: DAYS_OF_YEAR - 1 }], hasGaps };
      first.from = last.from;
      told.pop();
    }
  }
  return { runs: told.filter((run) => lengthOf(run) >= WEEK_DAYS), hasGaps };
}

/**
 * The rows of a record at one hour of the day, with the place of each date in a leap year.
 * @param hour 0 to 23
 * @throws RangeProblem naming hour
 */
export function yearOfHour(
  localHour: Int32Array,
  hour: number,
): { place: Int32Array; dayOfYear: Int16Array } {
  requireRange('hour', hour, 0, 23, '');
  const place: number[] = [];
  for (let at = 0; at < localHour.length; at++)
    if ((((localHour[at] ?? 0) % 24) + 24) % 24 === hour) place.push(at);
  const dayOfYear = Int16Array.from(place, (at) => {
    const { month, day } = civilDate(Math.floor((localHour[at] ?? 0) / 24));
    return placeInYear(month, day);
  });
  return { place: Int32Array.from(place), dayOfYear };
}

/** Days before each month of a leap year. */
const BEFORE_MONTH = [0, 31, 60, 91, 121, 152, 182, 213, 244, 274, 305, 335];

/** The place of a date in a leap year, 0 to 365. @param month from 0 @param day from 1 */
export function placeInYear(month: number, day: number): number {
  return (BEFORE_MONTH[month] ?? 0) + day - 1;
}

/** The date at a place in a leap year: month from 0, day from 1. */
export function dateAtPlace(place: number): { month: number; day: number } {
  let month = 11;
  while (month > 0 && (BEFORE_MONTH[month] ?? 0) > place) month--;
  return { month, day: place - (BEFORE_MONTH[month] ?? 0) + 1 };
}
