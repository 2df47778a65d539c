import { requireRange } from '../../problem.ts';
import { MOST_DAYS_OFF, nearDate } from '../near-date.ts';

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
  const pieces = nearDate(localHour, { month: month - 1, day }, halfDays);
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

function daysOfMonth(year: number, month: number): number {
  return new Date(Date.UTC(year, month, 0)).getUTCDate();
}
