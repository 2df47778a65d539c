import { requireRange } from '../problem.ts';
import { bandShapeOf, endKnots, volumesAt } from './curve-shape.ts';
import type { GaugeReading } from './fill-run.ts';
import { SAME_MARK_RATIO } from './gauge-curve.ts';
import type { BandedCurve, GaugeCurve, IsotonicCurve } from './gauge-curve.ts';

/** Whether the needle stands exactly on what was read, or was read to the nearest division of the scale. */
export type ReadingPrecision = 'needleOnMark' | 'nearestDivision';

export interface FuelReadout {
  /**
   * Where the reading lies: on the curve; at a mark where pours passed with no movement; between the empty
   * stop and the first reading that moved; between the last one and the full stop; or on a stop.
   */
  readonly place: 'onCurve' | 'deadZone' | 'belowFirstMoved' | 'aboveLastMoved' | 'emptyStop' | 'fullStop';
  readonly precision: ReadingPrecision;
  /** Plan on this many usable litres and no more. */
  readonly planningL: number;
  /** The curve itself; null where only an interval is known. */
  readonly bestL: number | null;
  /** As much as may be in the tank: what counts for mass. */
  readonly mostL: number;
  /** What went in while the needle stood still at this mark; null elsewhere. */
  readonly standstill: { readonly fromL: number; readonly toL: number } | null;
}

/**
 * Usable fuel at a reading.
 * On a curve with a band the planning figure is the 5 % one and `mostL` the 95 % one, for the needle on its mark or
 * with the error of a reading to the nearest division mixed in. It covers the containers, the start, lag and sticking;
 * it leaves out another attitude, supply or fuel than the test's. Below the first reading that moved nothing is
 * promised; from the last one up to the full stop no more than at that reading, and up to the capacity may be there.
 * A curve without a band covers the step of the scale only: for a reading to the nearest division the planning figure
 * is its volume at the lower edge of the division, and `mostL` the one at the upper edge.
 * @param reading on the scale 0 to 1, or on a stop
 * @returns usable litres, never below 0
 * @throws RangeProblem when the position lies outside the scale
 * @see leastMarkFor the other way round
 */
export function fuelAtReading(
  curve: GaugeCurve,
  reading: GaugeReading,
  precision: ReadingPrecision,
): FuelReadout {
  if (reading.at === 'scale') requireRange('positionRatio', reading.positionRatio, 0, 1, '');
  return curve.method === 'logSlopeRefits'
    ? inBand(curve, reading, precision)
    : onIsotonic(curve, reading, precision);
}

function inBand(curve: BandedCurve, reading: GaugeReading, precision: ReadingPrecision): FuelReadout {
  const { first, last } = endKnots(curve);
  const at = bandShapeOf(curve);
  const figures = (positionRatio: number) => {
    const { lowL, bestL, highL, readLowL, readHighL } = at(positionRatio);
    const [planL, mostL] = precision === 'nearestDivision' ? [readLowL, readHighL] : [lowL, highL];
    return { planningL: Math.max(0, planL), bestL: Math.max(0, bestL), mostL: Math.max(0, mostL) };
  };
  const atFirst = figures(first.positionRatio);
  const atLast = figures(last.positionRatio);
  const fullMostL = Math.max(curve.usableCapacityL, atLast.mostL);
  const beyond = { precision, bestL: null, standstill: null };
  if (reading.at === 'emptyStop')
    return { place: 'emptyStop', ...beyond, planningL: 0, mostL: atFirst.mostL };
  const atFull = { ...beyond, planningL: atLast.planningL, mostL: fullMostL };
  if (reading.at === 'fullStop') return { place: 'fullStop', ...atFull };
  const { positionRatio } = reading;
  if (positionRatio > last.positionRatio + SAME_MARK_RATIO) return { place: 'aboveLastMoved', ...atFull };
  if (positionRatio < first.positionRatio - SAME_MARK_RATIO)
    return { place: 'belowFirstMoved', ...beyond, planningL: 0, mostL: atFirst.mostL };
  return { place: 'onCurve', precision, standstill: null, ...figures(positionRatio) };
}

function onIsotonic(curve: IsotonicCurve, reading: GaugeReading, precision: ReadingPrecision): FuelReadout {
  const { first, last } = endKnots(curve);
  if (reading.at === 'emptyStop') {
    return {
      place: 'emptyStop',
      precision,
      planningL: 0,
      bestL: null,
      mostL: curve.atEmptyMostL,
      standstill: null,
    };
  }
  const cellHalfRatio = precision === 'nearestDivision' ? curve.resolutionRatio / 2 : 0;
  const atLastL = leastAtL(curve, last.positionRatio - cellHalfRatio);
  // A test that went past the stated capacity must not promise less at the stop than its own last reading.
  const fullMostL = Math.max(curve.usableCapacityL, last.highL);
  if (reading.at === 'fullStop') {
    return {
      place: 'fullStop',
      precision,
      planningL: atLastL,
      bestL: null,
      mostL: fullMostL,
      standstill: null,
    };
  }
  const { positionRatio } = reading;
  const upperRatio = positionRatio + cellHalfRatio;
  const mostL =
    upperRatio > last.positionRatio + SAME_MARK_RATIO
      ? fullMostL
      : Math.max(0, upperRatio < first.positionRatio ? first.lowL : volumesAt(curve, upperRatio).highL);
  if (positionRatio > last.positionRatio + SAME_MARK_RATIO) {
    return { place: 'aboveLastMoved', precision, planningL: atLastL, bestL: null, mostL, standstill: null };
  }
  const planningL = leastAtL(curve, positionRatio - cellHalfRatio);
  if (positionRatio < first.positionRatio - SAME_MARK_RATIO) {
    return { place: 'belowFirstMoved', precision, planningL: 0, bestL: null, mostL, standstill: null };
  }
  const { lowL, highL } = volumesAt(curve, positionRatio);
  return lowL === highL
    ? { place: 'onCurve', precision, planningL, bestL: Math.max(0, lowL), mostL, standstill: null }
    : {
        place: 'deadZone',
        precision,
        planningL,
        bestL: null,
        mostL,
        standstill: { fromL: lowL, toL: highL },
      };
}

/** Below the first reading that moved the curve says nothing; what the empty stop showed is all that is left. */
function leastAtL(curve: IsotonicCurve, positionRatio: number): number {
  const { first } = endKnots(curve);
  if (positionRatio < first.positionRatio - SAME_MARK_RATIO) return curve.offEmptyLeastL;
  return Math.max(0, volumesAt(curve, positionRatio).lowL);
}
