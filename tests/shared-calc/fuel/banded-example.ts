import type { BandedCurve } from '../../../shared-calc/fuel/gauge-curve.ts';

/** Invented, in round figures: straight between three places, ±2 L with the needle on its mark, ±4 L as read. */
export const BANDED: BandedCurve = {
  method: 'logSlopeRefits',
  knots: [
    [0.25, 10],
    [0.5, 20],
    [0.75, 36],
  ].map(([positionRatio = NaN, bestL = NaN]) => ({
    positionRatio,
    lowL: bestL - 2,
    bestL,
    highL: bestL + 2,
    readLowL: bestL - 4,
    readHighL: bestL + 4,
  })),
  resolutionRatio: 0.25,
  usableCapacityL: 48,
  readingCount: 9,
  asideCount: 0,
  fewRows: false,
};
