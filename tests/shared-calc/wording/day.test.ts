import { expect, test } from 'vitest';
import { beyondWords, dayHourWords, windowWords, worstWords } from '../../../shared-calc/wording/day.ts';

const ft = 0.3048;
const units = {
  altitude: 'ft',
  temperature: 'degC',
  speed: 'kt',
  distance: 'm',
  climbRate: 'ft/min',
} as const;
const plainly = (text: string) => text.replaceAll(/[\u2009\u2060]/g, '').replaceAll('\u00a0', ' ');
const hours = (value: number | null) => Array.from({ length: 24 }, () => value);

test('an hour says its figures, rounded to the worse side, with days and years', () => {
  const of = (share: number, value: number | null) => ({ share, daysNeeded: 100, value: hours(value) });
  const words = (quantiles: { share: number; daysNeeded: number; value: (number | null)[] }[], days = 165) =>
    plainly(
      dayHourWords(9, {
        figure: 'densityAltitude',
        quantiles,
        dayCount: hours(days).map(Number),
        yearCount: hours(11).map(Number),
        nature: 'observed',
        units,
      }),
    );
  // 6 501 ft round up to the next ten: it counts against a limit.
  expect(words([of(0.9, 6501 * ft)])).toBe(
    '09:00: 6510 ft or less on nine days in ten; 165 days of 11 years',
  );
  expect(words([of(0.9, null)], 45)).toBe('09:00: too few, 45 days of 11 years');
  // Enough days and no figure: hotter than the manual's table on more than one day in ten.
  expect(words([of(0.9, null)])).toBe(
    '09:00: beyond the manual’s table for nine days in ten; 165 days of 11 years',
  );
  expect(words([of(0.9, null)], 0)).toBe('09:00: too few, no day');
});

test('a headwind is at least so much, rounded down', () => {
  // 10 kt are 5.144 m/s.
  const words = dayHourWords(9, {
    figure: 'headwind',
    quantiles: [{ share: 0.9, daysNeeded: 100, value: hours(5.6) }],
    dayCount: hours(165).map(Number),
    yearCount: hours(1).map(Number),
    nature: 'observed',
    units,
  });
  expect(plainly(words)).toBe('09:00: 10 kt or more on nine days in ten; 165 days of 1 year');
});

test('a window names its first and last day', () => {
  expect(windowWords({ month: 6, day: 19 }, 7, 11)).toBe('12 to 26 July of 11 years, every day alike');
  expect(windowWords({ month: 11, day: 30 }, 7, 1)).toBe(
    '23 December to 6 January of 1 year, every day alike',
  );
});

test('the worst says of how many days it is', () => {
  expect(worstWords('densityAltitude', 165)).toBe('highest of 165 days');
  expect(worstWords('headwind', 165)).toBe('lowest of 165 days');
  expect(worstWords('crosswind', 19)).toBe('too few, 19 days');
});

test('the worst day and the days beyond a limit are said where they are known', () => {
  const of = (worst: number | null, beyond: number | null, days = 164) =>
    plainly(
      beyondWords(9, {
        figure: 'densityAltitude',
        worst: hours(worst),
        beyondCount: beyond === null ? null : hours(beyond).map(Number),
        dayCount: hours(days).map(Number),
        units,
      }),
    );
  expect(of(9131 * ft, 46)).toBe('9140 ft the highest of 164 days, 46 of 164 beyond the limit');
  expect(of(9131 * ft, null)).toBe('9140 ft the highest of 164 days');
  expect(of(null, 3, 12)).toBe('3 of 12 beyond the limit');
  expect(of(null, 0, 0)).toBe('');
});
