import { quantileSorted } from 'd3';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { daysNeeded } from '../../../shared-calc/climate/days-needed.ts';
import { quantileReordering, quantilesOf } from '../../../shared-calc/climate/quantile.ts';

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

test('several at once are the same as one by one, on even, lumpy and lopsided values, and change nothing', () => {
  const kinds: ((i: number) => number)[] = [
    (i) => (i * 7919) % 3989,
    (i) => i % 3,
    (i) => Math.exp(((i * 7919) % 1000) / 60),
    (i) => (i % 50 === 0 ? 1e9 : i % 97),
    () => 5,
    (i) => (i % 10 === 0 ? Infinity : i),
    (i) => -i * 1e-9,
  ];
  for (const kind of kinds)
    for (const length of [1, 2, 63, 64, 65, 3500]) {
      const values = Float64Array.from({ length }, (_, i) => kind(i));
      const before = values.slice();
      const probs = [0, 0.1, 0.5, 0.9, 0.95, 1];
      const found = quantilesOf(values, probs);
      expect(values).toEqual(before);
      probs.forEach((prob, at) => {
        const one = quantileReordering(values.slice(), prob);
        if (Number.isFinite(one)) expect(found[at]).toBeCloseTo(one, 6);
        else expect(found[at]).toBe(one);
      });
    }
});
