import { daysInMonth } from './calendar.ts';
import type { Report } from './report-rows.ts';

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
