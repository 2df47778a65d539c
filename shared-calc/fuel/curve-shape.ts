import { monotoneCubic } from '../numeric/monotone-cubic.ts';
import { requireRange } from '../problem.ts';
import { SAME_MARK_RATIO } from './gauge-curve.ts';
import type { BandedCurve, BandKnot, CurveKnot, GaugeCurve } from './gauge-curve.ts';

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
