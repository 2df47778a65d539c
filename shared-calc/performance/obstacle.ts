import { requireRange } from '../problem.ts';
import type { ClimbNumbers } from './climb-reader.ts';
import type { DistanceFigures } from './departure-figures.ts';
import { isAnswered, type RefusedKind } from './figure-kind.ts';

/** Something to climb over, straight ahead. */
export interface ObstacleAhead {
  /** From where the take-off begins, 0 to 20000 m. */
  readonly fromStartM: number;
  /** Above the runway, 0 to 1000 m. */
  readonly heightM: number;
  /** Wished above it, 0 to 300 m. */
  readonly clearanceM: number;
}

export type ObstacleAnswer =
  | {
      readonly kind: 'height';
      /** Above the runway at the obstacle, by the climb's gradient from 50 ft on. */
      readonly heightM: number;
      /** What is left above the obstacle and the wished clearance; negative where it is not cleared so. */
      readonly marginM: number;
      /** Over the ground from 50 ft to the obstacle's top and the clearance; 0 where 50 ft are enough. */
      readonly neededGradientRatio: number;
      /** Any of the figures behind it is an estimate or no better than an edge. */
      readonly worth: 'table' | 'edge' | 'estimate';
    }
  /** It stands nearer than the place where 50 ft are reached, the safety factor counted: the manual says nothing of it. */
  | { readonly kind: 'nearerThan50Ft'; readonly fiftyFtFromStartM: number }
  | { readonly kind: 'refused'; readonly why: RefusedKind };

/**
 * Whether the climb after take-off clears an obstacle: 50 ft are reached where the take-off distance with its safety factor
 * ends, from there the climb's gradient counts. Leaves out: retracting flaps, turning, sinking air, a headwind (see climbReader).
 * @throws RangeProblem naming the part of the obstacle out of its range
 * @source geometry; the take-off distance ends at 50 ft: Pilot's Handbook of Aeronautical Knowledge, FAA-H-8083-25C, ch. 11
 * @example 50 ft at 600 m, then 8 %: 1 100 m from the start the aeroplane is 15.24 + 500 x 0.08 = 55.2 m high
 */
export function overObstacle(
  takeOff: DistanceFigures,
  climb: Readonly<ClimbNumbers>,
  obstacle: ObstacleAhead,
): ObstacleAnswer {
  const { fromStartM, heightM, clearanceM } = obstacle;
  requireRange('fromStartM', fromStartM, 0, 20_000, 'm');
  requireRange('heightM', heightM, 0, 1000, 'm');
  requireRange('clearanceM', clearanceM, 0, 300, 'm');
  if (!isAnswered(takeOff.kind)) return { kind: 'refused', why: takeOff.kind };
  if (!isAnswered(climb.gradientKind)) return { kind: 'refused', why: climb.gradientKind };
  const fiftyFtFromStartM = takeOff.overObstacleM * takeOff.safety.factorRatio;
  // Only the ground roll is printed: where 50 ft are reached is not known.
  if (fiftyFtFromStartM === Infinity) return { kind: 'refused', why: 'noTable' };
  const alongM = fromStartM - fiftyFtFromStartM;
  if (alongM <= 0) return { kind: 'nearerThan50Ft', fiftyFtFromStartM };
  const thereM = FIFTY_FT_M + alongM * climb.gradientRatio;
  const kinds = [takeOff.kind, climb.gradientKind];
  return {
    kind: 'height',
    heightM: thereM,
    marginM: thereM - heightM - clearanceM,
    neededGradientRatio: Math.max(0, heightM + clearanceM - FIFTY_FT_M) / alongM,
    worth: kinds.includes('estimate') ? 'estimate' : kinds.includes('edge') ? 'edge' : 'table',
  };
}

const FIFTY_FT_M = 15.24;
