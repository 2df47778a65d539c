/**
 * How many ticks apart the labels of an axis stand so that none touches the next.
 * @param positionsPx of the ticks, in order
 * @param widthsPx    of their labels along the axis
 * @param gapPx       least room between two labels
 * @returns 1 for every tick, 2 for every second, ...
 */
export function thinLabels(
  positionsPx: readonly number[],
  widthsPx: readonly number[],
  gapPx: number,
): number {
  for (let every = 1; every < positionsPx.length; every += 1) {
    let isClear = true;
    for (let i = every; i < positionsPx.length && isClear; i += every) {
      const room = Math.abs((positionsPx[i] ?? 0) - (positionsPx[i - every] ?? 0));
      isClear = room >= ((widthsPx[i] ?? 0) + (widthsPx[i - every] ?? 0)) / 2 + gapPx;
    }
    if (isClear) return every;
  }
  return Math.max(1, positionsPx.length);
}
