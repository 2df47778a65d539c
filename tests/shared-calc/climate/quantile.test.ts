import { quantileSorted } from 'd3';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { daysNeeded } from '../../../shared-calc/climate/days-needed.ts';
import { quantileReordering } from '../../../shared-calc/climate/quantile.ts';

test('the ends, the middle and a place between two values are those of type R-7', () => {
  const of = (prob: number) => quantileReordering(Float64Array.of(3, 1, 4, 2), prob);
  expect(of(0)).toBe(1);
  expect(of(1)).toBe(4);
  // Hyndman and Fan 1996, definition 7: (n - 1) q = 1.5 and 2.7 places after the least.
  expect(of(0.5)).toBe(2.5);
  expect(of(0.9)).toBeCloseTo(3.7, 12);
  expect(quantileReordering(Float64Array.of(7), 0.9)).toBe(7);
});

test('agrees with d3-array, which sorts, on any values and shares', () => {
  fc.assert(
    fc.property(
      fc.array(fc.oneof(fc.integer({ min: -5, max: 5 }), fc.double({ min: -1e4, max: 1e4, noNaN: true })), {
        minLength: 1,
        maxLength: 300,
      }),
      fc.double({ min: 0, max: 1, noNaN: true }),
      (values, prob) => {
        const sorted = [...values].sort((a, b) => a - b);
        // The same two values are joined in the same way: only the last bits of the joining may differ.
        expect(quantileReordering(Float64Array.from(values), prob)).toBeCloseTo(
          quantileSorted(sorted, prob) ?? NaN,
          8,
        );
      },
    ),
  );
});

test('only the order of the values changes', () => {
  const values = Float64Array.from({ length: 500 }, (_, i) => (i * 7919) % 501);
  const before = [...values].sort((a, b) => a - b);
  quantileReordering(values, 0.37);
  expect([...values].sort((a, b) => a - b)).toEqual(before);
});

test('a quantile needs ten days beyond it: 20 for the median, 100 for nine in ten, 200 for 95 %', () => {
  expect([0.5, 0.75, 0.9, 0.95, 0.99].map(daysNeeded)).toEqual([20, 40, 100, 200, 1000]);
});
