import { requireRange } from '../problem.ts';

/** The wind over a runway: as reported at 10 m, growing with height. Its direction does not turn. */
export interface WindOverRunway {
  /** Along the take-off direction at 10 m, −15 to 15 m/s; negative is a tailwind. */
  readonly headwindMs: number;
  /** −15 to 15 m/s; negative comes from the left. */
  readonly crosswindFromRightMs: number;
  /** Of the power law, 0 (the same at all heights) to 0.6. */
  readonly gradientExponent: number;
}

/** Over open flat ground on a windy day; a calm night may have 0.3 and more. Common practice, no source. */
export const OPEN_GROUND_EXPONENT = 1 / 7;

/** @throws RangeProblem naming the part that lies outside its range */
export function requireWind(wind: WindOverRunway): void {
  requireRange('headwindMs', wind.headwindMs, -15, 15, 'm/s');
  requireRange('crosswindFromRightMs', wind.crosswindFromRightMs, -15, 15, 'm/s');
  requireRange('gradientExponent', wind.gradientExponent, 0, 0.6, '');
}

/** Wind at a height over wind at 10 m. Below the ground as at the ground, above 300 m as at 300 m. */
export function profileRatio(heightM: number, exponent: number): number {
  if (exponent === 0) return 1;
  return heightM <= 0 ? 0 : (Math.min(heightM, GRADIENT_HEIGHT_M) / REPORT_HEIGHT_M) ** exponent;
}

/** Integral of `profileRatio` over height from the ground, m: what a glide or climb at a steady rate drifts by. */
export function profileIntegralM(heightM: number, exponent: number): number {
  if (exponent === 0) return heightM;
  if (heightM <= 0) return 0;
  const withinM = Math.min(heightM, GRADIENT_HEIGHT_M);
  const belowM = (REPORT_HEIGHT_M / (exponent + 1)) * (withinM / REPORT_HEIGHT_M) ** (exponent + 1);
  return belowM + (heightM - withinM) * profileRatio(GRADIENT_HEIGHT_M, exponent);
}

/** Height at which anemometers stand. @source WMO-No. 8 (2018), Part I ch. 5 */
const REPORT_HEIGHT_M = 10;
/** About where the ground's drag on the wind ends over open country; common practice, no source. */
export const GRADIENT_HEIGHT_M = 300;
