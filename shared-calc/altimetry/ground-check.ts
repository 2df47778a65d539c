import { requireRange } from '../problem.ts';
import { M_PER_FT } from '../units/constants.ts';

/** An altimeter that is further off on the ground belongs into a repair station (Aeronautical Information Manual 7-2-3). */
export const GROUND_CHECK_TOLERANCE_M = 75 * M_PER_FT;

export type GroundCheck = {
  /** reading less elevation, m; positive reads high: the aeroplane is lower than it thinks */
  errorM: number;
  withinTolerance: boolean;
  /** how much of the tolerance is left, m; negative when it is exceeded */
  leftM: number;
};

/**
 * Compare an altimeter on the ground, set to the field's current setting, with the surveyed elevation of where it stands.
 * An error of exactly 75 ft is within tolerance. A truncated setting alone may make up to 27 ft (1 hPa) or 9 ft (0.01 inHg).
 * @param readingM   -1,000 to 9,000 m
 * @param elevationM of the parking spot plus the height of the instrument above the ground, -500 to 6,000 m
 * @throws RangeProblem naming readingM or elevationM
 * @source Aeronautical Information Manual 7-2-3 (altimeter settings): tolerance 75 ft
 */
export function groundCheck(readingM: number, elevationM: number): GroundCheck {
  requireRange('readingM', readingM, -1000, 9000, 'm');
  requireRange('elevationM', elevationM, -500, 6000, 'm');
  const errorM = readingM - elevationM;
  const leftM = GROUND_CHECK_TOLERANCE_M - Math.abs(errorM);
  // A limit met exactly is met: a billionth of the tolerance is noise of conversion from feet.
  return {
    errorM,
    withinTolerance: leftM >= -1e-9 * Math.max(GROUND_CHECK_TOLERANCE_M, Math.abs(readingM)),
    leftM,
  };
}
