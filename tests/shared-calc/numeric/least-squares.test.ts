import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { generalisedLeastSquares, leastSquares } from '../../../shared-calc/numeric/least-squares.ts';
import { seededNormals } from '../../../shared-calc/numeric/seeded-normals.ts';

const powers = (degree: number) => (x: number) => Array.from({ length: degree + 1 }, (_, k) => x ** k);

/** Digits that agree: -log10 of the relative error, as NIST scores software. */
function digits(actual: number, certified: number): number {
  return -Math.log10(Math.max(Math.abs(actual - certified) / Math.abs(certified), 1e-16));
}

describe('NIST StRD linear regression (data and certified values from memory; they confirm each other)', () => {
  test('Longley: ill-conditioned economics, six variables', () => {
    const rows = [
      [83, 234289, 2356, 1590, 107608, 1947, 60323],
      [88.5, 259426, 2325, 1456, 108632, 1948, 61122],
      [88.2, 258054, 3682, 1616, 109773, 1949, 60171],
      [89.5, 284599, 3351, 1650, 110929, 1950, 61187],
      [96.2, 328975, 2099, 3099, 112075, 1951, 63221],
      [98.1, 346999, 1932, 3594, 113270, 1952, 63639],
      [99, 365385, 1870, 3547, 115094, 1953, 64989],
      [100, 363112, 3578, 3350, 116219, 1954, 63761],
      [101.2, 397469, 2904, 3048, 117388, 1955, 66019],
      [104.6, 419180, 2822, 2857, 118734, 1956, 67857],
      [108.4, 442769, 2936, 2798, 120445, 1957, 68169],
      [110.8, 444546, 4681, 2637, 121950, 1958, 66513],
      [112.6, 482704, 3813, 2552, 123366, 1959, 68655],
      [114.2, 502601, 3931, 2514, 125368, 1960, 69564],
      [115.7, 518173, 4806, 2572, 127852, 1961, 69331],
      [116.9, 554894, 4007, 2827, 130081, 1962, 70551],
    ];
    const fit = leastSquares(
      rows.map((row) => [1, ...row.slice(0, 6)]),
      rows.map((row) => row[6] ?? NaN),
    );
    const certified = [
      -3482258.63459582, 15.0618722713733, -0.035819179292591, -2.02022980381683, -1.03322686717359,
      -0.0511041056535807, 1829.15146461355,
    ];
    certified.forEach((value, i) => {
      // Certified to 15 digits, of which the condition of the problem (some 5e9 unscaled) leaves ten.
      expect(digits(fit.coefficients[i] ?? NaN, value)).toBeGreaterThan(10);
    });
    expect(digits(fit.residualSd ?? NaN, 304.854073561965)).toBeGreaterThan(10);
    expect(digits(Math.sqrt(fit.covariance?.[0]?.[0] ?? NaN), 890420.383607373)).toBeGreaterThan(10);
    expect(fit.degreesOfFreedom).toBe(9);
  });

  test('Wampler2: a polynomial of degree five, exact, coefficients from 1 to 0.00001', () => {
    const x = Array.from({ length: 21 }, (_, i) => i);
    const y = x.map((v) => 1 + 0.1 * v + 0.01 * v ** 2 + 0.001 * v ** 3 + 1e-4 * v ** 4 + 1e-5 * v ** 5);
    const fit = leastSquares(x.map(powers(5)), y);
    [1, 0.1, 0.01, 0.001, 1e-4, 1e-5].forEach((value, i) => {
      expect(digits(fit.coefficients[i] ?? NaN, value)).toBeGreaterThan(10);
    });
  });

  test('Wampler3: the same degree with residuals', () => {
    const x = Array.from({ length: 21 }, (_, i) => i);
    const y = [
      760, -2042, 2111, -1684, 3888, 1858, 11379, 17560, 39287, 64382, 113159, 175108, 273291, 400186, 581243,
      811568, 1121004, 1506550, 2002767, 2611612, 3369180,
    ];
    const fit = leastSquares(x.map(powers(5)), y);
    for (const value of fit.coefficients) expect(digits(value, 1)).toBeGreaterThan(8);
    expect(digits(fit.residualSd ?? NaN, 2360.14502379268)).toBeGreaterThan(10);
    expect(digits(Math.sqrt(fit.covariance?.[0]?.[0] ?? NaN), 2152.3262467817)).toBeGreaterThan(10);
    expect(digits(Math.sqrt(fit.covariance?.[1]?.[1] ?? NaN), 2363.55173469681)).toBeGreaterThan(10);
  });
});

test('a weight of three is the same as three equal observations', () => {
  const design = [
    [1, 0],
    [1, 1],
    [1, 2],
    [1, 4],
  ];
  const y = [1, 3, 2, 7];
  const weighted = leastSquares(design, y, [1, 3, 1, 2]);
  const rows = [0, 1, 1, 1, 2, 3, 3];
  const repeated = leastSquares(
    rows.map((i) => design[i] ?? []),
    rows.map((i) => y[i] ?? 0),
  );
  weighted.coefficients.forEach((value, i) => {
    expect(value).toBeCloseTo(repeated.coefficients[i] ?? NaN, 12);
  });
  expect(weighted.residualSs).toBeCloseTo(repeated.residualSs, 12);
});

test('generalised least squares: a diagonal covariance is weights, and correlated errors follow the formula', () => {
  const random = seededNormals(3).normal;
  fc.assert(
    fc.property(fc.integer({ min: 4, max: 9 }), (n) => {
      const design = Array.from({ length: n }, (_, i) => [1, i + 0.3 * random()]);
      const y = Array.from({ length: n }, () => random());
      const weights = Array.from({ length: n }, () => Math.exp(random()));
      const byWeights = leastSquares(design, y, weights);
      const diagonal = weights.map((w, i) => weights.map((_, j) => (i === j ? 1 / w : 0)));
      const byCovariance = generalisedLeastSquares(design, y, diagonal);
      byWeights.coefficients.forEach((value, i) => {
        expect(Math.abs(value - (byCovariance.coefficients[i] ?? NaN))).toBeLessThan(1e-11);
      });
    }),
    { numRuns: 50, seed: 6 },
  );
  // Mean of two readings with variances 1 and 4 and covariance 0.5, by hand: weights (4 - 0.5, 1 - 0.5) / 4,
  // variance (1 x 4 - 0.25) / 4.
  const mean = generalisedLeastSquares([[1], [1]], [10, 14], [[1, 0.5], [0.5, 4]]); // prettier-ignore
  expect(mean.coefficients[0]).toBeCloseTo((3.5 * 10 + 0.5 * 14) / 4, 12);
  expect(mean.inverseNormal[0]?.[0]).toBeCloseTo(3.75 / 4, 12);
});
