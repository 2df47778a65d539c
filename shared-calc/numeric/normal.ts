import { requireRange } from '../problem.ts';

const ROOT_TWO_PI = 2.5066282746310002;

/**
 * Density of the standard normal distribution.
 * @param z finite
 * @throws RangeProblem
 */
export function normalDensity(z: number): number {
  requireRange('z', z, -1e150, 1e150, '');
  return Math.exp((-z * z) / 2) / ROOT_TWO_PI;
}

/**
 * Probability that a standard normal quantity lies below z, to 1e-15; in the lower tail to 1e-13 of its own value.
 * @param z finite
 * @returns 0 to 1
 * @throws RangeProblem
 * @source J. F. Hart et al., Computer Approximations, 1968, no. 5666, as given by G. West, Better Approximations to
 *         Cumulative Normal Functions, Wilmott, 2005 (within 3); Abramowitz and Stegun 26.2.14 (the continued
 *         fraction, beyond)
 * See normalQuantile for the way back.
 */
export function normalCdf(z: number): number {
  requireRange('z', z, -1e150, 1e150, '');
  const far = Math.abs(z);
  const tail = far > 3 ? upperTail(far) : Math.exp((-z * z) / 2) * hart(far);
  return z > 0 ? 1 - tail : tail;
}

/** Tail over its own exponential, a ratio of polynomials. */
function hart(z: number): number {
  const over =
    (((((0.0352624965998911 * z + 0.700383064443688) * z + 6.37396220353165) * z + 33.912866078383) * z +
      112.079291497871) *
      z +
      221.213596169931) *
      z +
    220.206867912376;
  const under =
    ((((((0.0883883476483184 * z + 1.75566716318264) * z + 16.064177579207) * z + 86.7807322029461) * z +
      296.564248779674) *
      z +
      637.333633378831) *
      z +
      793.826512519948) *
      z +
    440.413735824752;
  return over / under;
}

/** Above 3: density times 1/(z + 1/(z + 2/(z + 3/...))), taken from far enough in. */
function upperTail(z: number): number {
  if (z > 40) return 0;
  let fraction = z;
  // Measured: the terms that leave 1e-15 of the tail, with some to spare.
  for (let k = Math.ceil(20 + 900 / (z * z)); k > 0; k--) fraction = z + k / fraction;
  return normalDensity(z) / fraction;
}

/** Numerators and denominators of AS 241, rising powers, for the middle and the two parts of the tails. */
const MIDDLE = [
  [3.3871328727963665, 133.14166789178438, 1971.5909503065513, 13731.69376550946,
    45921.95393154987, 67265.7709270087, 33430.57558358813, 2509.0809287301227],
  [1, 42.31333070160091, 687.1870074920579, 5394.196021424751,
    21213.794301586597, 39307.89580009271, 28729.085735721943, 5226.495278852854],
] as const; // prettier-ignore
const TAIL = [
  [1.4234371107496835, 4.630337846156546, 5.769497221460691, 3.6478483247632045,
    1.2704582524523684, 0.2417807251774506, 0.022723844989269184, 0.0007745450142783414],
  [1, 2.053191626637759, 1.6763848301838038, 0.6897673349851,
    0.14810397642748008, 0.015198666563616457, 0.0005475938084995345, 1.0507500716444169e-09],
] as const; // prettier-ignore
const FAR_TAIL = [
  [6.657904643501103, 5.463784911164114, 1.7848265399172913, 0.29656057182850487,
    0.026532189526576124, 0.0012426609473880784, 2.7115555687434876e-05, 2.0103343992922881e-07],
  [1, 0.599832206555888, 0.1369298809227358, 0.014875361290850615,
    0.0007868691311456133, 1.8463183175100548e-05, 1.421511758316446e-07, 2.0442631033899397e-15],
] as const; // prettier-ignore

/**
 * The z below which a standard normal quantity lies with probability p, to about 1e-16 of z.
 * @param p above 0 and below 1: 1e-300 to 1 - 1e-16
 * @throws RangeProblem
 * @source M. J. Wichura, Algorithm AS 241: The Percentage Points of the Normal Distribution, Appl. Stat. 37 (1988), PPND16
 */
export function normalQuantile(p: number): number {
  requireRange('p', p, 1e-300, 1 - 1e-16, '');
  return normalQuantileWithin(p);
}

/** The same without the check, for millions of draws that lie between 0 and 1 by their making. */
export function normalQuantileWithin(p: number): number {
  const q = p - 0.5;
  if (Math.abs(q) <= 0.425) return q * ratio(MIDDLE, 0.180625 - q * q);
  const r = Math.sqrt(-Math.log(q < 0 ? p : 1 - p));
  const z = r <= 5 ? ratio(TAIL, r - 1.6) : ratio(FAR_TAIL, r - 5);
  return q < 0 ? -z : z;
}

type Eight = readonly [number, number, number, number, number, number, number, number];

function ratio([over, under]: readonly [Eight, Eight], x: number): number {
  return polynomial(over, x) / polynomial(under, x);
}

function polynomial(c: Eight, x: number): number {
  return ((((((c[7] * x + c[6]) * x + c[5]) * x + c[4]) * x + c[3]) * x + c[2]) * x + c[1]) * x + c[0];
}
