import { expect, test } from 'vitest';
import { civilDate, dayNumber } from '../../../shared-calc/climate/civil-date.ts';

test('days and dates are those of the platform’s own calendar, there and back', () => {
  // Four centuries hold every kind of year: 1900 and 2100 have no 29 February, 2000 has one.
  for (let day = -30_000; day < 60_000; day += 7) {
    const date = new Date(day * 86_400_000);
    const civil = civilDate(day);
    expect(civil).toEqual({
      year: date.getUTCFullYear(),
      month: date.getUTCMonth(),
      day: date.getUTCDate(),
    });
    expect(dayNumber(civil)).toBe(day);
  }
  expect(civilDate(11_016)).toEqual({ year: 2000, month: 1, day: 29 });
});

test('29 February of a common year is 1 March', () => {
  expect(dayNumber({ year: 2023, month: 1, day: 29 })).toBe(dayNumber({ year: 2023, month: 2, day: 1 }));
});
