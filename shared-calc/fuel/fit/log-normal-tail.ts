import { normalCdf } from '../../numeric/normal.ts';
import { requireRange } from '../../problem.ts';

/** Natural logarithm of the standard normal distribution function, and its derivative, far into the lower tail. */
export interface LogTail {
  /** ln Phi(z). */
  readonly logProb: number;
  /** d ln Phi / dz = phi(z) / Phi(z). */
  readonly slope: number;
}

const LOG_ROOT_2PI = 0.5 * Math.log(2 * Math.PI);
/** Below this the continued fraction is used: Phi itself loses digits there and vanishes under -38. */
const TAIL_Z = -4;

/**
 * ln Phi(z) and phi(z)/Phi(z). Used by readings at a stop, which say only on which side the
 * fuel is and may at first lie far on the wrong one.
 * @param z finite
 * @throws RangeProblem
 * @source Abramowitz and Stegun, Handbook of Mathematical Functions, 26.2.14 (continued fraction of Mills' ratio)
 */
export function logNormalTail(z: number): LogTail {
  requireRange('z', z, -1e150, 1e150, '');
  const logDensity = -0.5 * z * z - LOG_ROOT_2PI;
  if (z > TAIL_Z) {
    const prob = normalCdf(z);
    return { logProb: Math.log(prob), slope: Math.exp(logDensity) / prob };
  }
  const x = -z;
  let tail = x;
  for (let term = 40; term >= 1; term--) tail = x + term / tail;
  // Mills' ratio (1 - Phi(x)) / phi(x) is 1 / tail.
  return { logProb: logDensity - Math.log(tail), slope: tail };
}
