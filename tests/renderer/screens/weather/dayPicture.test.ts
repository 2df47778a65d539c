import { expect, test } from 'vitest';
import { dateInHand } from '../../../../renderer/screens/weather/dateInHand.ts';
import {
  dateAt,
  dateNear,
  dayOfYear,
  daysInYear,
  monthOfYear,
} from '../../../../renderer/screens/weather/dateInYear.ts';
import {
  bandPieces,
  dayPieces,
  emptyStretches,
  roundDomain,
} from '../../../../renderer/screens/weather/dayPicture.ts';

const hours = Array.from({ length: 24 }, (_, hour): number | null => hour);

test('a line goes from midnight to midnight and is cut where there is no figure', () => {
  expect(dayPieces(hours)[0]).toHaveLength(25);
  expect(dayPieces(hours)[0]?.at(-1)).toEqual([24, 0]);
  // A single day brings its own next midnight.
  expect(dayPieces([...hours, 99])[0]?.at(-1)).toEqual([24, 99]);
  const holed = hours.map((value, hour) => (hour === 5 ? null : value));
  expect(dayPieces(holed).map((piece) => piece.length)).toEqual([5, 19]);
  expect(bandPieces(holed, hours).map((piece) => piece.length)).toEqual([5, 19]);
});

test('hours without a figure are hatched half an hour to either side', () => {
  const holed = hours.map((value, hour) => (hour < 2 || hour === 12 ? null : value));
  expect(emptyStretches(holed)).toEqual([
    { from: 0, to: 1.5 },
    { from: 11.5, to: 12.5 },
    { from: 23.5, to: 24 },
  ]);
  expect(emptyStretches(hours)).toEqual([]);
});

test('an axis ends at round figures that hold every figure', () => {
  const [low, high] = roundDomain([3210, 5870]);
  expect(low).toBeLessThanOrEqual(3210);
  expect(high).toBeGreaterThanOrEqual(5870);
  expect(low % 500).toBe(0);
  expect(high % 500).toBe(0);
});

test('dates and places in the year belong together', () => {
  expect(monthOfYear('2026-07-16')).toBeCloseTo(6.5, 9);
  expect(dateNear(2026, 6.5)).toBe('2026-07-16');
  expect(dateNear(2026, -3)).toBe('2026-01-01');
  expect(dateNear(2026, 15)).toBe('2026-12-31');
  expect(dayOfYear('2026-01-01')).toBe(0);
  expect(dateAt(2026, 364)).toBe('2026-12-31');
  expect([daysInYear(2026), daysInYear(2028)]).toEqual([365, 366]);
  for (const date of ['2028-02-29', '2026-03-29', '2026-12-31'])
    expect(dateAt(Number(date.slice(0, 4)), dayOfYear(date))).toBe(date);
});

test('the date in hand is today unless the record has nothing in this month', () => {
  const days = (months: number[]) =>
    Array.from({ length: 288 }, (_, cell) => (months.includes(Math.floor(cell / 24)) ? 30 : 0));
  expect(dateInHand(null, days([6, 10]), '2026-11-25')).toBe('2026-11-25');
  expect(dateInHand('2026-01-03', days([6]), '2026-11-25')).toBe('2026-01-03');
  // January and February alone: January is nearer to November, around the new year.
  expect(dateInHand(null, days([0, 1]), '2026-11-25')).toBe('2026-01-16');
  expect(dateInHand(null, days([]), '2026-11-25')).toBe('2026-11-25');
});
