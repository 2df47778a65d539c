import { requireRange } from '../problem.ts';

/** Draws that repeat for the same seed. */
export interface NormalDraws {
  /** Uniform on [0, 1). */
  uniform(): number;
  /** Standard normal. */
  normal(): number;
}

/**
 * A seeded source of uniform and normal numbers, for simulation only.
 * @param seed a whole number from 0 to 2^32 - 1
 * @throws RangeProblem
 * @source Uniform: D. Lehmer's multiplicative idea in the 32-bit mixing generator 'mulberry32' (T. Ettinger, public
 *   domain); normal: G. Marsaglia's polar method, 1964.
 */
export function seededNormals(seed: number): NormalDraws {
  requireRange('seed', seed, 0, 2 ** 32 - 1, '');
  let state = seed >>> 0;
  let spare: number | null = null;
  const uniform = () => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
  return {
    uniform,
    normal: () => {
      if (spare !== null) {
        const kept = spare;
        spare = null;
        return kept;
      }
      let x: number;
      let y: number;
      let square: number;
      do {
        x = 2 * uniform() - 1;
        y = 2 * uniform() - 1;
        square = x * x + y * y;
      } while (square >= 1 || square === 0);
      const factor = Math.sqrt((-2 * Math.log(square)) / square);
      spare = y * factor;
      return x * factor;
    },
  };
}
