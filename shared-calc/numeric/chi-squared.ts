import { requireRange } from '../problem.ts';
import { logGamma } from './log-gamma.ts';

/**
 * Probability that a sum of squares of so many independent standard normal quantities is at least x.
 * @param x 0 to 1e12
 * @param degreesOfFreedom 1 to 10000
 * @returns 0 to 1, to about 1e-12
 * @throws RangeProblem
 * @source Abramowitz and Stegun 26.4.6 (series) and 6.5.31 (continued fraction) of the incomplete gamma function
 * @example chiSquaredTailProb(3.841459, 1) is 0.05
 */
export function chiSquaredTailProb(x: number, degreesOfFreedom: number): number {
  requireRange('x', x, 0, 1e12, '');
  requireRange('degreesOfFreedom', degreesOfFreedom, 1, 10_000, '');
  const shape = degreesOfFreedom / 2;
  const half = x / 2;
  if (half === 0) return 1;
  const front = Math.exp(shape * Math.log(half) - half - logGamma(shape));
  // Each form converges fast on its own side of the mean.
  return half < shape + 1 ? 1 - front * series(half, shape) : front * fraction(half, shape);
}

function series(half: number, shape: number): number {
  let term = 1 / shape;
  let sum = term;
  for (let n = 1; n < 100_000 && term > 1e-17 * sum; n++) {
    term *= half / (shape + n);
    sum += term;
  }
  return sum;
}

/** By Lentz's method. */
function fraction(half: number, shape: number): number {
  let b = half + 1 - shape;
  let c = 1e300;
  let d = 1 / b;
  let value = d;
  for (let n = 1; n < 100_000; n++) {
    const a = -n * (n - shape);
    b += 2;
    d = 1 / (a * d + b);
    c = b + a / c;
    value *= d * c;
    if (Math.abs(d * c - 1) < 1e-16) break;
  }
  return value;
}
