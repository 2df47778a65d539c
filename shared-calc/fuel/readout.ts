import { requireRange } from '../problem.ts';
import { endKnots, volumesAt } from './curve-shape.ts';
import type { GaugeReading } from './fill-run.ts';
import { SAME_MARK_RATIO } from './gauge-curve.ts';
import type { GaugeCurve } from './gauge-curve.ts';

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
 * For a reading to the nearest division the planning figure is the curve's volume at the lower edge of the
 * division around it, and `mostL` the volume at its upper edge. Below the first reading that moved nothing is
 * assumed but what was in the tank when the needle was last seen on the empty stop. From the last reading that
 * moved up to the full stop no more is promised than at that reading, and up to the capacity may be there.
 * Covers the step of the scale only. Leaves out the errors of the containers and of the start, lag and
 * sticking of the needle, and another attitude than the test's: a planning figure by a fit with a band is lower.
 * @param reading on the scale 0 to 1, or on a stop
 * @returns usable litres, never below 0
 * @throws RangeProblem when the position lies outside the scale
 * @see needleAt the other way round
 */
export function fuelAtReading(
  curve: GaugeCurve,
  reading: GaugeReading,
  precision: ReadingPrecision,
): FuelReadout {
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
  requireRange('positionRatio', positionRatio, 0, 1, '');
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
function leastAtL(curve: GaugeCurve, positionRatio: number): number {
  const { first } = endKnots(curve);
  if (positionRatio < first.positionRatio - SAME_MARK_RATIO) return curve.offEmptyLeastL;
  return Math.max(0, volumesAt(curve, positionRatio).lowL);
}
