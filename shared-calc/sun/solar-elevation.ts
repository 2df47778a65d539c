import { requireRange } from '../problem.ts';

/** 1 January 1900 and 1 January 2101, 00:00 UTC. */
export const FIRST_EPOCH_S = -2208988800;
export const LAST_EPOCH_S = 4133980800;

/**
 * Elevation of the sun's centre above the horizon, without refraction.
 * This is the figure that civil twilight (−6 degrees) and night are defined by. Near the horizon the air lifts
 * the sun by about 0.57 degrees more.
 * @param epochS       UTC, 1900 to 2100
 * @param latitudeDeg  −90 to 90, north positive
 * @param longitudeDeg −180 to 180, east positive
 * @returns degrees, −90 to 90, within 0.015 degrees
 * @throws RangeProblem naming the argument that lies outside its range
 * @source J. Meeus, Astronomical Algorithms, 2nd ed. 1998, ch. 12, 13, 22 and 25 (lower accuracy)
 * @example solarElevationDeg(1561118400, 52, 0) is 61.4: noon at Greenwich's meridian on 21 June 2019
 */
export function solarElevationDeg(epochS: number, latitudeDeg: number, longitudeDeg: number): number {
  requireRange('epochS', epochS, FIRST_EPOCH_S, LAST_EPOCH_S, 's');
  requirePlace(latitudeDeg, longitudeDeg);
  return elevationDeg(epochS, latitudeDeg, longitudeDeg);
}

/** @throws RangeProblem naming the coordinate that lies outside its range */
export function requirePlace(latitudeDeg: number, longitudeDeg: number): void {
  requireRange('latitudeDeg', latitudeDeg, -90, 90, 'degrees');
  requireRange('longitudeDeg', longitudeDeg, -180, 180, 'degrees');
}

/** `solarElevationDeg` without its checks, for searches in time. Neglects the sun's parallax (0.0024 degrees). */
export function elevationDeg(epochS: number, latitudeDeg: number, longitudeDeg: number): number {
  const { hourAngleRad, declinationRad } = sunAt(epochS, longitudeDeg);
  const latitudeRad = latitudeDeg * RAD_PER_DEG;
  const sine =
    Math.sin(latitudeRad) * Math.sin(declinationRad) +
    Math.cos(latitudeRad) * Math.cos(declinationRad) * Math.cos(hourAngleRad);
  return Math.asin(Math.min(1, Math.max(-1, sine))) / RAD_PER_DEG;
}

/** The sun's local hour angle, −pi to pi, positive after its transit. Unchecked. */
export function hourAngleRad(epochS: number, longitudeDeg: number): number {
  return sunAt(epochS, longitudeDeg).hourAngleRad;
}

const RAD_PER_DEG = Math.PI / 180;
const DAY_S = 86400;
/** 2000 January 1, 12:00 UTC. */
const J2000_EPOCH_S = 946728000;
/**
 * Terrestrial time less universal time. It was 29 s in 1950 and may be 93 s in 2050; the sun moves 1.5
 * arcseconds in the 35 s that this constant is wrong by, which is a tenth of a second at sunset.
 */
const TERRESTRIAL_LESS_UNIVERSAL_S = 64;

function sunAt(epochS: number, longitudeDeg: number): { hourAngleRad: number; declinationRad: number } {
  const days = (epochS - J2000_EPOCH_S) / DAY_S;
  const t = (days + TERRESTRIAL_LESS_UNIVERSAL_S / DAY_S) / 36525;
  // Numbers in brackets are Meeus's equations.
  const meanLongitudeDeg = 280.46646 + t * (36000.76983 + t * 0.0003032); // (25.2)
  const anomalyRad = RAD_PER_DEG * (357.52911 + t * (35999.05029 - t * 0.0001537)); // (25.3)
  const centreDeg =
    (1.914602 - t * (0.004817 + t * 0.000014)) * Math.sin(anomalyRad) +
    (0.019993 - t * 0.000101) * Math.sin(2 * anomalyRad) +
    0.000289 * Math.sin(3 * anomalyRad);
  const nodeRad = RAD_PER_DEG * (125.04 - 1934.136 * t);
  const nutationDeg = -0.00478 * Math.sin(nodeRad);
  const apparentLongitudeRad = RAD_PER_DEG * (meanLongitudeDeg + centreDeg - 0.00569 + nutationDeg);
  const meanObliquityDeg = 23.4392911 - t * (0.0130042 + t * (1.64e-7 - t * 5.036e-7)); // (22.2)
  const obliquityRad = RAD_PER_DEG * (meanObliquityDeg + 0.00256 * Math.cos(nodeRad)); // (25.8)
  const sineLongitude = Math.sin(apparentLongitudeRad);
  const rightAscensionRad = Math.atan2(
    Math.cos(obliquityRad) * sineLongitude,
    Math.cos(apparentLongitudeRad),
  ); // (25.6)
  const siderealDeg =
    280.46061837 + 360.98564736629 * days + nutationDeg * Math.cos(obliquityRad) + longitudeDeg; // (12.4) and p. 88
  return {
    hourAngleRad: wrapped(RAD_PER_DEG * siderealDeg - rightAscensionRad),
    declinationRad: Math.asin(Math.sin(obliquityRad) * sineLongitude), // (25.7)
  };
}

function wrapped(angleRad: number): number {
  return angleRad - 2 * Math.PI * Math.round(angleRad / (2 * Math.PI));
}
