import { InputProblem, requireRange } from '../problem.ts';

/**
 * Lower triangle L with L L' = A, of a symmetric positive definite matrix, by rows.
 * @param matrix square, finite; only its lower triangle is read
 * @throws RangeProblem naming an element that is not finite
 * @throws InputProblem where the matrix is not square or not positive definite, with the pivot at which it shows
 * @source G. H. Golub and C. F. Van Loan, Matrix Computations, 4th ed. 2013, algorithm 4.2.1
 * @example cholesky([[4, 2], [2, 5]]) is [[2, 0], [1, 2]]
 */
export function cholesky(matrix: readonly (readonly number[])[]): number[][] {
  const size = matrix.length;
  const lower = matrix.map((row, i) => {
    if (row.length !== size)
      throw new InputProblem(
        'matrix',
        `row ${String(i)} has ${String(row.length)} of ${String(size)} elements`,
      );
    return new Array<number>(size).fill(0);
  });
  for (let i = 0; i < size; i++) {
    const row = lower[i] ?? [];
    for (let j = 0; j <= i; j++) {
      let sum = matrix[i]?.[j] ?? NaN;
      requireRange(`matrix[${String(i)}][${String(j)}]`, sum, -1e300, 1e300, '');
      const other = lower[j] ?? [];
      for (let k = 0; k < j; k++) sum -= (row[k] ?? 0) * (other[k] ?? 0);
      if (i > j) row[j] = sum / (other[j] ?? NaN);
      else {
        if (!(sum > 0))
          throw new InputProblem('matrix', `is not positive definite: pivot ${String(i)} is ${String(sum)}`);
        row[i] = Math.sqrt(sum);
      }
    }
  }
  return lower;
}

/**
 * Solve L x = b with L from `cholesky`. (With the transpose after it, A x = b is solved.)
 * @throws InputProblem where the lengths differ
 */
export function solveLower(lower: readonly (readonly number[])[], b: readonly number[]): number[] {
  requireSameLength(lower, b);
  const x: number[] = [];
  b.forEach((value, i) => {
    const row = lower[i] ?? [];
    let sum = value;
    for (let k = 0; k < i; k++) sum -= (row[k] ?? 0) * (x[k] ?? 0);
    x.push(sum / (row[i] ?? NaN));
  });
  return x;
}

/**
 * Solve L' x = b with L from `cholesky`.
 * @throws InputProblem where the lengths differ
 */
export function solveLowerTransposed(lower: readonly (readonly number[])[], b: readonly number[]): number[] {
  requireSameLength(lower, b);
  const x = [...b];
  for (let i = b.length - 1; i >= 0; i--) {
    let sum = x[i] ?? 0;
    for (let k = i + 1; k < b.length; k++) sum -= (lower[k]?.[i] ?? 0) * (x[k] ?? 0);
    x[i] = sum / (lower[i]?.[i] ?? NaN);
  }
  return x;
}

function requireSameLength(lower: readonly (readonly number[])[], b: readonly number[]): void {
  if (lower.length !== b.length) {
    throw new InputProblem('b', `has ${String(b.length)} elements for a matrix of ${String(lower.length)}`);
  }
}
