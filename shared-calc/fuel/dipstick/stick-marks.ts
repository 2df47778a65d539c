import { requireRange } from '../../problem.ts';
import { bandShapeOf, endKnots } from '../curve-shape.ts';
import type { BandedCurve } from '../gauge-curve.ts';
import type { StickSpan } from './stick-data.ts';

export interface StickMark {
  /** From the stick's lowest mark, whole millimetres: at this height or above, so much may be planned on. */
  readonly heightMm: number;
  readonly planL: number;
}

/**
 * Marks for a dipstick's printed scale: the lowest whole millimetre at which each multiple of a step may be planned on,
 * read as the stick is read. Only between the heights that were measured.
 * @param span     the heights between which the curve's positions run, 0 to 2000 mm
 * @param stepL    between marks, 0.1 to 100 L
 * @throws RangeProblem
 */
export function stickMarks(curve: BandedCurve, { lowMm, highMm }: StickSpan, stepL: number): StickMark[] {
  requireRange('highMm', highMm, lowMm + 1, 2050, 'mm');
  const lengthMm = highMm - lowMm;
  requireRange('stepL', stepL, 0.1, 100, 'L');
  const { first, last } = endKnots(curve);
  const at = bandShapeOf(curve);
  const marks: StickMark[] = [];
  let next = 1;
  // Heights a rounding apart from the ends are the ends.
  const lowest = Math.ceil(lowMm + first.positionRatio * lengthMm - 1e-9);
  const highest = Math.floor(lowMm + last.positionRatio * lengthMm + 1e-9);
  for (let heightMm = lowest; heightMm <= highest; heightMm++) {
    const planL = at((heightMm - lowMm) / lengthMm).readLowL;
    if (heightMm === lowest) next = Math.max(1, Math.floor(planL / stepL + 1e-9));
    // The highest multiple that this height reaches; lower ones are marked below it or not at all.
    let reached = 0;
    while (next * stepL <= planL + 1e-9) reached = next++;
    if (reached > 0) marks.push({ heightMm, planL: reached * stepL });
  }
  return marks;
}
