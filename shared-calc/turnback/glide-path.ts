import { profileIntegralM, profileRatio } from './wind-profile.ts';
import type { WindOverRunway } from './wind-profile.ts';

/** Over the runway: along the take-off direction from where the roll began, to the right of it, above it. */
export interface PathState {
  readonly alongM: number;
  readonly rightM: number;
  readonly heightM: number;
  /** Where the nose points, clockwise from the take-off direction; a whole turn to the right is 2 pi. */
  readonly headingRad: number;
  /** Since the engine stopped. */
  readonly timeS: number;
}

/** A piece flown at steady speed, sink and rate of turn. */
export interface Leg {
  readonly durationS: number;
  /** Through the air, along the ground's plane. */
  readonly horizontalSpeedMs: number;
  readonly sinkMs: number;
  /** Positive turns right; 0 is straight. */
  readonly rateRadS: number;
}

/**
 * The state at the end of a leg. Exact, not stepped: through the air a leg is a line or an arc, height falls evenly with
 * time, and the drift is the integral of the wind's power law over the heights flown. Error: rounding only.
 * Left out: what a change of wind with height does to the airspeed.
 */
export function afterLeg(state: PathState, leg: Leg, wind: WindOverRunway): PathState {
  const { durationS, horizontalSpeedMs, sinkMs, rateRadS } = leg;
  const headingRad = state.headingRad + rateRadS * durationS;
  const heightM = state.heightM - sinkMs * durationS;
  const driftS = windSecondsS(state.heightM, heightM, durationS, wind.gradientExponent);
  // An arc shorter than this is a line to the last digit, and dividing by its rate would lose digits.
  const isLine = Math.abs(rateRadS * durationS) < 1e-9;
  const aheadM = isLine
    ? horizontalSpeedMs * durationS * Math.cos(state.headingRad)
    : (horizontalSpeedMs / rateRadS) * (Math.sin(headingRad) - Math.sin(state.headingRad));
  const asideM = isLine
    ? horizontalSpeedMs * durationS * Math.sin(state.headingRad)
    : (horizontalSpeedMs / rateRadS) * (Math.cos(state.headingRad) - Math.cos(headingRad));
  return {
    alongM: state.alongM + aheadM - wind.headwindMs * driftS,
    rightM: state.rightM + asideM - wind.crosswindFromRightMs * driftS,
    heightM,
    headingRad,
    timeS: state.timeS + durationS,
  };
}

/** Seconds of the wind at 10 m that drift as far as the wind along the way did. */
function windSecondsS(fromM: number, toM: number, durationS: number, exponent: number): number {
  if (exponent === 0) return durationS;
  // A leg too short to change the height in its last digit.
  if (fromM === toM) return durationS * profileRatio(fromM, exponent);
  return (durationS * (profileIntegralM(fromM, exponent) - profileIntegralM(toM, exponent))) / (fromM - toM);
}
