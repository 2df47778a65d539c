import { requireRange } from '../problem.ts';
import { RAD_PER_DEG, STANDARD_GRAVITY_MS2 } from '../units/constants.ts';

// Coordinated turns at constant speed. Pilot's Handbook of Aeronautical Knowledge, FAA-H-8083-25C, ch. 5.

/** 3 degrees a second. */
export const STANDARD_RATE_RAD_S = 3 * RAD_PER_DEG;

/**
 * Radius of a turn.
 * @param trueAirspeedMs 10 to 200 m/s
 * @param bankDeg 1 to 80
 * @param gravityMs2 9.7 to 10; the standard value unless an example says otherwise
 * @returns m
 * @throws RangeProblem naming the argument out of its range
 * @source FAA-H-8083-25C ch. 5, radius of turn (its constant 11.26 is 0.3 % low)
 * @example 120 kt at 30 degrees: 673 m (2,208 ft)
 */
export function turnRadiusM(
  trueAirspeedMs: number,
  bankDeg: number,
  gravityMs2 = STANDARD_GRAVITY_MS2,
): number {
  requireTurn(trueAirspeedMs, bankDeg);
  requireRange('gravityMs2', gravityMs2, 9.7, 10, 'm/s2');
  return trueAirspeedMs ** 2 / (gravityMs2 * Math.tan(bankDeg * RAD_PER_DEG));
}

/**
 * Rate of a turn.
 * @returns radians a second
 * @throws RangeProblem as `turnRadiusM`
 * @source FAA-H-8083-25C ch. 5, rate of turn
 * @example 120 kt at 30 degrees: 5.25 degrees a second
 */
export function turnRateRadS(trueAirspeedMs: number, bankDeg: number): number {
  requireTurn(trueAirspeedMs, bankDeg);
  return (STANDARD_GRAVITY_MS2 * Math.tan(bankDeg * RAD_PER_DEG)) / trueAirspeedMs;
}

/**
 * Bank that a rate of turn needs.
 * @param trueAirspeedMs 10 to 200 m/s
 * @param rateRadS 0.001 to 1 rad/s
 * @returns degrees
 * @throws RangeProblem naming either
 * @example standard rate at 65 kt: 10.1 degrees
 */
export function bankForRateDeg(trueAirspeedMs: number, rateRadS: number): number {
  requireSpeed(trueAirspeedMs);
  requireRange('rateRadS', rateRadS, 0.001, 1, 'rad/s');
  return Math.atan((trueAirspeedMs * rateRadS) / STANDARD_GRAVITY_MS2) / RAD_PER_DEG;
}

/** Radius of a turn of a given rate, m. @throws RangeProblem as `bankForRateDeg` */
export function radiusForRateM(trueAirspeedMs: number, rateRadS: number): number {
  requireSpeed(trueAirspeedMs);
  requireRange('rateRadS', rateRadS, 0.001, 1, 'rad/s');
  return trueAirspeedMs / rateRadS;
}

/**
 * Load factor of a level or gliding turn.
 * @param bankDeg 0 to 80
 * @returns multiples of the weight
 * @throws RangeProblem outside it
 * @source FAA-H-8083-25C ch. 5, load factor chart
 */
export function loadFactor(bankDeg: number): number {
  requireRange('bankDeg', bankDeg, 0, 80, 'degrees');
  return 1 / Math.cos(bankDeg * RAD_PER_DEG);
}

/**
 * Stall speed under load.
 * @param stallSpeedMs at one g, 5 to 100 m/s
 * @param loadFactorRatio 1 to 10
 * @throws RangeProblem naming either
 * @source FAA-H-8083-25C ch. 5: in proportion to the square root of the load factor
 */
export function stallSpeedUnderLoadMs(stallSpeedMs: number, loadFactorRatio: number): number {
  requireRange('stallSpeedMs', stallSpeedMs, 5, 100, 'm/s');
  requireRange('loadFactorRatio', loadFactorRatio, 1, 10, '');
  return stallSpeedMs * Math.sqrt(loadFactorRatio);
}

/**
 * Height lost while nothing is done and then in a turn, at one rate of sink.
 * @param sinkMs 0.2 to 20 m/s
 * @param reactionS 0 to 60 s
 * @param headingChangeRad 0 to 2 pi
 * @param rateRadS 0.001 to 1 rad/s
 * @returns m
 * @throws RangeProblem naming the argument out of its range
 * @source Airplane Flying Handbook, FAA-H-8083-3C, engine failure after take-off
 * @example 4 s and 225 degrees at 3 degrees a second, sinking 1,000 ft/min: 1,316 ft
 */
export function heightLostM(
  sinkMs: number,
  reactionS: number,
  headingChangeRad: number,
  rateRadS: number,
): number {
  requireRange('sinkMs', sinkMs, 0.2, 20, 'm/s');
  requireRange('reactionS', reactionS, 0, 60, 's');
  requireRange('headingChangeRad', headingChangeRad, 0, 2 * Math.PI, 'rad');
  requireRange('rateRadS', rateRadS, 0.001, 1, 'rad/s');
  return sinkMs * (reactionS + headingChangeRad / rateRadS);
}

function requireTurn(trueAirspeedMs: number, bankDeg: number): void {
  requireSpeed(trueAirspeedMs);
  requireRange('bankDeg', bankDeg, 1, 80, 'degrees');
}

function requireSpeed(trueAirspeedMs: number): void {
  requireRange('trueAirspeedMs', trueAirspeedMs, 10, 200, 'm/s');
}
