import tzLookup from '@photostructure/tz-lookup';
import { Temporal } from 'temporal-polyfill/implementation';
import { daysInMonth } from './calendar.ts';
import type { Report } from './month-collector.ts';

/**
 * Minutes that a place's standard time is ahead of UTC, whatever summer time it keeps: the lesser of its winter's and
 * summer's.
 * @param year in which; zones have changed over the years
 */
export function standardOffsetMinutes(latitudeDeg: number, longitudeDeg: number, year: number): number {
  const timeZone = tzLookup(latitudeDeg, longitudeDeg);
  const offsets = [1, 7].map((month) =>
    Math.round(Temporal.ZonedDateTime.from({ year, month, day: 1, timeZone }).offsetNanoseconds / 60e9),
  );
  return Math.min(...offsets);
}

/**
 * Put a local moment into the report as UTC.
 * @param minuteOfMonth local; the last minute of the month and one more is allowed for, as 24:00
 * @param offsetMinutes what the clock is ahead of UTC, less than a day
 */
export function putLocalTime(
  report: Report,
  year: number,
  month: number,
  minuteOfMonth: number,
  offsetMinutes: number,
): void {
  let monthIndex = year * 12 + month - 1;
  let minute = minuteOfMonth - offsetMinutes;
  if (minute < 0) {
    monthIndex--;
    minute += lengthMinutes(monthIndex);
  } else if (minute >= lengthMinutes(monthIndex)) {
    minute -= lengthMinutes(monthIndex);
    monthIndex++;
  }
  report.monthIndex = monthIndex;
  report.minuteOfMonth = minute;
}

function lengthMinutes(monthIndex: number): number {
  return daysInMonth(Math.floor(monthIndex / 12), (monthIndex % 12) + 1) * 1440;
}
