import { DAYS_FOR_WORST, daysNeeded } from './days-needed.ts';
import { MOST_DAYS_OFF, nearDate, type NearDate } from './near-date.ts';
import { quantileReordering } from './quantile.ts';
import { beyondFrom, finiteOrNull, probBelow, worstOf, type SafeSide } from './safe-side.ts';
import { HOURS } from './season.ts';
import { requireRange } from '../problem.ts';

/** A window of days around a date: at least a week either way, at most three, in every year of the record. */
export const LEAST_HALF_WIDTH_DAYS = 7;

/** The hours of all days near a date, each hour of the clock side by side. */
export interface DayWindow {
  /** Days on either side of the date that count. */
  halfWidthDays: number;
  /** In order of the hour, and of time inside each. */
  values: Float64Array;
  /** The day of each value, counted from 1970-01-01 on the local clock. */
  localDay: Int32Array;
  /** Where each hour of the clock begins; one more than there are hours. */
  starts: Int32Array;
  /** How many years stand behind each hour. A window over the new year belongs to the year of its date. */
  yearCount: Int16Array;
  /** Years with at least one value, rising. */
  years: number[];
}

/**
 * The values of all days of the record that lie near a date of the year, every day counting alike.
 *
 * The window begins a week wide on either side and widens day by day, to three weeks at most, until as many hours of
 * the clock have enough days as they would with three weeks, for each share that is asked. So an hour that is never
 * reported widens nothing, and a record too short for nine days in ten is still wide enough for half of them.
 * @param localHour hours since 1970-01-01 00:00 on the local clock, as hourReports gives them
 * @param value     one for each hour; NaN where there is none
 * @param date      month from 0, day from 1; 29 February counts as 1 March in a common year
 * @param shares    of days that are asked about, each 0.5 to 0.99: they say how many days are enough
 * @throws RangeProblem naming month, day or prob
 */
export function dayWindow(
  localHour: Int32Array,
  value: Float64Array,
  date: { month: number; day: number },
  shares: readonly number[],
): DayWindow {
  requireRange('month', date.month, 0, 11, '');
  requireRange('day', date.day, 1, 31, '');
  const needed = shares.map(daysNeeded);
  const near = nearDate(localHour, date, MOST_DAYS_OFF);
  const halfWidthDays = narrowest(near, localHour, value, needed);

  const starts = new Int32Array(HOURS + 1);
  const each = (visit: (hour: number, place: number, day: number, year: number) => void) => {
    for (const { year, centreDay, from, to } of near)
      for (let i = from; i < to; i++) {
        if (Number.isNaN(value[i])) continue;
        const at = localHour[i] ?? 0;
        const day = Math.floor(at / HOURS);
        if (Math.abs(day - centreDay) <= halfWidthDays) visit(at - day * HOURS, i, day, year);
      }
  };
  each((hour) => {
    starts[hour + 1] = (starts[hour + 1] ?? 0) + 1;
  });
  for (let hour = 0; hour < HOURS; hour++) starts[hour + 1] = (starts[hour + 1] ?? 0) + (starts[hour] ?? 0);
  const next = starts.slice();
  const values = new Float64Array(starts[HOURS] ?? 0);
  const localDay = new Int32Array(values.length);
  const yearCount = new Int16Array(HOURS);
  const lastYear = new Int32Array(HOURS).fill(-2_147_483_648);
  const years: number[] = [];
  each((hour, place, day, year) => {
    const at = next[hour] ?? 0;
    next[hour] = at + 1;
    values[at] = value[place] ?? NaN;
    localDay[at] = day;
    if (years.at(-1) !== year) years.push(year);
    if (lastYear[hour] !== year) {
      lastYear[hour] = year;
      yearCount[hour] = (yearCount[hour] ?? 0) + 1;
    }
  });
  return { halfWidthDays, values, localDay, starts, yearCount, years };
}

function narrowest(
  near: readonly NearDate[],
  localHour: Int32Array,
  value: Float64Array,
  neededDays: readonly number[],
): number {
  const widths = MOST_DAYS_OFF + 1;
  const count = new Int32Array(HOURS * widths);
  for (const { centreDay, from, to } of near)
    for (let i = from; i < to; i++) {
      if (Number.isNaN(value[i])) continue;
      const at = localHour[i] ?? 0;
      const day = Math.floor(at / HOURS);
      const cell = (at - day * HOURS) * widths + Math.abs(day - centreDay);
      count[cell] = (count[cell] ?? 0) + 1;
    }
  const reached = neededDays.map((needed) => {
    const enough = new Int32Array(widths);
    for (let hour = 0; hour < HOURS; hour++) {
      let days = 0;
      for (let width = 0; width < widths; width++) {
        days += count[hour * widths + width] ?? 0;
        if (days >= needed) enough[width] = (enough[width] ?? 0) + 1;
      }
    }
    let width = LEAST_HALF_WIDTH_DAYS;
    while ((enough[width] ?? 0) < (enough[MOST_DAYS_OFF] ?? 0)) width++;
    return width;
  });
  return Math.max(LEAST_HALF_WIDTH_DAYS, ...reached);
}

/** Days behind each hour of a window. */
export function dayCounts({ starts }: DayWindow): number[] {
  return Array.from({ length: HOURS }, (_, hour) => (starts[hour + 1] ?? 0) - (starts[hour] ?? 0));
}

/**
 * The figure that a share of the days is no worse than, hour by hour; null where there are too few days, or where
 * the figure is beyond what is known.
 * @param share 0.5 to 0.99
 * @throws RangeProblem naming prob
 */
export function dayQuantiles(days: DayWindow, share: number, worse: SafeSide): (number | null)[] {
  const needed = daysNeeded(share);
  const prob = probBelow(share, worse);
  return byHour(days, (values) =>
    values.length < needed ? null : finiteOrNull(quantileReordering(values.slice(), prob)),
  );
}

/** The worst figure of each hour; null where there are fewer than 20 days to have it from, or it is beyond what is known. */
export function dayWorst(days: DayWindow, worse: SafeSide): (number | null)[] {
  return byHour(days, (values) =>
    values.length < DAYS_FOR_WORST ? null : finiteOrNull(worstOf(values, worse)),
  );
}

/** How many days of each hour are beyond a limit. */
export function daysBeyond(days: DayWindow, limit: number, worse: SafeSide): number[] {
  const from = beyondFrom(limit, worse);
  return byHour(days, (values) =>
    values.reduce((count, each) => count + ((worse === 'up' ? each > from : each < from) ? 1 : 0), 0),
  );
}

function byHour<T>({ values, starts }: DayWindow, of: (values: Float64Array) => T): T[] {
  return Array.from({ length: HOURS }, (_, hour) => of(values.subarray(starts[hour], starts[hour + 1])));
}
