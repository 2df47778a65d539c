import fc from 'fast-check';
import { expect, test } from 'vitest';
import { monotoneCubic } from '../../../shared-calc/numeric/monotone-cubic.ts';

// scipy 1.17.1, PchipInterpolator, which uses the same slopes; printed to 12 figures.
test.each([
  {
    xs: [0, 1, 2.5, 3, 4.5, 7],
    ys: [0, 1, 1.2, 4, 4, 9],
    at: [0, 0.3, 1, 1.7, 2.5, 2.75, 3, 3.9, 4.5, 5, 6.5, 7],
    scipy: [0, 0.398340165289, 1, 1.08542851783, 1.2, 2.61935483871, 4, 4, 4, 4.26, 7.44, 9],
  },
  {
    xs: [0, 1, 2.5, 3, 4.5, 7],
    ys: [5, 3, 3.5, 2, 2, -1],
    at: [0, 0.3, 1, 1.7, 2.5, 2.75, 3, 3.9, 4.5, 5, 6.5, 7],
    scipy: [5, 4.1368, 3, 3.22503703704, 3.5, 2.75, 2, 2, 2, 1.844, -0.064, -1],
  },
])('agrees with scipy through $ys', ({ xs, ys, at, scipy }) => {
  const curve = monotoneCubic(xs, ys);
  at.forEach((x, i) => {
    expect(curve(x)).toBeCloseTo(scipy[i] ?? NaN, 10);
  });
});

test('two points are a straight line', () => {
  expect(monotoneCubic([1, 3], [10, 20])(1.5)).toBe(12.5);
});

test('each point is met exactly, and nothing lies beyond its neighbours', () => {
  const steps = fc.array(
    fc.tuple(fc.double({ min: 0.001, max: 10, noNaN: true }), fc.double({ min: 0, max: 10, noNaN: true })),
    { minLength: 1, maxLength: 20 },
  );
  fc.assert(
    fc.property(steps, fc.double({ min: 0, max: 1, noNaN: true }), (pairs, share) => {
      const xs = [0];
      const ys = [0];
      for (const [dx, dy] of pairs) {
        xs.push((xs.at(-1) ?? 0) + dx);
        ys.push((ys.at(-1) ?? 0) + dy);
      }
      const curve = monotoneCubic(xs, ys);
      xs.forEach((x, i) => {
        expect(curve(x)).toBe(ys[i]);
        const next = xs[i + 1];
        if (next === undefined) return;
        const between = curve(Math.min(next, x + share * (next - x)));
        // Rounding only: sums up to 200.
        expect(between).toBeGreaterThanOrEqual((ys[i] ?? NaN) - 1e-12);
        expect(between).toBeLessThanOrEqual((ys[i + 1] ?? NaN) + 1e-12);
      });
    }),
  );
});
