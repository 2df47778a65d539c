import { InputProblem, requireRange } from '../problem.ts';
import { cholesky, solveLower } from './cholesky.ts';

export interface LinearFit {
  readonly coefficients: readonly number[];
  readonly residuals: readonly number[];
  /** Weighted sum of squared residuals. */
  readonly residualSs: number;
  readonly degreesOfFreedom: number;
  /** Root of residualSs over the degrees of freedom; null with none left. */
  readonly residualSd: number | null;
  /** (X' W X)^-1: the covariance of the coefficients where the weights are inverse variances. */
  readonly inverseNormal: readonly (readonly number[])[];
  /** The same times residualSd^2, where only the weights' ratios are known; null with no degree of freedom left. */
  readonly covariance: readonly (readonly number[])[] | null;
}

/**
 * Linear least squares, weighted, by Householder reflections (QR) on columns scaled to length one.
 *
 * The normal equations are never formed: a polynomial in raw units keeps half the digits more. One step of iterative
 * refinement follows. Weights multiply the squares: inverse variances, or their ratios.
 * @param design  one row an observation, one column an unknown; finite; at least as many rows as columns
 * @param y       finite, one an observation
 * @param weights above 0, one an observation; all 1 unless told
 * @throws RangeProblem naming an element that is not finite, or a weight that is not above 0
 * @throws InputProblem where lengths differ, rows are too few, or columns depend on each other
 * @source G. H. Golub and C. F. Van Loan, Matrix Computations, 4th ed. 2013, algorithm 5.2.1; A. Bjorck, Numerical
 *         Methods for Least Squares Problems, 1996, ch. 2
 */
export function leastSquares(
  design: readonly (readonly number[])[],
  y: readonly number[],
  weights?: readonly number[],
): LinearFit {
  requireProblem(design, y, weights);
  const roots = y.map((_, i) => Math.sqrt(weights?.[i] ?? 1));
  const rows = design.map((row, i) => row.map((value) => value * (roots[i] ?? 1)));
  const target = y.map((value, i) => value * (roots[i] ?? 1));
  return solved(rows, target, design, y);
}

/**
 * Generalised least squares: observations with a full covariance matrix V, whitened by its Cholesky factor.
 * @param covariance of the observations, symmetric positive definite; residualSs is then a chi-squared of the
 *                   degrees of freedom and `inverseNormal` the coefficients' covariance
 * @throws as leastSquares and cholesky do
 * @source A. C. Aitken, On Least Squares and Linear Combinations of Observations, Proc. R. Soc. Edinb. 55 (1936)
 */
export function generalisedLeastSquares(
  design: readonly (readonly number[])[],
  y: readonly number[],
  covariance: readonly (readonly number[])[],
): LinearFit {
  requireProblem(design, y, undefined);
  const lower = cholesky(covariance);
  const target = solveLower(lower, y);
  const columns = (design[0] ?? []).map((_, j) =>
    solveLower(
      lower,
      design.map((row) => row[j] ?? NaN),
    ),
  );
  const rows = y.map((_, i) => columns.map((column) => column[i] ?? NaN));
  return solved(rows, target, design, y);
}

/** Coefficients for a whitened problem; residuals in the units of the observations. */
function solved(
  rows: readonly (readonly number[])[],
  target: readonly number[],
  design: readonly (readonly number[])[],
  y: readonly number[],
): LinearFit {
  const unknowns = rows[0]?.length ?? 0;
  const lengths = Array.from({ length: unknowns }, (_, j) => Math.hypot(...rows.map((row) => row[j] ?? 0)));
  lengths.forEach((length, j) => {
    if (length === 0) throw new InputProblem('design', `column ${String(j)} is zero everywhere`);
  });
  const factor = householder(rows.map((row) => row.map((value, j) => value / (lengths[j] ?? 1))));
  const first = solveFactored(factor, target);
  // The residual carries what the first solution missed.
  const scaledResidual = (x: readonly number[]) =>
    target.map((value, i) =>
      exactSum(
        rows[i] ?? [],
        x.map((c, j) => c / (lengths[j] ?? 1)),
        value,
      ),
    );
  const correction = solveFactored(factor, scaledResidual(first));
  const scaled = first.map((c, j) => c + (correction[j] ?? 0));
  const coefficients = scaled.map((c, j) => c / (lengths[j] ?? 1));
  const residualSs = scaledResidual(scaled).reduce((sum, r) => sum + r * r, 0);
  const degreesOfFreedom = rows.length - unknowns;
  const inverse = inverseOfR(factor.r);
  const inverseNormal = inverse.map((rowI, i) =>
    inverse.map((rowJ, j) => {
      let sum = 0;
      for (let k = Math.max(i, j); k < unknowns; k++) sum += (rowI[k] ?? 0) * (rowJ[k] ?? 0);
      return sum / ((lengths[i] ?? 1) * (lengths[j] ?? 1));
    }),
  );
  const variance = degreesOfFreedom > 0 ? residualSs / degreesOfFreedom : null;
  return {
    coefficients,
    residuals: y.map((value, i) => exactSum(design[i] ?? [], coefficients, value)),
    residualSs,
    degreesOfFreedom,
    residualSd: variance === null ? null : Math.sqrt(variance),
    inverseNormal,
    covariance: variance === null ? null : inverseNormal.map((row) => row.map((value) => value * variance)),
  };
}

/** value - row . x, with the error of each product and sum carried along (Ogita, Rump and Oishi 2005, Dot2). */
function exactSum(row: readonly number[], x: readonly number[], value: number): number {
  let sum = value;
  let error = 0;
  row.forEach((a, j) => {
    const b = -(x[j] ?? 0);
    const product = a * b;
    const [ah, al] = split(a);
    const [bh, bl] = split(b);
    const productError = al * bl - (product - ah * bh - al * bh - ah * bl);
    const next = sum + product;
    const part = next - sum;
    error += sum - (next - part) + (product - part) + productError;
    sum = next;
  });
  return sum + error;
}

/** Veltkamp's split of a double into halves of 26 bits; good below 1e290. */
function split(a: number): [number, number] {
  const c = 134_217_729 * a;
  const high = c - (c - a);
  return [high, a - high];
}

interface Factor {
  /** Householder vectors, one a column. */
  readonly reflections: readonly (readonly number[])[];
  /** Upper triangle. */
  readonly r: readonly (readonly number[])[];
}

function householder(rows: number[][]): Factor {
  const count = rows.length;
  const unknowns = rows[0]?.length ?? 0;
  const columns = Array.from({ length: unknowns }, (_, j) => rows.map((row) => row[j] ?? 0));
  const reflections: number[][] = [];
  const r = Array.from({ length: unknowns }, () => new Array<number>(unknowns).fill(0));
  for (let k = 0; k < unknowns; k++) {
    const column = columns[k] ?? [];
    for (let j = 0; j < k; j++) (r[j] ?? [])[k] = column[j] ?? 0;
    const below = column.slice(k);
    const length = Math.hypot(...below);
    // Columns have length one: what is left of a dependent one is rounding.
    if (length < 1e-14 * Math.sqrt(count)) {
      throw new InputProblem('design', `column ${String(k)} follows from the ones before it`);
    }
    const head = below[0] ?? 0;
    const alpha = head > 0 ? -length : length;
    (r[k] ?? [])[k] = alpha;
    const v = [...below];
    v[0] = head - alpha;
    const norm = Math.hypot(...v);
    const unit = v.map((value) => value / norm);
    reflections.push(unit);
    for (let j = k + 1; j < unknowns; j++) reflect(columns[j] ?? [], unit, k);
  }
  return { reflections, r };
}

/** Mirror the part of a vector from `start` on, in place. */
function reflect(vector: number[], unit: readonly number[], start: number): void {
  let dot = 0;
  unit.forEach((u, i) => {
    dot += u * (vector[start + i] ?? 0);
  });
  unit.forEach((u, i) => {
    vector[start + i] = (vector[start + i] ?? 0) - 2 * dot * u;
  });
}

function solveFactored({ reflections, r }: Factor, target: readonly number[]): number[] {
  const turned = [...target];
  reflections.forEach((unit, k) => {
    reflect(turned, unit, k);
  });
  const x = new Array<number>(r.length).fill(0);
  for (let i = r.length - 1; i >= 0; i--) {
    let sum = turned[i] ?? 0;
    for (let k = i + 1; k < r.length; k++) sum -= (r[i]?.[k] ?? 0) * (x[k] ?? 0);
    x[i] = sum / (r[i]?.[i] ?? NaN);
  }
  return x;
}

function inverseOfR(r: readonly (readonly number[])[]): number[][] {
  const size = r.length;
  const inverse = Array.from({ length: size }, () => new Array<number>(size).fill(0));
  for (let j = 0; j < size; j++) {
    for (let i = j; i >= 0; i--) {
      let sum = i === j ? 1 : 0;
      for (let k = i + 1; k <= j; k++) sum -= (r[i]?.[k] ?? 0) * (inverse[k]?.[j] ?? 0);
      (inverse[i] ?? [])[j] = sum / (r[i]?.[i] ?? NaN);
    }
  }
  return inverse;
}

function requireProblem(
  design: readonly (readonly number[])[],
  y: readonly number[],
  weights: readonly number[] | undefined,
): void {
  const unknowns = design[0]?.length ?? 0;
  if (design.length !== y.length) {
    throw new InputProblem('y', `${String(y.length)} values for ${String(design.length)} rows`);
  }
  if (weights !== undefined && weights.length !== y.length) {
    throw new InputProblem('weights', `${String(weights.length)} for ${String(y.length)} values`);
  }
  if (unknowns === 0 || design.length < unknowns) {
    throw new InputProblem(
      'design',
      `${String(design.length)} rows cannot give ${String(unknowns)} unknowns`,
    );
  }
  design.forEach((row, i) => {
    if (row.length !== unknowns)
      throw new InputProblem(
        'design',
        `row ${String(i)} has ${String(row.length)} columns of ${String(unknowns)}`,
      );
    row.forEach((value, j) => {
      requireRange(`design[${String(i)}][${String(j)}]`, value, -1e150, 1e150, '');
    });
    requireRange(`y[${String(i)}]`, y[i] ?? NaN, -1e150, 1e150, '');
    if (weights !== undefined) requireRange(`weights[${String(i)}]`, weights[i] ?? NaN, 1e-150, 1e150, '');
  });
}
