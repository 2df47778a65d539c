import { requireRange } from '../problem.ts';

/**
 * Standard uncertainty of a quantity that lies anywhere between two bounds alike: half the width over the root of 3.
 * @param lower finite
 * @param upper at least lower
 * @throws RangeProblem
 * @source JCGM 100:2008 (GUM), 4.3.7 and 4.4.5
 */
export function rectangularSd(lower: number, upper: number): number {
  requireBounds(lower, upper);
  return (upper - lower) / 2 / Math.sqrt(3);
}

/**
 * Standard uncertainty of a quantity between two bounds that lies more likely in the middle (symmetric triangle):
 * half the width over the root of 6.
 * @throws RangeProblem
 * @source JCGM 100:2008 (GUM), 4.3.9 and 4.4.6
 */
export function triangularSd(lower: number, upper: number): number {
  requireBounds(lower, upper);
  return (upper - lower) / 2 / Math.sqrt(6);
}

function requireBounds(lower: number, upper: number): void {
  requireRange('lower', lower, -1e300, 1e300, '');
  requireRange('upper', upper, lower, 1e300, '');
}
