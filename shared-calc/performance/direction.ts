import { requireRange } from '../problem.ts';

/** From which north a direction counts. Runway numbers and a tower's wind are magnetic; reports and forecasts are true. */
export type North = 'true' | 'magnetic';

declare const north: unique symbol;

/** Degrees clockwise from one of the two norths; the type keeps them apart. Made by the functions of this file. */
export type DirectionDeg<N extends North> = number & { readonly [north]: N };

/** @param deg 0 to 360 from true north @throws RangeProblem outside it */
export function trueDirection(deg: number): DirectionDeg<'true'> {
  return direction(deg);
}

/** @param deg 0 to 360 from magnetic north @throws RangeProblem outside it */
export function magneticDirection(deg: number): DirectionDeg<'magnetic'> {
  return direction(deg);
}

/**
 * Magnetic from true: the variation is subtracted when it is east.
 * @param variationEastDeg −60 to 60, east positive (chart or field data, with their year)
 * @throws RangeProblem outside it
 * @see trueFromMagnetic
 * @example 220 true with 10 degrees east is 210 magnetic
 */
export function magneticFromTrue(
  directionDeg: DirectionDeg<'true'>,
  variationEastDeg: number,
): DirectionDeg<'magnetic'> {
  requireVariation(variationEastDeg);
  return direction(wrapped(directionDeg - variationEastDeg));
}

/** True from magnetic: the variation is added when it is east. @throws RangeProblem as `magneticFromTrue` */
export function trueFromMagnetic(
  directionDeg: DirectionDeg<'magnetic'>,
  variationEastDeg: number,
): DirectionDeg<'true'> {
  requireVariation(variationEastDeg);
  return direction(wrapped(directionDeg + variationEastDeg));
}

function direction<N extends North>(deg: number): DirectionDeg<N> {
  requireRange('directionDeg', deg, 0, 360, 'degrees');
  return deg as DirectionDeg<N>;
}

function requireVariation(variationEastDeg: number): void {
  requireRange('variationEastDeg', variationEastDeg, -60, 60, 'degrees');
}

function wrapped(deg: number): number {
  return ((deg % 360) + 360) % 360;
}
