/** Choices that repeat with their seed (mulberry32, public domain). */
export interface Draw {
  /** A whole number from 0 up to, not including, `below`. */
  below(below: number): number;
  /** One of a list; null of an empty one. */
  pick<T>(list: readonly T[]): T | null;
  chance(prob: number): boolean;
  /** A letter or two, to make names differ. */
  word(): string;
}

export function seededDraw(seed: number): Draw {
  let state = seed | 0;
  const next = () => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
  const below = (count: number) => Math.floor(next() * count);
  return {
    below,
    pick: (list) => list[below(list.length)] ?? null,
    chance: (prob) => next() < prob,
    word: () => String.fromCharCode(65 + below(26), 97 + below(26)),
  };
}
