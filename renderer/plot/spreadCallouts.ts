/** A callout's wish: where its point lies and how much room its lines need, in pixels. */
export interface CalloutWish {
  yPx: number;
  heightPx: number;
}

/**
 * Spread callouts along their column so that none touches another, each as near to its point as can be.
 * @param wishes   in any order
 * @param topPx    upper end of the column
 * @param bottomPx lower end; with too little room the column grows upwards beyond `topPx` rather than overlap
 * @returns where each begins, in the order of `wishes`
 */
export function spreadCallouts(wishes: readonly CalloutWish[], topPx: number, bottomPx: number): number[] {
  const order = wishes
    .map((wish, index) => ({ wish, index, atPx: 0 }))
    .sort((a, b) => a.wish.yPx - b.wish.yPx);
  let freePx = topPx;
  for (const one of order) {
    one.atPx = Math.max(one.wish.yPx, freePx);
    freePx = one.atPx + one.wish.heightPx;
  }
  let lowPx = bottomPx;
  for (const one of order.toReversed()) {
    one.atPx = Math.min(one.atPx, lowPx - one.wish.heightPx);
    lowPx = one.atPx;
  }
  const result = wishes.map(() => 0);
  for (const one of order) result[one.index] = one.atPx;
  return result;
}
