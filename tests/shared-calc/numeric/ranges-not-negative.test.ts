import fc from 'fast-check';
import { expect, test } from 'vitest';
import { rangesNotNegative } from '../../../shared-calc/numeric/ranges-not-negative.ts';

test('the ranges of a sine are those between its zeros', () => {
  const ranges = rangesNotNegative(Math.sin, 1, 20, 1);
  const ends = ranges.map(({ from, to }) => [from / Math.PI, to / Math.PI]);
  expect(ends).toHaveLength(4);
  [
    [1 / Math.PI, 1],
    [2, 3],
    [4, 5],
    [6, 20 / Math.PI],
  ].forEach(([from = 0, to = 0], i) => {
    expect(ends[i]?.[0]).toBeCloseTo(from, 12);
    expect(ends[i]?.[1]).toBeCloseTo(to, 12);
  });
});

test('a narrow dip between two places that are kept is found by the bound on the slope', () => {
  // A V of slope 1 that lies a thousandth below zero at 3.21.
  const ranges = rangesNotNegative((x) => Math.abs(x - 3.21) - 1e-3, 0, 100, 1);
  expect(ranges).toHaveLength(2);
  expect(ranges[0]?.to).toBeCloseTo(3.209, 12);
  expect(ranges[1]?.from).toBeCloseTo(3.211, 12);
});

test('a place that is only touched from below, and a stretch on zero, are kept', () => {
  expect(rangesNotNegative((x) => -Math.abs(x - 5), 0, 10, 1, [5])).toEqual([{ from: 5, to: 5 }]);
  expect(rangesNotNegative(() => 0, 0, 10, 1)).toEqual([{ from: 0, to: 10 }]);
});

test('a jump is kept on the side where the function is not negative', () => {
  const step = (x: number) => (x <= 4 ? 1 : -1);
  expect(rangesNotNegative(step, 0, 10, 0, [4])).toEqual([{ from: 0, to: 4 }]);
});

test('a range of no length is one place', () => {
  expect(rangesNotNegative((x) => x, 2, 2, 1)).toEqual([{ from: 2, to: 2 }]);
  expect(rangesNotNegative((x) => -x, 2, 2, 1)).toEqual([]);
});

test('broken lines drawn by chance are kept just where an exact look at each piece says so', () => {
  fc.assert(
    fc.property(
      fc.array(fc.double({ min: -1, max: 1, noNaN: true }), { minLength: 3, maxLength: 12 }),
      (heights) => {
        const last = heights.length - 1;
        const f = (x: number) => {
          const k = Math.min(Math.floor(x), last - 1);
          const [a = 0, b = 0] = [heights[k], heights[k + 1]];
          return a + (b - a) * (x - k);
        };
        const ranges = rangesNotNegative(f, 0, last, 2);
        for (let i = 0; i <= 1000; i++) {
          const x = (last * i) / 1000;
          // Away from the zeros: there rounding decides.
          if (Math.abs(f(x)) < 1e-9) continue;
          expect(ranges.some(({ from, to }) => x >= from && x <= to)).toBe(f(x) > 0);
        }
        for (const { from, to } of ranges) {
          expect(f(from)).toBeGreaterThanOrEqual(0);
          expect(f(to)).toBeGreaterThanOrEqual(0);
        }
      },
    ),
    { numRuns: 200, seed: 3 },
  );
});
