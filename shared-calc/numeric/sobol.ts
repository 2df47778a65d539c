import { requireRange } from '../problem.ts';

/** Degree, coefficients and first direction numbers of dimensions 2 to 16. */
const JOE_KUO: readonly (readonly [s: number, a: number, m: readonly number[]])[] = [
  [1, 0, [1]],
  [2, 1, [1, 3]],
  [3, 1, [1, 3, 1]],
  [3, 2, [1, 1, 1]],
  [4, 1, [1, 1, 3, 3]],
  [4, 4, [1, 3, 5, 13]],
  [5, 2, [1, 1, 5, 5, 17]],
  [5, 4, [1, 1, 5, 5, 5]],
  [5, 7, [1, 1, 7, 11, 19]],
  [5, 11, [1, 1, 5, 1, 1]],
  [5, 13, [1, 1, 1, 3, 11]],
  [5, 14, [1, 3, 5, 5, 31]],
  [6, 1, [1, 3, 3, 9, 7, 49]],
  [6, 13, [1, 1, 1, 15, 21, 21]],
  [6, 16, [1, 3, 1, 13, 27, 49]],
];

export const SOBOL_MOST_DIMENSIONS = JOE_KUO.length + 1;
const BITS = 32;

/**
 * Points of the Sobol sequence in the unit cube, row after row: evenly spread, so that a mean over them settles much
 * faster than over random points.
 *
 * A seed turns on a digital shift (each dimension XORed by a number drawn from it): still evenly spread, and the
 * spread between seeds says how far the mean can be off. Seed 0 gives the plain sequence, whose first point is 0.
 * @param dimensions 1 to 16
 * @param count      1 to 2^20; powers of two are spread best
 * @param seed       0 to 2^32 - 1, whole
 * @returns count x dimensions numbers from 0 to below 1
 * @throws RangeProblem
 * @source I. M. Sobol, USSR Comput. Math. Math. Phys. 7 (1967); direction numbers by S. Joe and F. Y. Kuo, SIAM J. Sci.
 *         Comput. 30 (2008), new-joe-kuo-6
 */
export function sobolPoints(dimensions: number, count: number, seed: number): Float64Array {
  requireRange('dimensions', dimensions, 1, SOBOL_MOST_DIMENSIONS, '');
  requireRange('count', count, 1, 2 ** 20, '');
  requireRange('seed', seed, 0, 2 ** 32 - 1, '');
  const points = new Float64Array(count * dimensions);
  let state = seed;
  for (let d = 0; d < dimensions; d++) {
    const directions = directionNumbers(d);
    let shift = 0;
    if (seed !== 0) [shift, state] = mixed(state);
    let x = 0;
    for (let i = 0; i < count; i++) {
      points[i * dimensions + d] = ((x ^ shift) >>> 0) / 2 ** BITS;
      // Gray code: the next point differs in the direction of the lowest zero bit of i.
      x ^= directions[31 - Math.clz32(~i & (i + 1))] ?? 0;
    }
  }
  return points;
}

function directionNumbers(dimension: number): Uint32Array {
  const v = new Uint32Array(BITS);
  const entry = JOE_KUO[dimension - 1];
  if (entry === undefined) {
    for (let i = 0; i < BITS; i++) v[i] = 2 ** (BITS - 1 - i);
    return v;
  }
  const [s, a, m] = entry;
  for (let i = 0; i < s; i++) v[i] = (m[i] ?? 0) << (BITS - 1 - i);
  for (let i = s; i < BITS; i++) {
    const before = v[i - s] ?? 0;
    let value = before ^ (before >>> s);
    for (let k = 1; k < s; k++) if (((a >> (s - 1 - k)) & 1) === 1) value ^= v[i - k] ?? 0;
    v[i] = value;
  }
  return v;
}

/** One number of the splitmix32 sequence and the next state. */
function mixed(state: number): [number, number] {
  const next = (state + 0x9e3779b9) >>> 0;
  let z = next;
  z = Math.imul(z ^ (z >>> 16), 0x21f0aaad);
  z = Math.imul(z ^ (z >>> 15), 0x735a2d97);
  return [(z ^ (z >>> 15)) >>> 0, next];
}
