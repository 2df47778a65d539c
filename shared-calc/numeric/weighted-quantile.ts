import { InputProblem, requireRange } from '../problem.ts';

/**
 * Quantile of weighted values, linear between them; with equal weights it is type R-7 (Hyndman and Fan, 1996).
 *
 * Value k of n, in rising order, stands at (k - 1) w_k + (n - 1) (w_1 + ... + w_{k-1}). Only the weights' ratios
 * matter, and a weight of 0 leaves its value out. (Without weights use `quantile` of d3-array, which is R-7 too.)
 * @param values  at least one, finite, in any order
 * @param weights as many, 0 or more, not all 0
 * @param p       0 to 1
 * @throws RangeProblem; InputProblem where there is no value or lengths differ
 * @example weightedQuantile([1, 2, 3], [1, 1, 1], 0.25) is 1.5
 */
export function weightedQuantile(values: readonly number[], weights: readonly number[], p: number): number {
  requireRange('p', p, 0, 1, '');
  if (weights.length !== values.length) {
    throw new InputProblem('weights', `${String(weights.length)} for ${String(values.length)} values`);
  }
  const counted = values
    .map((value, i) => {
      const weight = weights[i] ?? NaN;
      requireRange(`values[${String(i)}]`, value, -1e300, 1e300, '');
      requireRange(`weights[${String(i)}]`, weight, 0, 1e300, '');
      return { value, weight };
    })
    .filter(({ weight }) => weight > 0)
    .sort((a, b) => a.value - b.value);
  const n = counted.length;
  const first = counted[0];
  if (first === undefined)
    throw new InputProblem('values', 'a quantile needs at least one value of weight above 0');
  const total = counted.reduce((sum, { weight }) => sum + weight, 0);
  const wanted = p * (n - 1) * total;
  let below = 0;
  let place = 0;
  let value = first.value;
  for (let k = 0; k < n; k++) {
    const one = counted[k] ?? first;
    const here = k * one.weight + (n - 1) * below;
    if (here >= wanted) {
      if (k === 0 || here === place) return one.value;
      return value + ((one.value - value) * (wanted - place)) / (here - place);
    }
    below += one.weight;
    place = here;
    value = one.value;
  }
  return value;
}
