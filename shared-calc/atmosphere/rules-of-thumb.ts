import { requireRange } from '../problem.ts';
import { HPA_PER_INHG, M_PER_FT } from '../units/constants.ts';

// "The standard lapse rate ... approximately 1 inHg and 2 degC per 1,000 feet": taught, not used.
const PER_M = 1 / (1000 * M_PER_FT);

/**
 * Standard temperature by the rule of thumb of 2 degC per 1,000 ft: only to be shown beside isaTemperatureC.
 * @param altitudeM 0 to 3,048 m (10,000 ft), where the rule is taught
 * @returns degree C
 * @throws RangeProblem naming altitudeM
 * @source FAA-H-8083-25C chapter 4, standard lapse rate
 */
export function ruleOfThumbTemperatureC(altitudeM: number): number {
  requireRange('altitudeM', altitudeM, 0, 3048, 'm');
  return 15 - 2 * PER_M * altitudeM;
}

/**
 * Standard pressure by the rule of thumb of 1 inHg per 1,000 ft: only to be shown beside isaPressureHpa.
 * @param altitudeM 0 to 3,048 m (10,000 ft), where the rule is taught
 * @returns hPa
 * @throws RangeProblem naming altitudeM
 * @source FAA-H-8083-25C chapter 4, standard lapse rate
 */
export function ruleOfThumbPressureHpa(altitudeM: number): number {
  requireRange('altitudeM', altitudeM, 0, 3048, 'm');
  return (29.92 - PER_M * altitudeM) * HPA_PER_INHG;
}
