import { civilDate, dayNumber } from './civil-date.ts';
import { firstAtLeast } from '../numeric/first-at-least.ts';

/** Farther from its date no day stands for it: the season itself would be mixed in. */
export const MOST_DAYS_OFF = 21;

/** The hours of a record near one date, in one of its years. */
export interface NearDate {
  /** The year of the date: the last days of December may belong to next year's 1 January. */
  year: number;
  /** The date itself, counted from 1970-01-01 on the local clock. */
  centreDay: number;
  /** Places of its hours: the first, and the one behind the last. */
  from: number;
  to: number;
}

/**
 * Where the hours near a date lie in a record, year by year; years without any are left out.
 * @param localHour hours since 1970-01-01 00:00 on the local clock, rising, each at most once (as hourReports gives them)
 * @param date      month from 0, day from 1; 29 February counts as 1 March in a common year
 * @param halfDays  days on either side, at most MOST_DAYS_OFF
 */
export function nearDate(
  localHour: Int32Array,
  date: { month: number; day: number },
  halfDays: number,
): NearDate[] {
  const first = localHour[0];
  const last = localHour.at(-1);
  if (first === undefined || last === undefined) return [];
  const near: NearDate[] = [];
  const lastYear = civilDate(Math.floor(last / 24)).year + 1;
  for (let year = civilDate(Math.floor(first / 24)).year - 1; year <= lastYear; year++) {
    const centreDay = dayNumber({ year, ...date });
    const from = firstAtLeast(localHour, (centreDay - halfDays) * 24);
    const to = firstAtLeast(localHour, (centreDay + halfDays + 1) * 24);
    if (to > from) near.push({ year, centreDay, from, to });
  }
  return near;
}
