import fc from 'fast-check';
import { expect, test } from 'vitest';
import { isotonicMeans } from '../../../shared-calc/numeric/isotonic-means.ts';

const finite = fc.double({ min: -1e6, max: 1e6, noNaN: true });
const weight = fc.double({ min: 0.01, max: 100, noNaN: true });

// scipy 1.17.1, scipy.optimize.isotonic_regression; sevenths and thirds to rounding.
test('weighted means agree with scipy', () => {
  const means = isotonicMeans([1, 4, 2, 3, 9, 7, 8, 6, 12], [1, 2, 1, 0.5, 3, 1, 1, 4, 1]);
  const scipy = [1, 23 / 7, 23 / 7, 23 / 7, 22 / 3, 22 / 3, 22 / 3, 22 / 3, 12];
  means.forEach((mean, i) => {
    expect(mean).toBeCloseTo(scipy[i] ?? NaN, 12);
  });
});

test('a sequence in order is returned as it is, and none is none', () => {
  expect(isotonicMeans([1, 1, 2, 5], [3, 1, 2, 1])).toEqual([1, 1, 2, 5]);
  expect(isotonicMeans([], [])).toEqual([]);
});

test('the result never falls and keeps the weighted sum', () => {
  fc.assert(
    fc.property(fc.array(fc.tuple(finite, weight), { minLength: 1, maxLength: 40 }), (pairs) => {
      const values = pairs.map(([value]) => value);
      const weights = pairs.map(([, w]) => w);
      const means = isotonicMeans(values, weights);
      const sum = (of: number[]) => of.reduce((total, value, i) => total + value * (weights[i] ?? 0), 0);
      means.forEach((mean, i) => {
        expect(mean).toBeGreaterThanOrEqual(means[i - 1] ?? -Infinity);
      });
      // Rounding of forty sums of up to 1e8.
      expect(Math.abs(sum(means) - sum(values))).toBeLessThan(1e-5);
    }),
  );
});

test('a weight of two is a value given twice', () => {
  fc.assert(
    fc.property(fc.array(finite, { minLength: 2, maxLength: 10 }), (values) => {
      const [first = 0, ...rest] = values;
      const twice = isotonicMeans([first, ...values], [1, ...values.map(() => 1)]).slice(1);
      isotonicMeans([first, ...rest], [2, ...rest.map(() => 1)]).forEach((mean, i) => {
        expect(Math.abs(mean - (twice[i] ?? NaN))).toBeLessThan(1e-8);
      });
    }),
  );
});
