/** Which way a figure gets worse: a density altitude or a crosswind up, a headwind or a margin down. */
export type SafeSide = 'up' | 'down';

/** The quantile that a share of days is no worse than: nine days in ten lie below the 0.9 or above the 0.1 quantile. */
export function probBelow(share: number, worse: SafeSide): number {
  // 1 - 0.9 is 0.09999999999999998: a quantile would lean on the wrong side of a day.
  return worse === 'up' ? share : Math.round((1 - share) * 1e9) / 1e9;
}

/** Where a limit is passed: one met exactly, to a billionth of itself, is met. */
export function beyondFrom(limit: number, worse: SafeSide): number {
  const noise = 1e-9 * Math.max(1, Math.abs(limit));
  return worse === 'up' ? limit + noise : limit - noise;
}

/** The greatest of some figures where more is worse, else the least; of none an infinity. */
export function worstOf(values: Float64Array, worse: SafeSide): number {
  let worst = worse === 'up' ? -Infinity : Infinity;
  for (const each of values) if (worse === 'up' ? each > worst : each < worst) worst = each;
  return worst;
}

/** A figure beyond what is known is none. */
export function finiteOrNull(value: number): number | null {
  return Number.isFinite(value) ? value : null;
}
