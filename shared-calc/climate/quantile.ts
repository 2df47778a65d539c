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

/** Fewer values than this are not worth counting into buckets. */
const WORTH_BUCKETS = 64;
const BUCKETS = 512;

/**
 * Several quantiles of type R-7 at once, exact, with the values left as they are: they are counted into buckets, and only
 * the buckets that hold a wanted place are sorted. A few times as fast as selecting where there are thousands.
 * @param values numbers, at least one; infinities as for `quantileReordering`
 * @param probs  each 0 to 1
 * @throws InputProblem for no values, RangeProblem for a prob
 */
export function quantilesOf(values: Float64Array, probs: readonly number[]): number[] {
  const { length } = values;
  for (const prob of probs) requireRange('prob', prob, 0, 1, '');
  if (length === 0) throw new InputProblem('values', 'at least one value is needed');
  let least = Infinity;
  let most = -Infinity;
  for (let i = 0; i < length; i++) {
    const value = values[i] as number;
    if (value < least) least = value;
    if (value > most) most = value;
  }
  const perBucket = (BUCKETS - 1) / (most - least);
  if (length < WORTH_BUCKETS || !Number.isFinite(perBucket) || perBucket === 0) {
    const work = values.slice();
    return probs.map((prob) => quantileReordering(work, prob));
  }
  const starts = new Int32Array(BUCKETS + 1);
  for (let i = 0; i < length; i++) {
    const bucket = (((values[i] as number) - least) * perBucket) | 0;
    starts[bucket + 1] = (starts[bucket + 1] as number) + 1;
  }
  for (let bucket = 0; bucket < BUCKETS; bucket++)
    starts[bucket + 1] = (starts[bucket + 1] as number) + (starts[bucket] as number);
  const sorted = new Map<number, Float64Array>();
  const valueAt = (place: number): number => {
    let bucket = 0;
    while ((starts[bucket + 1] as number) <= place) bucket++;
    let inside = sorted.get(bucket);
    if (inside === undefined) {
      inside = new Float64Array((starts[bucket + 1] as number) - (starts[bucket] as number));
      let at = 0;
      for (let i = 0; i < length; i++) {
        const value = values[i] as number;
        if ((((value - least) * perBucket) | 0) === bucket) inside[at++] = value;
      }
      inside.sort();
      sorted.set(bucket, inside);
    }
    return inside[place - (starts[bucket] as number)] as number;
  };
  return probs.map((prob) => {
    const place = (length - 1) * prob;
    const below = Math.floor(place);
    const lower = valueAt(below);
    return place === below ? lower : lower + (place - below) * (valueAt(below + 1) - lower);
  });
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
