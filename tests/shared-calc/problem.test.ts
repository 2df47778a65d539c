import { expect, test } from 'vitest';
import { RangeProblem, requireRange } from '../../shared-calc/problem.ts';

test('both ends of a range are allowed and just outside is refused with field, value and range', () => {
  requireRange('massKg', 0, 0, 600, 'kg');
  requireRange('massKg', 600, 0, 600, 'kg');
  expect(() => {
    requireRange('massKg', 600.0000001, 0, 600, 'kg');
  }).toThrow('massKg is 600.0000001 kg; allowed 0 to 600 kg');
});

test('what is not a number at all is refused too', () => {
  expect(() => {
    requireRange('pressureHpa', NaN, 100, 1100, 'hPa', 'was inHg meant?');
  }).toThrow(RangeProblem);
});
