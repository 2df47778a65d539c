import { quantileSorted } from 'd3';
import { describe, expect, test } from 'vitest';
import {
  dayCounts,
  dayQuantiles,
  daysBeyond,
  dayWindow,
  dayWorst,
} from '../../../shared-calc/climate/day-window.ts';

const hourAt = (year: number, month: number, day: number, hour = 0) =>
  Date.UTC(year, month, day, hour) / 3_600_000;

/** Every hour of eleven years, one value each, some missing: by arithmetic, so that it is the same everywhere. */
const localHour = Int32Array.from({ length: 96_432 }, (_, i) => hourAt(2010, 0, 1) + i);
const value = Float64Array.from(localHour, (hour) =>
  hour % 17 === 0 ? NaN : 1000 + 300 * Math.sin(hour / 3.7) + ((hour * 7919) % 613),
);

/** A plain grouping: the platform's calendar, days counted from the date of each year. */
function plainWindow(month: number, day: number, width: number): { hours: number[][]; years: number } {
  const hours = Array.from({ length: 24 }, (): number[] => []);
  const years = new Set<number>();
  localHour.forEach((hour, i) => {
    const at = value[i] ?? NaN;
    if (Number.isNaN(at)) return;
    const dayStart = Date.UTC(
      new Date(hour * 3_600_000).getUTCFullYear(),
      new Date(hour * 3_600_000).getUTCMonth(),
      new Date(hour * 3_600_000).getUTCDate(),
    );
    for (let year = 2009; year <= 2022; year++)
      if (Math.abs(dayStart - Date.UTC(year, month, day)) / 86_400_000 <= width) {
        hours[new Date(hour * 3_600_000).getUTCHours()]?.push(at);
        years.add(year);
      }
  });
  return { hours, years: years.size };
}

describe('the days near a date', () => {
  // The middle of a year, both sides of a new year, and the day that three years in four do not have.
  for (const [month, day] of [
    [6, 19],
    [11, 30],
    [0, 2],
    [1, 29],
  ] as const)
    test(`are those of a plain grouping around ${String(day)} of month ${String(month + 1)}`, () => {
      const window = dayWindow(localHour, value, { month, day }, [0.9]);
      const plain = plainWindow(month, day, window.halfWidthDays);
      expect(dayCounts(window)).toEqual(plain.hours.map((hour) => hour.length));
      expect(window.years).toHaveLength(plain.years);
      for (const share of [0.5, 0.9]) {
        const found = dayQuantiles(window, share, 'up');
        const other = dayQuantiles(window, share, 'down');
        plain.hours.forEach((hour, at) => {
          const sorted = [...hour].sort((a, b) => a - b);
          expect(found[at]).toBeCloseTo(quantileSorted(sorted, share) ?? NaN, 8);
          expect(other[at]).toBeCloseTo(quantileSorted(sorted, 1 - share) ?? NaN, 8);
        });
      }
      expect(daysBeyond(window, 1300, 'up')).toEqual(
        plain.hours.map((hour) => hour.filter((each) => each > 1300).length),
      );
      expect(dayWorst(window, 'up')).toEqual(plain.hours.map((hour) => Math.max(...hour)));
      expect(dayWorst(window, 'down')).toEqual(plain.hours.map((hour) => Math.min(...hour)));
    });
});

describe('the width of the window', () => {
  const record = (years: number, from = 0, to = 24) => {
    const hours: number[] = [];
    for (let year = 0; year < years; year++)
      for (let day = 0; day < 365; day++)
        for (let hour = from; hour < to; hour++) hours.push(hourAt(2010 + year, 0, 1 + day, hour));
    return Int32Array.from(new Set(hours)).sort();
  };
  const widthOf = (years: number, shares: number[], from = 0, to = 24) => {
    const hours = record(years, from, to);
    return dayWindow(hours, new Float64Array(hours.length).fill(1), { month: 6, day: 19 }, shares)
      .halfWidthDays;
  };

  test('is a week on either side where that has enough days', () => {
    // 15 days of 7 years are 105, and nine days in ten needs 100.
    expect(widthOf(7, [0.9])).toBe(7);
  });
  test('grows day by day until it has them', () => {
    // Six years: 2 w + 1 days at least 100/6 = 16.7, so w = 8.
    expect(widthOf(6, [0.9])).toBe(8);
    // Three years: 2 w + 1 at least 33.3, so w = 17.
    expect(widthOf(3, [0.9])).toBe(17);
  });
  test('is wide enough for half the days where nine in ten cannot be had', () => {
    // One year: 2 w + 1 at least 20, so w = 10; 43 days are never 100.
    expect(widthOf(1, [0.5, 0.9])).toBe(10);
  });
  test('is a week where even three have too few, and says too few', () => {
    const hours = record(2);
    const window = dayWindow(hours, new Float64Array(hours.length).fill(1), { month: 6, day: 19 }, [0.9]);
    // No width has enough, so none is wider than a week for nothing.
    expect(window.halfWidthDays).toBe(7);
    expect(dayQuantiles(window, 0.9, 'up').every((each) => each === null)).toBe(true);
    expect(dayQuantiles(window, 0.5, 'up').every((each) => each === 1)).toBe(true);
  });
  test('an hour that is never reported widens nothing', () => {
    expect(widthOf(7, [0.9], 6, 22)).toBe(7);
  });
});

test('a limit met exactly is met, on either side', () => {
  const hours = Int32Array.from({ length: 5 }, (_, year) => hourAt(2010 + year, 6, 19, 15));
  const window = dayWindow(hours, Float64Array.of(1, 2, 3, 3, 4), { month: 6, day: 19 }, [0.5]);
  expect(daysBeyond(window, 3, 'up')[15]).toBe(1);
  expect(daysBeyond(window, 3, 'down')[15]).toBe(2);
});

test('the worst of fewer than 20 days is not said', () => {
  const worst = (count: number) => {
    const hours = Int32Array.from({ length: count }, (_, year) => hourAt(1990 + year, 6, 19, 15));
    return dayWorst(
      dayWindow(hours, new Float64Array(count).fill(5), { month: 6, day: 19 }, [0.5]),
      'up',
    )[15];
  };
  expect(worst(19)).toBeNull();
  expect(worst(20)).toBe(5);
});
