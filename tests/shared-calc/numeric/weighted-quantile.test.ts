import { quantile } from 'd3';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { weightedQuantile } from '../../../shared-calc/numeric/weighted-quantile.ts';

const numbers = fc.array(fc.double({ min: -100, max: 100, noNaN: true }), { minLength: 1, maxLength: 30 });
const probs = fc.double({ min: 0, max: 1, noNaN: true });

test('with equal weights it is type R-7, as d3-array computes it', () => {
  fc.assert(
    fc.property(numbers, probs, fc.double({ min: 0.1, max: 10, noNaN: true }), (values, p, weight) => {
      const weighted = weightedQuantile(
        values,
        values.map(() => weight),
        p,
      );
      expect(Math.abs(weighted - (quantile(values, p) ?? NaN))).toBeLessThan(1e-10);
    }),
    { seed: 1 },
  );
});

test('a value of weight 0 is not there, and only the ratios of weights matter', () => {
  expect(weightedQuantile([5, 1, 9, 3], [1, 2, 0, 1], 0.5)).toBe(weightedQuantile([5, 1, 3], [2, 4, 2], 0.5));
});

test('the ends are the least and the greatest value; between them it never falls as p rises', () => {
  const values = [3, 1, 4, 1, 5];
  const weights = [1, 2, 0.5, 3, 0.1];
  expect(weightedQuantile(values, weights, 0)).toBe(1);
  expect(weightedQuantile(values, weights, 1)).toBe(5);
  let before = -Infinity;
  for (let p = 0; p <= 1; p += 0.01) {
    const here = weightedQuantile(values, weights, Math.min(p, 1));
    expect(here).toBeGreaterThanOrEqual(before);
    before = here;
  }
});

// By the definition, by hand: values 1, 2, 4 with weights 1, 2, 1 stand at 0, 1 x 2 + 2 x 1 = 4, 2 x 1 + 2 x 3 = 8 of 8.
test('three weighted values by hand', () => {
  expect(weightedQuantile([1, 2, 4], [1, 2, 1], 0.5)).toBe(2);
  expect(weightedQuantile([1, 2, 4], [1, 2, 1], 0.25)).toBe(1.5);
  expect(weightedQuantile([1, 2, 4], [1, 2, 1], 0.75)).toBe(3);
});
