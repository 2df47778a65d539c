import { InputProblem, requireRange } from '../problem.ts';
import { gaggFerrarPowerRatio } from './power.ts';
import type { RunwayDistances } from './runway-distances.ts';

/** A manual's only figure: standard air at sea level, no wind, level dry pavement. */
export interface SeaLevelFigure {
  readonly distances: RunwayDistances;
  /** The mass that it holds for, 50 to 5000 kg. */
  readonly massKg: number;
  /**
   * Lift over drag in the climb to 50 ft, 3 to 30. With take-off flaps it is less than the best glide; 70 % of the best
   * glide ratio is common practice, no source. Less is the safer figure.
   */
  readonly liftToDragRatio: number;
}

export type TakeOffEstimate =
  | {
      readonly kind: 'estimate';
      readonly distances: RunwayDistances;
      /** Of the climb to 50 ft, as a ratio. */
      readonly climbGradientRatio: number;
      /** Thicker air or a lighter aeroplane than the figure's gained nothing. */
      readonly heldAtFigure: boolean;
    }
  /** By this estimate it would not climb over the obstacle at all. */
  | { readonly kind: 'wouldNotClimb' };

/**
 * ESTIMATE of a take-off from one sea-level figure, where a manual prints no table. Never to be used beside one.
 *
 * Assumed: the lift-off speed keeps its lift coefficient, so its square goes with mass over density. Power falls by
 * Gagg and Ferrar's relation (full throttle, no turbocharger), the propeller's efficiency at lift-off stays, and thrust
 * is power over speed. The roll is then proportional to mass^2.5 / (density^1.5 power). In the air part thrust less
 * drag over weight is the climb gradient, the drag a fixed share of the weight (`liftToDragRatio`); the figure itself
 * gives the gradient that it had. Left out: rolling friction beside thrust, a propeller that does not reach its
 * revolutions, a mixture not leaned, technique.
 * Air thicker than standard and masses below the figure's are answered as the figure itself: no better than.
 * @param massKg       50 to 5000 kg
 * @param densityRatio moist air density over 1.225 kg/m3, 0.5 to 1.4
 * @throws RangeProblem naming the quantity out of its range
 * @throws InputProblem when the figure's roll is not shorter than its whole
 * @source distance proportional to W^2 / (sigma thrust): Pilot's Handbook of Aeronautical Knowledge, FAA-H-8083-25C,
 *   ch. 11; power: R. F. Gagg and E. V. Farrar 1934
 */
export function estimateTakeOff(
  figure: SeaLevelFigure,
  massKg: number,
  densityRatio: number,
): TakeOffEstimate {
  const { groundRollM, overObstacleM } = figure.distances;
  requireRange('groundRollM', groundRollM, 1, 9999, 'm');
  requireRange('overObstacleM', overObstacleM, 2, 10000, 'm');
  requireRange('figure.massKg', figure.massKg, 50, 5000, 'kg');
  requireRange('liftToDragRatio', figure.liftToDragRatio, 3, 30, '');
  requireRange('massKg', massKg, 50, 5000, 'kg');
  requireRange('densityRatio', densityRatio, 0.5, 1.4, '');
  if (groundRollM >= overObstacleM) {
    throw new InputProblem(
      'groundRollM',
      `${String(groundRollM)} m leaves nothing for the climb over the obstacle`,
    );
  }
  const massRatio = Math.max(1, massKg / figure.massKg);
  const airRatio = Math.min(1, densityRatio);
  const speedRatio = Math.sqrt(massRatio / airRatio);
  const thrustRatio = gaggFerrarPowerRatio(airRatio) / speedRatio;
  const rollRatio = (massRatio * speedRatio ** 2) / thrustRatio;
  const airPartM = overObstacleM - groundRollM;
  const dragOverWeight = 1 / figure.liftToDragRatio;
  const figureGradient = OBSTACLE_M / airPartM;
  const gradient = ((figureGradient + dragOverWeight) * thrustRatio) / massRatio - dragOverWeight;
  if (gradient <= LEAST_GRADIENT) return { kind: 'wouldNotClimb' };
  const rollM = groundRollM * rollRatio;
  return {
    kind: 'estimate',
    distances: { groundRollM: rollM, overObstacleM: rollM + (airPartM * figureGradient) / gradient },
    climbGradientRatio: gradient,
    heldAtFigure: massKg < figure.massKg || densityRatio > 1,
  };
}

/** 50 ft. */
const OBSTACLE_M = 15.24;
/** Flatter than 1 in 100 is no climb that an estimate of this kind can promise. */
const LEAST_GRADIENT = 0.01;
