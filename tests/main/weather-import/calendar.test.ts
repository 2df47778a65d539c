import { expect, test } from 'vitest';
import { minuteOfMonth, monthStartEpochS } from '../../../main/weather-import/calendar.ts';

test('every minute lies where the Gregorian calendar of the platform puts it', () => {
  for (const [year, month, day, hour, minute] of [
    [2000, 2, 29, 23, 59],
    [1999, 12, 31, 0, 0],
    [2016, 3, 1, 12, 30],
  ] as const)
    expect(monthStartEpochS(year * 12 + month - 1) + 60 * minuteOfMonth(year, month, day, hour, minute)).toBe(
      Date.UTC(year, month - 1, day, hour, minute) / 1000,
    );
});

test('moments that do not exist are none', () => {
  for (const [year, month, day, hour, minute] of [
    [2015, 2, 29, 0, 0],
    [1900, 2, 29, 0, 0],
    [2020, 4, 31, 0, 0],
    [2020, 13, 1, 0, 0],
    [2020, 0, 1, 0, 0],
    [2020, 1, 0, 0, 0],
    [2020, 1, 1, 24, 0],
    [2020, 1, 1, 0, 60],
    [202, 1, 1, 0, 0],
    [2020, 1, 1, -1, 0],
  ] as const)
    expect(minuteOfMonth(year, month, day, hour, minute)).toBe(-1);
});
