import type { GaugeReading } from '../fill-run.ts';
import { requireRange } from '../../problem.ts';

/** What the gauge shows with no usable fuel in the tank. */
export type ZeroVerdict =
  | { readonly kind: 'readsZero' }
  /** Within half a division of zero: the scale cannot tell it from zero. */
  | { readonly kind: 'withinDivision'; readonly positionRatio: number }
  /** It promises fuel where there is none. */
  | { readonly kind: 'readsAbove'; readonly positionRatio: number }
  /** On the ground, not levelled: it says nothing of level flight. */
  | { readonly kind: 'notLevel' };

/**
 * The gauge's zero: with only the unusable fuel left, levelled as in flight, it should read zero.
 * @param resolutionRatio smallest step read, 0.001 to 0.5 of the scale
 * @throws RangeProblem for a position outside 0 to 1
 * @source 14 CFR 23.1337(b)(1) as it stood before amendment 23-64 of 2017, for aeroplanes certificated under it
 */
export function judgeZero(
  reading: GaugeReading,
  attitude: 'ground' | 'level flight',
  resolutionRatio: number,
): ZeroVerdict {
  requireRange('resolutionRatio', resolutionRatio, 0.001, 0.5, '');
  if (reading.at === 'scale') requireRange('positionRatio', reading.positionRatio, 0, 1, '');
  if (attitude !== 'level flight') return { kind: 'notLevel' };
  if (reading.at === 'emptyStop') return { kind: 'readsZero' };
  const positionRatio = reading.at === 'fullStop' ? 1 : reading.positionRatio;
  if (positionRatio === 0) return { kind: 'readsZero' };
  return positionRatio <= resolutionRatio / 2 + 1e-9
    ? { kind: 'withinDivision', positionRatio }
    : { kind: 'readsAbove', positionRatio };
}
