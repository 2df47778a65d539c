/**
 * The first place in a rising column whose number is at least so much; the column's length where all are less.
 * @param rising never falling, without NaN
 */
export function firstAtLeast(rising: Int32Array, least: number): number {
  let low = 0;
  let high = rising.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((rising[middle] ?? 0) < least) low = middle + 1;
    else high = middle;
  }
  return low;
}
