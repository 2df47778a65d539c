import { refitVolumesAtL, type KeptRefits } from '../kept-refits.ts';
import type { CurveDraws } from './check-residuals.ts';

/**
 * The curves kept with an adopted band, as checks take them.
 * @param resolutionRatio smallest step in which the gauge is read
 */
export function drawsOfKept(kept: KeptRefits, resolutionRatio: number): CurveDraws {
  return {
    firstRatio: kept.positionsRatio[0] ?? 0,
    lastRatio: kept.positionsRatio.at(-1) ?? 0,
    resolutionRatio,
    volumesAtL: (positionRatio) => refitVolumesAtL(kept, positionRatio),
    containerErrors: kept.containerErrors,
  };
}
