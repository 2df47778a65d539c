import { expect, test } from 'vitest';
import { coverageOf } from '../../../shared-calc/climate/coverage.ts';

const hour = (utc: string) => Date.parse(`${utc}:00Z`) / 3_600_000;
/** Every hour from one moment up to, but not, another. */
const span = (from: string, to: string) =>
  Array.from({ length: hour(to) - hour(from) }, (_, at) => hour(from) + at);

test('months have the hours of the calendar, 29 February in leap years only', () => {
  const { months, gaps } = coverageOf(Int32Array.from(span('2015-02-01T00:00', '2016-03-01T00:00')), 24, 10);
  expect(months).toHaveLength(13);
  // 28 and 29 days of 24 hours.
  expect(months[0]).toEqual({ year: 2015, month: 2, hourCount: 672, possibleCount: 672 });
  expect(months.at(-1)).toEqual({ year: 2016, month: 2, hourCount: 696, possibleCount: 696 });
  expect(gaps).toEqual([]);
});

test('gaps from the least length on are told longest first, and months without an hour stay in the list', () => {
  const hours = [
    ...span('2012-01-01T00:00', '2012-01-10T00:00'),
    // A day and an hour are missing.
    ...span('2012-01-11T01:00', '2012-01-20T00:00'),
    // 23 hours are missing: less than was asked for.
    ...span('2012-01-20T23:00', '2012-01-21T00:00'),
    // All of February is missing, 29 days of 24 hours, and 11 days of January.
    ...span('2012-03-01T00:00', '2012-03-01T02:00'),
  ];
  const { months, gaps } = coverageOf(Int32Array.from(hours), 24, 10);
  expect(gaps).toEqual([
    { fromHour: hour('2012-01-21T00:00'), hourCount: (11 + 29) * 24 },
    { fromHour: hour('2012-01-10T00:00'), hourCount: 25 },
  ]);
  expect(months.map(({ month, hourCount }) => [month, hourCount])).toEqual([
    [1, 9 * 24 + 9 * 24 - 25 + 24 + 1],
    [2, 0],
    [3, 2],
  ]);
  expect(coverageOf(Int32Array.from(hours), 24, 1).gaps).toHaveLength(1);
});

test('no hours have no months', () => {
  expect(coverageOf(new Int32Array(0), 24, 10)).toEqual({ months: [], gaps: [] });
});
