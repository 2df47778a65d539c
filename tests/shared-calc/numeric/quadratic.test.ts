import fc from 'fast-check';
import { expect, test } from 'vitest';
import { quadraticRootsBetween } from '../../../shared-calc/numeric/quadratic.ts';

test('roots that were put in come out, inside the bounds only', () => {
  const inside = fc.double({ min: -10, max: 10, noNaN: true });
  fc.assert(
    fc.property(inside, inside, fc.constantFrom(-3, 1e-6, 2), (a, b, c2) => {
      fc.pre(Math.abs(a - b) > 1e-3);
      const roots = quadraticRootsBetween(c2 * a * b, -c2 * (a + b), c2, -10.001, 10.001);
      expect(roots).toHaveLength(2);
      const [low, high] = [Math.min(a, b), Math.max(a, b)];
      // Two roots closer than 1e-3 lose half the digits; these keep more.
      expect(Math.abs((roots[0] ?? NaN) - low)).toBeLessThan(1e-9);
      expect(Math.abs((roots[1] ?? NaN) - high)).toBeLessThan(1e-9);
    }),
    { seed: 1 },
  );
  expect(quadraticRootsBetween(-1, 0, 1, 0, 2)).toEqual([1]);
  expect(quadraticRootsBetween(-1, 0, 1, 1, 2)).toEqual([]);
});

// Kahan's and Higham's textbook example: x^2 - 1e8 x + 1 has a root of 1e-8 (to 1e-16 of itself) that the school formula loses.
test('a root next to nothing keeps its digits', () => {
  const [small = NaN] = quadraticRootsBetween(1, -1e8, 1, 0, 1);
  expect(Math.abs(small / 1e-8 - 1)).toBeLessThan(1e-15);
});

test('a line, no line and a parabola that does not reach zero', () => {
  expect(quadraticRootsBetween(-6, 2, 0, 0, 5)).toEqual([3]);
  expect(quadraticRootsBetween(0, 0, 0, 0, 5)).toEqual([]);
  expect(quadraticRootsBetween(1, 0, 1, -5, 5)).toEqual([]);
});
