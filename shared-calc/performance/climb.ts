import { InputProblem, requireRange } from '../problem.ts';

/**
 * Angle of the climb through still air.
 * @param climbRateMs −30 to 30 m/s
 * @param trueAirspeedMs 10 to 100 m/s
 * @returns radians
 * @throws RangeProblem naming either
 * @throws InputProblem when it climbs faster than it flies
 */
export function climbAngleRad(climbRateMs: number, trueAirspeedMs: number): number {
  requireClimb(climbRateMs, trueAirspeedMs);
  return Math.asin(climbRateMs / trueAirspeedMs);
}

/**
 * Height gained over distance along the ground.
 * @param climbRateMs −30 to 30 m/s
 * @param trueAirspeedMs 10 to 100 m/s, along the flight path
 * @param headwindMs −40 to 40 m/s, negative is a tailwind (which flattens the climb)
 * @returns ratio, 0.05 is 5 m in 100 m
 * @throws RangeProblem naming the argument out of its range
 * @throws InputProblem when the wind leaves no speed over the ground
 * @source Aeronautical Information Manual 5-2-9: rate in ft/min is gradient in ft/NM times ground speed in kt over 60
 */
export function climbGradientRatio(climbRateMs: number, trueAirspeedMs: number, headwindMs: number): number {
  requireRange('headwindMs', headwindMs, -40, 40, 'm/s');
  requireClimb(climbRateMs, trueAirspeedMs);
  const groundSpeedMs = Math.sqrt(trueAirspeedMs ** 2 - climbRateMs ** 2) - headwindMs;
  if (groundSpeedMs < 1) {
    throw new InputProblem('headwindMs', `${String(headwindMs)} m/s leaves no speed over the ground`);
  }
  return climbRateMs / groundSpeedMs;
}

function requireClimb(climbRateMs: number, trueAirspeedMs: number): void {
  requireRange('climbRateMs', climbRateMs, -30, 30, 'm/s');
  requireRange('trueAirspeedMs', trueAirspeedMs, 10, 100, 'm/s');
  if (Math.abs(climbRateMs) >= trueAirspeedMs) {
    throw new InputProblem('climbRateMs', `${String(climbRateMs)} m/s is faster than the aeroplane flies`);
  }
}
