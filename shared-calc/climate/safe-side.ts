/** Which way a figure gets worse: a density altitude or a crosswind up, a headwind or a margin down. */
export type SafeSide = 'up' | 'down';

/** The quantile that a share of days is no worse than: nine days in ten lie below the 0.9 or above the 0.1 quantile. */
export function probBelow(share: number, worse: SafeSide): number {
  // 1 - 0.9 is 0.09999999999999998: a quantile would lean on the wrong side of a day.
  return worse === 'up' ? share : Math.round((1 - share) * 1e9) / 1e9;
}

/** Whether a figure is beyond a limit. One met exactly, to a billionth of itself, is met. */
export function isBeyond(value: number, limit: number, worse: SafeSide): boolean {
  const by = worse === 'up' ? value - limit : limit - value;
  return by > 1e-9 * Math.max(1, Math.abs(limit));
}
