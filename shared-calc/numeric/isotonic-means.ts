import { InputProblem, requireRange } from '../problem.ts';

/**
 * The non-decreasing sequence nearest to the given one in weighted least squares: neighbours out of order are pooled
 * to their weighted mean (pool adjacent violators). Runs in time linear in the length.
 * @param values  finite
 * @param weights as many, each above 0
 * @returns a new array of the same length; empty for an empty input
 * @throws RangeProblem naming the element that is not finite, or whose weight is not positive
 * @throws InputProblem when the lengths differ
 * @source R. E. Barlow et al., Statistical Inference under Order Restrictions, 1972, ch. 1
 * @example isotonicMeans([3, 7, 5, 9], [1, 1, 1, 1]) is [3, 6, 6, 9]
 */
export function isotonicMeans(values: readonly number[], weights: readonly number[]): number[] {
  if (weights.length !== values.length) {
    throw new InputProblem('weights', `${String(weights.length)} for ${String(values.length)} values`);
  }
  const pools: { mean: number; weight: number; count: number }[] = [];
  values.forEach((value, i) => {
    const weight = weights[i] ?? 0;
    requireRange(`values[${String(i)}]`, value, -1e300, 1e300, '');
    requireRange(`weights[${String(i)}]`, weight, 1e-300, 1e300, '');
    let pool = { mean: value, weight, count: 1 };
    for (let below = pools.at(-1); below !== undefined && below.mean > pool.mean; below = pools.at(-1)) {
      pools.pop();
      const together = below.weight + pool.weight;
      pool = {
        mean: below.mean + (pool.mean - below.mean) * (pool.weight / together),
        weight: together,
        count: below.count + pool.count,
      };
    }
    pools.push(pool);
  });
  return pools.flatMap(({ mean, count }) => Array.from({ length: count }, () => mean));
}
