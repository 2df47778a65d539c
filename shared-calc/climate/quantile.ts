import { InputProblem, requireRange } from '../problem.ts';

/**
 * Quantile of type R-7 (linear between order statistics, the default of R and of numpy), without sorting all of it.
 * The values are put into another order; nothing else of them changes.
 * @param values numbers, at least one; infinities are greater or less than all others, and between a number and one of
 *   them lies the infinity
 * @param prob   0 (the least) to 1 (the greatest)
 * @throws InputProblem for no values, RangeProblem for prob
 * @source Hyndman and Fan 1996, "Sample quantiles in statistical packages", definition 7
 * @example of 1, 2, 3, 4 the 0.9 quantile is 3.7
 */
export function quantileReordering(values: Float64Array, prob: number): number {
  requireRange('prob', prob, 0, 1, '');
  if (values.length === 0) throw new InputProblem('values', 'at least one value is needed');
  const place = (values.length - 1) * prob;
  const below = Math.floor(place);
  const lower = selectReordering(values, below);
  if (place === below) return lower;
  // Everything behind the place is at least as large as what stands at it, so the next one is the least of them.
  let upper = Infinity;
  for (let i = below + 1; i < values.length; i++) upper = Math.min(upper, values[i] ?? Infinity);
  if (lower === upper || lower === -Infinity) return lower;
  return lower + (place - below) * (upper - lower);
}

/** Put the k-th smallest value at k, smaller ones before it, larger ones behind (Hoare's selection). */
function selectReordering(values: Float64Array, k: number): number {
  let left = 0;
  let right = values.length - 1;
  while (left < right) {
    const pivot = median3(values[left] ?? 0, values[(left + right) >> 1] ?? 0, values[right] ?? 0);
    let i = left;
    let j = right;
    while (i <= j) {
      while ((values[i] ?? 0) < pivot) i++;
      while ((values[j] ?? 0) > pivot) j--;
      if (i <= j) {
        const held = values[i] ?? 0;
        values[i++] = values[j] ?? 0;
        values[j--] = held;
      }
    }
    if (k <= j) right = j;
    else if (k >= i) left = i;
    else break;
  }
  return values[k] ?? 0;
}

function median3(a: number, b: number, c: number): number {
  return Math.max(Math.min(a, b), Math.min(Math.max(a, b), c));
}
