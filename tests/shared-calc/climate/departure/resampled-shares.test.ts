import { describe, expect, test } from 'vitest';
import type { Judged } from '../../../../shared-calc/climate/departure/judge.ts';
import { resampledShares } from '../../../../shared-calc/climate/departure/resampled-shares.ts';
import type { RowsAround } from '../../../../shared-calc/climate/departure/rows-around.ts';

/** Fifteen days of one hour in so many years; `meets` says which of them keep the limits. */
function days(
  years: number,
  meets: (year: number, daysOff: number) => boolean,
): { rows: RowsAround; judged: Judged } {
  const each = Array.from({ length: years * 15 }, (_, i) => ({
    year: Math.floor(i / 15),
    off: (i % 15) - 7,
  }));
  return {
    rows: {
      place: Int32Array.from(each.keys()),
      daysOff: Int8Array.from(each, ({ off }) => off),
      year: Int16Array.from(each, ({ year }) => 2000 + year),
      hour: new Int8Array(each.length).fill(9),
    },
    judged: {
      observed: new Uint8Array(each.length).fill(1),
      failed: Uint8Array.from(each, ({ year, off }) => (meets(year, off) ? 0 : 1)),
    },
  };
}
function spread({ rows, judged }: ReturnType<typeof days>) {
  const { share, drawCount, of, groupCount } = resampledShares(rows, judged, 7, 4000);
  const nine = Array.from({ length: drawCount }, (_, draw) => share[draw * 24 + 9] ?? NaN);
  const mean = nine.reduce((sum, value) => sum + value, 0) / drawCount;
  const sd = Math.sqrt(nine.reduce((sum, value) => sum + (value - mean) ** 2, 0) / drawCount);
  return { mean, sd, of, groupCount, other: share[8] };
}

describe('resampling', () => {
  // A mean of n equal groups drawn with repetition has the variance p (1 - p) / n: half of ten years good, half bad.
  test('from six years on whole years are drawn: years all good or all bad spread as ten coins do', () => {
    const { mean, sd, of, groupCount, other } = spread(days(10, (year) => year % 2 === 0));
    expect([of, groupCount]).toEqual(['years', 10]);
    // 4,000 drawings: the mean's own error is 0.0025, that of the spread about 1 %.
    expect(Math.abs(mean - 0.5)).toBeLessThan(0.01);
    expect(Math.abs(sd - Math.sqrt(0.25 / 10))).toBeLessThan(0.006);
    // An hour without a day has no share, not one of nothing.
    expect(other).toBeNaN();
  });
  test('years all alike leave nothing to chance, however their days differ', () => {
    expect(spread(days(8, (_, off) => off < 3)).sd).toBeLessThan(1e-12);
  });
  test('fewer than six years are drawn in blocks of five days: three a year', () => {
    const { of, groupCount, mean, sd } = spread(days(5, (_, off) => off < -2));
    expect([of, groupCount]).toEqual(['blocks of five days', 15]);
    // Five of fifteen blocks are good: p = 1/3.
    expect(Math.abs(mean - 1 / 3)).toBeLessThan(0.01);
    expect(Math.abs(sd - Math.sqrt(((1 / 3) * (2 / 3)) / 15))).toBeLessThan(0.006);
  });
  test('the same seed gives the same drawings', () => {
    const given = days(7, (year) => year > 2);
    const first = resampledShares(given.rows, given.judged, 7, 200, 5);
    expect(resampledShares(given.rows, given.judged, 7, 200, 5).share).toEqual(first.share);
    expect(resampledShares(given.rows, given.judged, 7, 200, 6).share).not.toEqual(first.share);
  });
});
