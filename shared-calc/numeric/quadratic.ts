/**
 * Real roots of c0 + c1 u + c2 u^2 that lie strictly between two bounds, smallest first.
 *
 * The larger root comes from the sum without cancellation and the smaller from the product, so that neither
 * loses digits when c2 is tiny (a tank whose arm hardly varies). A double root is given once. A polynomial
 * that is zero everywhere has no roots here: nothing is crossed.
 * @returns 0, 1 or 2 numbers
 * @source W. Kahan, On the Cost of Floating-Point Computation Without Extra-Precise Arithmetic, 2004
 */
export function quadraticRootsBetween(
  c0: number,
  c1: number,
  c2: number,
  from: number,
  to: number,
): number[] {
  if (c2 === 0) return c1 === 0 ? [] : within(-c0 / c1, NaN, from, to);
  const discriminant = c1 * c1 - 4 * c2 * c0;
  if (discriminant < 0) return [];
  const q = -0.5 * (c1 + (c1 < 0 ? -1 : 1) * Math.sqrt(discriminant));
  if (q === 0) return within(0, NaN, from, to);
  const first = q / c2;
  const second = c0 / q;
  if (first === second) return within(first, NaN, from, to);
  return first < second ? within(first, second, from, to) : within(second, first, from, to);
}

/** The ones of two rising roots between the bounds; NaN is none. */
function within(first: number, second: number, from: number, to: number): number[] {
  const roots: number[] = [];
  if (first > from && first < to) roots.push(first);
  if (second > from && second < to) roots.push(second);
  return roots;
}
