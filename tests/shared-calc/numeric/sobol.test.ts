import { expect, test } from 'vitest';
import { sobolPoints } from '../../../shared-calc/numeric/sobol.ts';

// scipy.stats.qmc.Sobol(16, scramble=False), SciPy 1.17.1: exact binary fractions.
test.each([
  [1, [0.5, 0.5, 0.5, 0.5, 0.5, 0.5, 0.5, 0.5, 0.5, 0.5, 0.5, 0.5, 0.5, 0.5, 0.5, 0.5]],
  [2, [0.75, 0.25, 0.25, 0.25, 0.75, 0.75, 0.25, 0.75, 0.75, 0.75, 0.75, 0.75, 0.25, 0.25, 0.75, 0.25]],
  [7, [0.125, 0.625, 0.375, 0.125, 0.125, 0.375, 0.625, 0.625, 0.625, 0.875, 0.625, 0.125, 0.625, 0.375, 0.125, 0.125]],
  [20, [0.46875, 0.09375, 0.84375, 0.28125, 0.15625, 0.84375, 0.90625, 0.21875, 0.59375, 0.53125, 0.96875, 0.03125, 0.78125, 0.03125, 0.21875, 0.90625]],
  [41, [0.734375, 0.578125, 0.765625, 0.484375, 0.203125, 0.234375, 0.234375, 0.859375, 0.546875, 0.859375, 0.328125, 0.390625, 0.015625, 0.546875, 0.671875, 0.421875]],
  [63, [0.015625, 0.796875, 0.359375, 0.453125, 0.859375, 0.140625, 0.578125, 0.140625, 0.828125, 0.578125, 0.421875, 0.671875, 0.546875, 0.765625, 0.328125, 0.765625]],
])('point %d of the plain sequence is that of SciPy in sixteen dimensions', (i, expected) => {
  const points = sobolPoints(16, 64, 0);
  expect([...points.slice(i * 16, (i + 1) * 16)]).toEqual(expected);
}); // prettier-ignore

test('with any seed each half, quarter and sixteenth of every axis holds its share of points', () => {
  const points = sobolPoints(8, 256, 12_345);
  for (let d = 0; d < 8; d++) {
    const counts = new Array<number>(16).fill(0);
    for (let i = 0; i < 256; i++) {
      const cell = Math.floor((points[i * 8 + d] ?? 0) * 16);
      counts[cell] = (counts[cell] ?? 0) + 1;
    }
    expect(counts).toEqual(new Array(16).fill(16));
  }
});

test('a seed always gives the same points, and another seed others', () => {
  expect(sobolPoints(3, 16, 7)).toEqual(sobolPoints(3, 16, 7));
  expect(sobolPoints(3, 16, 7)).not.toEqual(sobolPoints(3, 16, 8));
});

test('the mean of a smooth function settles far below the error of random points', () => {
  // Integral of the product of (2 x) over the six-dimensional cube is 1; 4,096 random points leave about 1.6 / 64.
  const points = sobolPoints(6, 4096, 99);
  let sum = 0;
  for (let i = 0; i < 4096; i++) {
    let product = 1;
    for (let d = 0; d < 6; d++) product *= 2 * (points[i * 6 + d] ?? 0);
    sum += product;
  }
  expect(Math.abs(sum / 4096 - 1)).toBeLessThan(0.003);
});
