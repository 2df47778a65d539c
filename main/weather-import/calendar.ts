const daysOfMonth = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];

/** Days in a month of the Gregorian calendar. @param month 1 to 12 */
export function daysInMonth(year: number, month: number): number {
  const leap = year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0);
  return month === 2 && leap ? 29 : (daysOfMonth[month - 1] ?? 0);
}

/** UTC epoch seconds of a month's first minute. @param monthIndex months since year 0: 12 x year + month - 1 */
export function monthStartEpochS(monthIndex: number): number {
  return Date.UTC(Math.floor(monthIndex / 12), monthIndex % 12, 1) / 1000;
}

/**
 * Minute within the month, or -1 where there is no such moment: 31 April, 24:00.
 * @param year 1900 to 2100 are taken: outside them a digit was spoilt
 */
export function minuteOfMonth(
  year: number,
  month: number,
  day: number,
  hour: number,
  minute: number,
): number {
  if (year < 1900 || year > 2100 || month < 1 || month > 12) return -1;
  if (day < 1 || day > daysInMonth(year, month)) return -1;
  if (hour < 0 || hour > 23 || minute < 0 || minute > 59) return -1;
  return ((day - 1) * 24 + hour) * 60 + minute;
}
