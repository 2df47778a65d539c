import { requireRange } from '../problem.ts';

/** The wind over a runway: as reported at 10 m, growing with height. Its direction does not turn. */
export interface WindOverRunway {
  /** Along the take-off direction at 10 m, −30 to 30 m/s; negative is a tailwind. */
  readonly headwindMs: number;
  /** −30 to 30 m/s; negative comes from the left. */
  readonly crosswindFromRightMs: number;
  /** Of the power law, 0 (the same at all heights) to 0.6. */
  readonly gradientExponent: number;
}

/** Over open flat ground on a windy day; a calm night may have 0.3 and more. @source WMO-No. 8 (2018), Part I ch. 5 gives
 *  a roughness law; 1/7 is the usual power for it over grass, common practice */
export const OPEN_GROUND_EXPONENT = 1 / 7;

/** @throws RangeProblem naming the part that lies outside its range */
export function requireWind(wind: WindOverRunway): void {
  requireRange('headwindMs', wind.headwindMs, -30, 30, 'm/s');
  requireRange('crosswindFromRightMs', wind.crosswindFromRightMs, -30, 30, 'm/s');
  requireRange('gradientExponent', wind.gradientExponent, 0, 0.6, '');
}

/** Wind at a height over wind at 10 m; below the ground as at the ground. */
export function profileRatio(heightM: number, exponent: number): number {
  if (exponent === 0) return 1;
  return heightM <= 0 ? 0 : (heightM / REPORT_HEIGHT_M) ** exponent;
}

/** Integral of `profileRatio` over height from the ground, m: what a glide or climb at a steady rate drifts by. */
export function profileIntegralM(heightM: number, exponent: number): number {
  if (exponent === 0) return heightM;
  if (heightM <= 0) return 0;
  return (REPORT_HEIGHT_M / (exponent + 1)) * (heightM / REPORT_HEIGHT_M) ** (exponent + 1);
}

/** Height at which anemometers stand. @source WMO-No. 8 (2018), Part I ch. 5 */
const REPORT_HEIGHT_M = 10;
