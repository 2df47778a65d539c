import { expect, test } from 'vitest';
import { chiSquaredTailProb } from '../../../shared-calc/numeric/chi-squared.ts';
import { logGamma } from '../../../shared-calc/numeric/log-gamma.ts';

test('upper critical values are those of the NIST/SEMATECH e-Handbook, 1.3.6.7.4', () => {
  // Printed to three decimals, from memory: degrees of freedom, then the value exceeded with that probability.
  for (const [degrees, prob, value] of [
    [1, 0.05, 3.841],
    [2, 0.05, 5.991],
    [5, 0.01, 15.086],
    [10, 0.05, 18.307],
    [30, 0.1, 40.256],
    [100, 0.001, 149.449],
  ] as const) {
    // Half of the last digit, times the steepest density among these (0.03 at one degree of freedom).
    expect(Math.abs(chiSquaredTailProb(value, degrees) - prob)).toBeLessThan(2e-5);
  }
});

test('two degrees of freedom are an exponential, and the tail runs from one to nothing', () => {
  for (const x of [0.1, 1, 7, 30]) expect(chiSquaredTailProb(x, 2)).toBeCloseTo(Math.exp(-x / 2), 13);
  expect(chiSquaredTailProb(0, 7)).toBe(1);
  expect(chiSquaredTailProb(5000, 3)).toBe(0);
});

test('the gamma function at whole and half numbers is that of its definition', () => {
  expect(logGamma(5)).toBeCloseTo(Math.log(24), 13);
  expect(logGamma(0.5)).toBeCloseTo(Math.log(Math.sqrt(Math.PI)), 13);
  expect(logGamma(21)).toBeCloseTo(Math.log(2432902008176640000), 11);
});
