import { firstAtLeast } from '../../numeric/first-at-least.ts';
import { requireRange } from '../../problem.ts';

/** A day of the calendar without its year; month from 1. */
export interface CalendarDay {
  readonly month: number;
  readonly day: number;
}

/** Hours of a record that lie around one date of the year, in every year that it has. */
export interface RowsAround {
  /** Place in the record's columns, rising. */
  readonly place: Int32Array;
  /** Days from the date: negative before it. */
  readonly daysOff: Int8Array;
  /** The year whose date the hour lies around: the last days of December belong to next year's 1 January. */
  readonly year: Int16Array;
  /** Local hour of the day, 0 to 23. */
  readonly hour: Int8Array;
}

/** Farther from its date no day stands for it: the season itself would be mixed in. */
export const MOST_DAYS_OFF = 21;

const DAY_MS = 86_400_000;

/**
 * The hours of a record within some days of a date, every year. 29 February is 1 March in a year without it.
 * @param localHour hours since 1970-01-01 00:00 on the local clock, rising, each at most once (as hourReports gives them)
 * @param halfDays  0 to 21 days on either side
 * @throws RangeProblem naming month, day or halfDays
 */
export function rowsAround(
  localHour: Int32Array,
  { month, day }: CalendarDay,
  halfDays: number = MOST_DAYS_OFF,
): RowsAround {
  requireRange('month', month, 1, 12, '');
  requireRange('day', day, 1, daysOfMonth(2024, month), '');
  requireRange('halfDays', halfDays, 0, MOST_DAYS_OFF, 'days');
  const first = localHour[0];
  const last = localHour[localHour.length - 1];
  const pieces: { from: number; to: number; centreDay: number; year: number }[] = [];
  if (first !== undefined && last !== undefined)
    for (let year = yearOf(first) - 1; year <= yearOf(last) + 1; year++) {
      const centreDay = Date.UTC(year, month - 1, day) / DAY_MS;
      const from = firstAtLeast(localHour, (centreDay - halfDays) * 24);
      const to = firstAtLeast(localHour, (centreDay + halfDays + 1) * 24);
      if (to > from) pieces.push({ from, to, centreDay, year });
    }
  const count = pieces.reduce((sum, { from, to }) => sum + to - from, 0);
  const rows = {
    place: new Int32Array(count),
    daysOff: new Int8Array(count),
    year: new Int16Array(count),
    hour: new Int8Array(count),
  };
  let at = 0;
  for (const { from, to, centreDay, year } of pieces)
    for (let place = from; place < to; place++, at++) {
      const hour = localHour[place] ?? 0;
      const localDay = Math.floor(hour / 24);
      rows.place[at] = place;
      rows.daysOff[at] = localDay - centreDay;
      rows.year[at] = year;
      rows.hour[at] = hour - 24 * localDay;
    }
  return rows;
}

function yearOf(localHour: number): number {
  return new Date(localHour * 3_600_000).getUTCFullYear();
}

function daysOfMonth(year: number, month: number): number {
  return new Date(Date.UTC(year, month, 0)).getUTCDate();
}
