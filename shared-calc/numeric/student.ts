import { requireRange } from '../problem.ts';
import { bracketedRoot } from './bracketed-root.ts';
import { logGamma } from './log-gamma.ts';

/**
 * Probability that Student's t with so many degrees of freedom lies below t, to about 1e-13.
 * @param t finite
 * @param degreesOfFreedom 0.5 to 1e6; whole or not (Welch-Satterthwaite gives broken ones)
 * @throws RangeProblem
 * @source Abramowitz and Stegun 26.7.1 with the continued fraction 26.5.8 of the incomplete beta function
 */
export function studentCdf(t: number, degreesOfFreedom: number): number {
  requireRange('t', t, -1e150, 1e150, '');
  requireRange('degreesOfFreedom', degreesOfFreedom, 0.5, 1e6, '');
  const x = degreesOfFreedom / (degreesOfFreedom + t * t);
  const tail = incompleteBeta(x, degreesOfFreedom / 2, 0.5) / 2;
  return t > 0 ? 1 - tail : tail;
}

/**
 * The t below which Student's t lies with probability p. A two-sided 95 % coverage factor is p = 0.975.
 * @param p 1e-6 to 1 - 1e-6
 * @param degreesOfFreedom 0.5 to 1e6
 * @throws RangeProblem
 * @example studentQuantile(0.975, 9) is 2.2622
 */
export function studentQuantile(p: number, degreesOfFreedom: number): number {
  requireRange('p', p, 1e-6, 1 - 1e-6, '');
  requireRange('degreesOfFreedom', degreesOfFreedom, 0.5, 1e6, '');
  if (p === 0.5) return 0;
  // By symmetry the lower tail alone, where the distribution keeps its digits.
  const tail = Math.min(p, 1 - p);
  let far = -1;
  while (studentCdf(far, degreesOfFreedom) > tail) far *= 2;
  const t = bracketedRoot((x) => studentCdf(x, degreesOfFreedom) - tail, far, 0);
  return p < 0.5 ? t : -t;
}

/** Regularised incomplete beta function of x in 0..1. */
function incompleteBeta(x: number, a: number, b: number): number {
  if (x <= 0) return 0;
  if (x >= 1) return 1;
  const front = Math.exp(logGamma(a + b) - logGamma(a) - logGamma(b) + a * Math.log(x) + b * Math.log1p(-x));
  // The fraction converges fast on its own side of the mean.
  return x < (a + 1) / (a + b + 2)
    ? (front * betaFraction(x, a, b)) / a
    : 1 - (front * betaFraction(1 - x, b, a)) / b;
}

/** The continued fraction by Lentz's method. */
function betaFraction(x: number, a: number, b: number): number {
  const tiny = 1e-300;
  const away = (value: number) => (Math.abs(value) < tiny ? tiny : value);
  let c = 1;
  let d = 1 / away(1 - ((a + b) * x) / (a + 1));
  let value = d;
  for (let m = 1; m < 10_000; m++) {
    const even = (m * (b - m) * x) / ((a + 2 * m - 1) * (a + 2 * m));
    d = 1 / away(1 + even * d);
    c = away(1 + even / c);
    value *= d * c;
    const odd = (-(a + m) * (a + b + m) * x) / ((a + 2 * m) * (a + 2 * m + 1));
    d = 1 / away(1 + odd * d);
    c = away(1 + odd / c);
    const step = d * c;
    value *= step;
    if (Math.abs(step - 1) < 1e-16) break;
  }
  return value;
}
