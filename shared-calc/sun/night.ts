import { solarElevationDeg } from './solar-elevation.ts';
import { CIVIL_TWILIGHT_ELEVATION_DEG } from './sun-day.ts';

/** Night for the fuel rule and for logging. @source 14 CFR 1.1, "night"; the almanac's civil twilight */
export const NIGHT = {
  starts: 'end of evening civil twilight',
  ends: 'beginning of morning civil twilight',
} as const;

/**
 * Whether it is night at a place: the sun's centre more than 6 degrees below the horizon.
 * @param epochS       UTC, 1900 to 2100
 * @param latitudeDeg  -90 to 90, north positive
 * @param longitudeDeg -180 to 180, east positive
 * @throws RangeProblem naming the argument
 * @source 14 CFR 1.1; civil twilight ends when the sun's centre is 6 degrees below the horizon
 */
export function isNight(epochS: number, latitudeDeg: number, longitudeDeg: number): boolean {
  return solarElevationDeg(epochS, latitudeDeg, longitudeDeg) < CIVIL_TWILIGHT_ELEVATION_DEG;
}
