import { InputProblem, requireRange } from '../problem.ts';

/** Halving alone needs 52 steps for full precision; Brent's bound is its square, never met in practice. */
const MOST_STEPS = 200;

/**
 * A root of a continuous function between two places where its signs differ, by Brent's method: as safe as
 * halving, as fast as interpolation where the function is smooth.
 * @param f         finite between the ends
 * @param from      one end, finite
 * @param to        the other, finite; may lie on either side of `from`
 * @param tolerance how far the answer may lie from the root; 0 (the default) means as near as doubles go
 * @throws RangeProblem when an end is not finite or the tolerance is negative
 * @throws InputProblem when f has the same sign at both ends, or is no number somewhere on the way
 * @source R. P. Brent, Algorithms for Minimization without Derivatives, 1973, ch. 4
 * @example bracketedRoot((x) => x * x - 2, 0, 2) is 1.4142135623730951
 */
export function bracketedRoot(f: (x: number) => number, from: number, to: number, tolerance = 0): number {
  requireRange('from', from, -1e300, 1e300, '');
  requireRange('to', to, -1e300, 1e300, '');
  requireRange('tolerance', tolerance, 0, 1e300, '');
  // b is the best place so far, a the one before it, c the last place on the other side of the root.
  let a = from;
  let b = to;
  let fa = valueAt(f, a);
  let fb = valueAt(f, b);
  if (fa === 0) return a;
  if (fb === 0) return b;
  if (fa > 0 === fb > 0) {
    throw new InputProblem('f', `has no change of sign between ${String(from)} and ${String(to)}`);
  }
  let c = a;
  let fc = fa;
  let step = b - a;
  let stepBefore = step;
  for (let i = 0; i < MOST_STEPS; i++) {
    if (Math.abs(fc) < Math.abs(fb)) {
      [a, b, c] = [b, c, b];
      [fa, fb, fc] = [fb, fc, fb];
    }
    const least = 2 * Number.EPSILON * Math.abs(b) + tolerance / 2;
    const half = (c - b) / 2;
    if (Math.abs(half) <= least || fb === 0) return b;
    const tried =
      Math.abs(stepBefore) >= least && Math.abs(fa) > Math.abs(fb) ? interpolated(a, b, c, fa, fb, fc) : half;
    // A step back over three quarters of the bracket, or one that does not shrink, gives way to halving.
    const inside = tried / half > 0 && Math.abs(tried) < 1.5 * Math.abs(half) - Math.abs(least) / 2;
    if (inside && Math.abs(tried) < Math.abs(stepBefore) / 2) {
      stepBefore = step;
      step = tried;
    } else {
      step = half;
      stepBefore = half;
    }
    a = b;
    fa = fb;
    b += Math.abs(step) > least ? step : Math.sign(half) * least;
    fb = valueAt(f, b);
    if (fb > 0 === fc > 0) {
      c = a;
      fc = fa;
      step = b - a;
      stepBefore = step;
    }
  }
  return b;
}

function valueAt(f: (x: number) => number, x: number): number {
  const value = f(x);
  if (Number.isNaN(value)) throw new InputProblem('f', `is no number at ${String(x)}`);
  return value;
}

/** Step from b by the secant, or by inverse parabola where three places differ. */
function interpolated(a: number, b: number, c: number, fa: number, fb: number, fc: number): number {
  const s = fb / fa;
  if (a === c) return (-s * (b - c)) / (s - 1);
  const q = fa / fc;
  const r = fb / fc;
  return (-s * ((c - b) * q * (q - r) - (b - a) * (r - 1))) / ((q - 1) * (r - 1) * (s - 1));
}
