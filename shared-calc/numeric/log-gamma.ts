import { requireRange } from '../problem.ts';

const LANCZOS = [
  0.9999999999998099, 676.5203681218851, -1259.1392167224028, 771.3234287776531, -176.6150291621406,
  12.507343278686905, -0.13857109526572012, 9.984369578019572e-6, 1.5056327351493116e-7,
];

/**
 * Natural logarithm of the gamma function: Lanczos's approximation with g = 7 and nine terms, to about 1e-15.
 * @param x 0.25 to 1e6
 * @throws RangeProblem
 * @source C. Lanczos, A precision approximation of the gamma function, SIAM J. Numer. Anal. B 1, 1964
 */
export function logGamma(x: number): number {
  requireRange('x', x, 0.25, 1e6, '');
  const shifted = x - 1;
  const base = shifted + 7.5;
  let sum = LANCZOS[0] ?? 0;
  for (let i = 1; i < LANCZOS.length; i++) sum += (LANCZOS[i] ?? 0) / (shifted + i);
  return 0.5 * Math.log(2 * Math.PI) + (shifted + 0.5) * Math.log(base) - base + Math.log(sum);
}
