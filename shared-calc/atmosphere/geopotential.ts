import { requireRange } from '../problem.ts';

/** Radius at which the gravity of the 1976 model falls off as at latitude 45.5 degrees: 6,356,766 m. */
const EARTH_RADIUS_M = 6_356_766;
const LOWEST_GEOMETRIC_M = -5000;
const HIGHEST_GEOMETRIC_M = 32_000;

/**
 * Geopotential altitude, in which the standard atmosphere is defined, of a height measured with a tape.
 * At 2,000 m the two differ by 0.6 m, at 20,000 m by 63 m.
 * @param geometricAltitudeM -5,000 to 32,000 m above mean sea level
 * @returns geopotential m
 * @throws RangeProblem naming geometricAltitudeM
 * @source U.S. Standard Atmosphere 1976, equation 18. Leaves out that gravity differs with latitude.
 */
export function geopotentialAltitudeM(geometricAltitudeM: number): number {
  requireRange('geometricAltitudeM', geometricAltitudeM, LOWEST_GEOMETRIC_M, HIGHEST_GEOMETRIC_M, 'm');
  return (EARTH_RADIUS_M * geometricAltitudeM) / (EARTH_RADIUS_M + geometricAltitudeM);
}

/**
 * Geometric altitude of a geopotential one: the inverse of geopotentialAltitudeM.
 * @param geopotentialAltitudeM -5,000 to 31,800 m
 * @returns geometric m above mean sea level
 * @throws RangeProblem naming geopotentialAltitudeM
 * @source U.S. Standard Atmosphere 1976, equation 19
 */
export function geometricAltitudeM(geopotentialAltitudeM: number): number {
  requireRange('geopotentialAltitudeM', geopotentialAltitudeM, LOWEST_GEOMETRIC_M, 31_800, 'm');
  return (EARTH_RADIUS_M * geopotentialAltitudeM) / (EARTH_RADIUS_M - geopotentialAltitudeM);
}
