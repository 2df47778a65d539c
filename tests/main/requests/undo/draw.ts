import { seededNormals } from '../../../../shared-calc/numeric/seeded-normals.ts';

/** Choices that repeat with their seed. */
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
  const { uniform } = seededNormals(seed >>> 0);
  const below = (count: number) => Math.floor(uniform() * count);
  return {
    below,
    pick: (list) => list[below(list.length)] ?? null,
    chance: (prob) => uniform() < prob,
    word: () => String.fromCharCode(65 + below(26), 97 + below(26)),
  };
}
