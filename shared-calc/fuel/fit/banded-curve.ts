import type { BandedCurve, BandKnot } from '../gauge-curve.ts';
import { bandOfReading, bandOnMark } from './band.ts';
import type { GaugeFit } from './gauge-fit.ts';

/** Steps of the sweep at which the band is kept; between them it is read linearly. */
const STEPS = 64;
/** On a scale read this finely the even steps are as close as its own divisions. */
const FINEST_DIVISION_RATIO = 1 / 64;
const SAME_PLACE_RATIO = 1e-9;

/**
 * The band of a fit as it is kept and read: at even steps and at the gauge's own divisions, between the first and
 * the last reading that moved.
 * @param usableCapacityL of the tank
 * @param asideCount readings that a person set aside
 */
export function bandedCurveOf(fit: GaugeFit, usableCapacityL: number, asideCount: number): BandedCurve {
  const { rows } = fit;
  const { resolutionRatio } = rows.gauge;
  const knots = knotPositions(rows.firstPosition, rows.lastPosition, resolutionRatio).map(
    (positionRatio): BandKnot => {
      const onMark = bandOnMark(fit, positionRatio);
      const read = bandOfReading(fit, positionRatio);
      return { positionRatio, ...onMark, readLowL: read.lowL, readHighL: read.highL };
    },
  );
  return {
    method: 'logSlopeRefits',
    knots,
    resolutionRatio,
    usableCapacityL,
    readingCount: rows.kinds.filter((kind) => kind === 'scale').length,
    asideCount,
    fewRows: fit.fewRows,
  };
}

function knotPositions(first: number, last: number, resolutionRatio: number): number[] {
  const even = Array.from({ length: STEPS + 1 }, (_, step) => step / STEPS);
  const divisionCount = resolutionRatio < FINEST_DIVISION_RATIO ? 0 : Math.floor(1 / resolutionRatio + 1e-9);
  const divisions = Array.from({ length: divisionCount }, (_, index) => (index + 1) * resolutionRatio);
  const inside = [...even, ...divisions].filter(
    (position) => position > first + SAME_PLACE_RATIO && position < last - SAME_PLACE_RATIO,
  );
  return [first, ...inside, last]
    .sort((a, b) => a - b)
    .filter((position, at, all) => at === 0 || position - (all[at - 1] ?? 0) > SAME_PLACE_RATIO);
}
