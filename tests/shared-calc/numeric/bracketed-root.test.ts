import fc from 'fast-check';
import { expect, test } from 'vitest';
import { bracketedRoot } from '../../../shared-calc/numeric/bracketed-root.ts';

// Constants to the last digit of a double (Abramowitz and Stegun, tables 1.1 and 4.7 for the root of cos x = x).
test.each<[string, (x: number) => number, number, number, number]>([
  ['the square root of two', (x) => x * x - 2, 0, 2, Math.SQRT2],
  ['pi', Math.sin, 3, 4, Math.PI],
  ['the fixed point of the cosine', (x) => Math.cos(x) - x, 0, 1, 0.7390851332151607],
  ['a triple root', (x) => (x - 1) ** 3, -4, 3, 1],
  ['a step', (x) => (x < 0.3 ? -1 : 1), 0, 1, 0.3],
  ['a root at an end', (x) => x, 0, 5, 0],
  ['ends the other way round', (x) => Math.exp(x) - 2, 3, -3, Math.LN2],
])('%s', (_, f, from, to, root) => {
  // A triple root cannot be told from its neighbours: (1e-5)^3 is lost in rounding of values near one.
  expect(Math.abs(bracketedRoot(f, from, to) - root)).toBeLessThan(
    f(0) === -1 && to === 3 ? 1e-5 : 1e-15 * 4,
  );
});

test('a smooth root takes few evaluations', () => {
  let calls = 0;
  bracketedRoot(
    (x) => {
      calls += 1;
      return Math.exp(x) - 2;
    },
    -3,
    3,
  );
  // Halving would take 54.
  expect(calls).toBeLessThan(16);
});

test('the answer is as near as was asked, and lies in the bracket', () => {
  fc.assert(
    fc.property(
      fc.double({ min: -100, max: 100, noNaN: true }),
      fc.double({ min: 1e-12, max: 1, noNaN: true }),
      (root, tolerance) => {
        const found = bracketedRoot(
          (x) => Math.atan(x - root) + (x - root) ** 3,
          root - 7,
          root + 11,
          tolerance,
        );
        expect(Math.abs(found - root)).toBeLessThanOrEqual(tolerance + 1e-13);
      },
    ),
  );
});
