import { bracketedRoot } from '../numeric/bracketed-root.ts';
import { monotoneCubic } from '../numeric/monotone-cubic.ts';
import { requireRange } from '../problem.ts';
import { SAME_MARK_RATIO } from './gauge-curve.ts';
import type { BandedCurve, BandKnot, CurveKnot, GaugeCurve, IsotonicCurve } from './gauge-curve.ts';

/** A stretch of the curve without a jump: a monotone cubic through its knots, or a single point between two jumps. */
interface Stretch {
  readonly positionsRatio: readonly number[];
  readonly volumesL: readonly number[];
  volumeAtL(positionRatio: number): number;
}

/**
 * The first and the last reading that moved: the curve is known between them. On a curve with a band its volumes
 * are the 5 and the 95 % ones.
 */
export function endKnots(curve: GaugeCurve): { first: CurveKnot; last: CurveKnot } {
  const first = curve.knots[0];
  const last = curve.knots.at(-1);
  if (first === undefined || last === undefined) throw new Error('a gauge curve has at least three knots');
  return { first, last };
}

/**
 * The curve at one position of the needle.
 * @param positionRatio between the first and the last reading that moved
 * @returns usable litres, equal but for a mark at which pours passed with no movement; may lie below 0 while
 *   unusable fuel was still being filled
 * @throws RangeProblem outside the readings that moved
 */
export function volumesAt(curve: GaugeCurve, positionRatio: number): { lowL: number; highL: number } {
  return shapeOf(curve)(positionRatio);
}

/**
 * The same as `volumesAt` for many positions: the cubic's slopes are found once. For drawing.
 * @throws RangeProblem from the returned function outside the readings that moved
 */
export function shapeOf(curve: GaugeCurve): (positionRatio: number) => { lowL: number; highL: number } {
  if (curve.method === 'logSlopeRefits') {
    const band = bandShapeOf(curve);
    return (positionRatio) => {
      const { bestL } = band(positionRatio);
      return { lowL: bestL, highL: bestL };
    };
  }
  const { first, last } = endKnots(curve);
  const stretches = stretchesOf(curve.knots);
  return (positionRatio) => {
    const knot = curve.knots.find((one) => Math.abs(one.positionRatio - positionRatio) <= SAME_MARK_RATIO);
    if (knot !== undefined) return { lowL: knot.lowL, highL: knot.highL };
    requireRange('positionRatio', positionRatio, first.positionRatio, last.positionRatio, '');
    const stretch = stretches.find((one) => positionRatio <= (one.positionsRatio.at(-1) ?? 0));
    if (stretch === undefined) throw new Error('the stretches of a gauge curve leave no gap');
    const volumeL = stretch.volumeAtL(positionRatio);
    return { lowL: volumeL, highL: volumeL };
  };
}

/**
 * The band at one position of the needle, all its figures.
 * @throws RangeProblem from the returned function outside the readings that moved
 */
export function bandShapeOf(curve: BandedCurve): (positionRatio: number) => BandKnot {
  const { first, last } = endKnots(curve);
  const { knots } = curve;
  return (positionRatio) => {
    requireRange(
      'positionRatio',
      positionRatio,
      first.positionRatio - SAME_MARK_RATIO,
      last.positionRatio + SAME_MARK_RATIO,
      '',
    );
    const above = knots.findIndex((knot) => knot.positionRatio >= positionRatio - SAME_MARK_RATIO);
    const to = knots[above === -1 ? knots.length - 1 : above];
    if (to === undefined) throw new Error('a gauge curve has at least three knots');
    const from = knots[above - 1];
    if (from === undefined || to.positionRatio - positionRatio <= SAME_MARK_RATIO) return to;
    const share = (positionRatio - from.positionRatio) / (to.positionRatio - from.positionRatio);
    const between = (a: number, b: number) => a + share * (b - a);
    return {
      positionRatio,
      lowL: between(from.lowL, to.lowL),
      bestL: between(from.bestL, to.bestL),
      highL: between(from.highL, to.highL),
      readLowL: between(from.readLowL, to.readLowL),
      readHighL: between(from.readHighL, to.readHighL),
    };
  };
}

/** Where the needle stands at a usable quantity; where the curve does not know, on which side of it. */
export type NeedleAnswer =
  | { readonly place: 'onCurve'; readonly positionRatio: number }
  /** The needle moves over this part of the scale with no change of volume. */
  | { readonly place: 'flat'; readonly lowRatio: number; readonly highRatio: number }
  /** The needle stands still here while the volume goes from `lowL` to `highL`. */
  | {
      readonly place: 'deadZone';
      readonly positionRatio: number;
      readonly lowL: number;
      readonly highL: number;
    }
  | { readonly place: 'belowFirstMoved'; readonly atMostRatio: number }
  | { readonly place: 'aboveLastMoved'; readonly atLeastRatio: number };

/**
 * Position of the needle at a usable quantity, along the curve.
 * @param usableL 0 to the usable capacity (or to the last reading, where a test went past the capacity)
 * @throws RangeProblem when the quantity is negative or more than the tank holds
 * @see fuelAtReading the other way round
 */
export function needleAt(curve: IsotonicCurve, usableL: number): NeedleAnswer {
  const { first, last } = endKnots(curve);
  requireRange('usableL', usableL, 0, Math.max(curve.usableCapacityL, last.highL), 'L');
  if (usableL < first.lowL) return { place: 'belowFirstMoved', atMostRatio: first.positionRatio };
  if (usableL > last.highL) return { place: 'aboveLastMoved', atLeastRatio: last.positionRatio };
  const standing = curve.knots.find((k) => k.lowL < k.highL && usableL >= k.lowL && usableL <= k.highL);
  if (standing !== undefined) {
    return {
      place: 'deadZone',
      positionRatio: standing.positionRatio,
      lowL: standing.lowL,
      highL: standing.highL,
    };
  }
  for (const stretch of stretchesOf(curve.knots)) {
    const { positionsRatio, volumesL } = stretch;
    if (usableL > (volumesL.at(-1) ?? 0)) continue;
    const level = positionsRatio.filter((_, i) => volumesL[i] === usableL);
    const lowRatio = level[0];
    const highRatio = level.at(-1);
    if (lowRatio !== undefined && highRatio !== undefined) {
      return lowRatio === highRatio
        ? { place: 'onCurve', positionRatio: lowRatio }
        : { place: 'flat', lowRatio, highRatio };
    }
    const upper = volumesL.findIndex((volumeL) => volumeL > usableL);
    const positionRatio = bracketedRoot(
      (position) => stretch.volumeAtL(position) - usableL,
      positionsRatio[upper - 1] ?? first.positionRatio,
      positionsRatio[upper] ?? last.positionRatio,
    );
    return { place: 'onCurve', positionRatio };
  }
  throw new Error('the stretches of a gauge curve leave no gap');
}

function stretchesOf(knots: readonly CurveKnot[]): Stretch[] {
  const stretches: Stretch[] = [];
  let positionsRatio: number[] = [];
  let volumesL: number[] = [];
  const close = () => {
    const [onlyL] = volumesL;
    const shape = volumesL.length > 1 ? monotoneCubic(positionsRatio, volumesL) : () => onlyL ?? 0;
    stretches.push({ positionsRatio, volumesL, volumeAtL: shape });
  };
  for (const knot of knots) {
    positionsRatio.push(knot.positionRatio);
    volumesL.push(knot.lowL);
    if (knot.highL > knot.lowL) {
      close();
      positionsRatio = [knot.positionRatio];
      volumesL = [knot.highL];
    }
  }
  close();
  return stretches;
}
