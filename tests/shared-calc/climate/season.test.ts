import { quantileSorted } from 'd3';
import { expect, test } from 'vitest';
import { seasonCells, seasonOrder, seasonQuantiles } from '../../../shared-calc/climate/season.ts';

/** Hours of eleven years, one value each, some missing: seeded by arithmetic, so that it is the same everywhere. */
const localHour = Int32Array.from({ length: 96_360 }, (_, i) => Date.UTC(2010, 0, 1) / 3_600_000 + i);
const value = Float64Array.from(localHour, (hour) =>
  hour % 17 === 0 ? NaN : 1000 + 300 * Math.sin(hour / 3.7) + ((hour * 7919) % 613),
);

test('cells hold the values of their month and hour, as a plain grouping by the calendar says', () => {
  const cells = seasonCells(seasonOrder(localHour), value);
  const groups = Array.from({ length: 288 }, (): number[] => []);
  localHour.forEach((hour, i) => {
    const date = new Date(hour * 3_600_000);
    const cell = date.getUTCMonth() * 24 + date.getUTCHours();
    if (!Number.isNaN(value[i])) groups[cell]?.push(value[i] ?? NaN);
  });
  groups.forEach((group, cell) => {
    expect([...cells.values.subarray(cells.starts[cell], cells.starts[cell + 1])]).toEqual(group);
  });
  expect([...cells.yearCount]).toEqual(
    Array.from({ length: 288 }, (_, cell) => (cell < 11 * 24 + 24 ? 11 : 0)),
  );
  expect(cells.years).toEqual([2010, 2011, 2012, 2013, 2014, 2015, 2016, 2017, 2018, 2019, 2020]);
  const quantiles = seasonQuantiles(cells, [0.5, 0.9]);
  for (const [at, share] of [0.5, 0.9].entries()) {
    const season = quantiles[at];
    groups.forEach((group, cell) => {
      const sorted = [...group].sort((a, b) => a - b);
      expect(season?.dayCount[cell]).toBe(sorted.length);
      expect(season?.quantile[cell]).toBeCloseTo(quantileSorted(sorted, share) ?? NaN, 8);
    });
  }
});

test('a cell with too few days has its count and no quantile', () => {
  const days = (count: number) =>
    Int32Array.from({ length: count }, (_, day) => {
      const year = 2010 + Math.floor(day / 30);
      return Date.UTC(year, 6, 1 + (day % 30), 15) / 3_600_000;
    });
  const july15 = 6 * 24 + 15;
  const of = (count: number, share: number) =>
    seasonQuantiles(seasonCells(seasonOrder(days(count)), new Float64Array(count).fill(1500)), [share])[0];
  expect(of(19, 0.5)?.quantile[july15]).toBeNull();
  expect(of(19, 0.5)?.dayCount[july15]).toBe(19);
  expect(of(20, 0.5)?.quantile[july15]).toBe(1500);
  expect(of(99, 0.9)?.quantile[july15]).toBeNull();
  expect(of(100, 0.9)?.quantile[july15]).toBe(1500);
  expect(of(99, 0.9)?.daysNeeded).toBe(100);
});

test('a year that lends one evening stands behind the hours of that evening alone', () => {
  const hours = Int32Array.from(
    { length: 24 * 31 + 6 },
    (_, i) => Date.UTC(2015, 11, 31, 18) / 3_600_000 + i,
  );
  const { yearCount, years } = seasonCells(seasonOrder(hours), new Float64Array(hours.length).fill(1));
  expect(years).toEqual([2015, 2016]);
  expect(yearCount[0 * 24 + 20]).toBe(1);
  expect(yearCount[11 * 24 + 20]).toBe(1);
  expect(yearCount[11 * 24 + 12]).toBe(0);
});

test('days before 1970 and in leap years fall into their months', () => {
  for (const [text, cell] of [
    ['1969-12-31T23', 11 * 24 + 23],
    ['1948-02-29T00', 24],
    ['1900-03-01T05', 2 * 24 + 5],
    ['2000-02-29T12', 24 + 12],
  ] as const) {
    const hour = Date.parse(`${text}:00:00Z`) / 3_600_000;
    const cells = seasonCells(seasonOrder(Int32Array.of(hour)), Float64Array.of(1));
    expect(cells.starts[cell + 1], text).toBe(1);
    expect(cells.starts[cell], text).toBe(0);
    expect(cells.years).toEqual([Number(text.slice(0, 4))]);
  }
});
