import { expect, test } from 'vitest';
import { cholesky, solveLower, solveLowerTransposed } from '../../../shared-calc/numeric/cholesky.ts';

// The textbook example: [[4, 12, -16], [12, 37, -43], [-16, -43, 98]] = L L' with whole numbers.
const matrix = [
  [4, 12, -16],
  [12, 37, -43],
  [-16, -43, 98],
];

test('the factor of the textbook matrix', () => {
  expect(cholesky(matrix)).toEqual([
    [2, 0, 0],
    [6, 1, 0],
    [-8, 5, 3],
  ]);
});

test('two triangles solve the whole system', () => {
  const lower = cholesky(matrix);
  // A (1, 2, 3)
  const b = [4 + 24 - 48, 12 + 74 - 129, -16 - 86 + 294];
  const x = solveLowerTransposed(lower, solveLower(lower, b));
  [1, 2, 3].forEach((value, i) => {
    expect(x[i]).toBeCloseTo(value, 12);
  });
});
