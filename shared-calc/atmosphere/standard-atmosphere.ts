import { requireRange } from '../problem.ts';
import { STANDARD_GRAVITY_MS2, ZERO_CELSIUS_K } from '../units/constants.ts';

// ICAO Doc 7488/3 (1993) tables A and D; U.S. Standard Atmosphere 1976 (NOAA-S/T 76-1562) tables 2 and 4: the same to 32 km.
export const SEA_LEVEL_TEMPERATURE_K = 288.15;
export const SEA_LEVEL_PRESSURE_HPA = 1013.25;
/** Of the troposphere, as a loss: 6.5 K per km of geopotential altitude. */
export const LAPSE_K_PER_M = 0.0065;
export const GAS_CONSTANT_DRY_AIR = 287.05287;
export const TROPOPAUSE_M = 11_000;
export const TROPOPAUSE_TEMPERATURE_K = 216.65;

/** R L / g: 0.190263. The pressure ratio to this power is linear in altitude below the tropopause. */
export const PRESSURE_EXPONENT = (GAS_CONSTANT_DRY_AIR * LAPSE_K_PER_M) / STANDARD_GRAVITY_MS2;
/** The density ratio to this power, 0.234969, is linear in altitude below the tropopause. */
export const DENSITY_EXPONENT = PRESSURE_EXPONENT / (1 - PRESSURE_EXPONENT);
export const SEA_LEVEL_DENSITY_KG_M3 =
  (SEA_LEVEL_PRESSURE_HPA * 100) / (GAS_CONSTANT_DRY_AIR * SEA_LEVEL_TEMPERATURE_K);

export const LOWEST_ISA_M = -5000;
export const HIGHEST_ISA_M = 20_000;

const TROPOPAUSE_RATIO = TROPOPAUSE_TEMPERATURE_K / SEA_LEVEL_TEMPERATURE_K;
const TROPOPAUSE_PRESSURE_HPA = SEA_LEVEL_PRESSURE_HPA * TROPOPAUSE_RATIO ** (1 / PRESSURE_EXPONENT);
const TROPOPAUSE_DENSITY_KG_M3 = SEA_LEVEL_DENSITY_KG_M3 * TROPOPAUSE_RATIO ** (1 / DENSITY_EXPONENT);
/** Over this height pressure and density fall to 1/e in the isothermal layer: 6341.6 m. */
const SCALE_HEIGHT_M = (GAS_CONSTANT_DRY_AIR * TROPOPAUSE_TEMPERATURE_K) / STANDARD_GRAVITY_MS2;

/**
 * Temperature of the standard atmosphere.
 * @param geopotentialAltitudeM -5,000 to 20,000 m; for a geometric altitude see geopotential.ts
 * @returns degree C
 * @throws RangeProblem naming geopotentialAltitudeM
 * @example isaTemperatureC(1524) is 5.094 (5,000 ft)
 * @source ICAO Doc 7488/3, section 2; U.S. Standard Atmosphere 1976, equation 23
 */
export function isaTemperatureC(geopotentialAltitudeM: number): number {
  return temperatureK(geopotentialAltitudeM) - ZERO_CELSIUS_K;
}

function temperatureK(geopotentialAltitudeM: number): number {
  requireRange('geopotentialAltitudeM', geopotentialAltitudeM, LOWEST_ISA_M, HIGHEST_ISA_M, 'm');
  return geopotentialAltitudeM >= TROPOPAUSE_M
    ? TROPOPAUSE_TEMPERATURE_K
    : SEA_LEVEL_TEMPERATURE_K - LAPSE_K_PER_M * geopotentialAltitudeM;
}

/**
 * Pressure of the standard atmosphere. The inverse is pressureAltitudeM.
 * @param geopotentialAltitudeM -5,000 to 20,000 m
 * @returns hPa
 * @throws RangeProblem naming geopotentialAltitudeM
 * @example isaPressureHpa(11000) is 226.32
 * @source U.S. Standard Atmosphere 1976, equations 33a and 33b; ICAO Doc 7488/3, section 2
 */
export function isaPressureHpa(geopotentialAltitudeM: number): number {
  const ratio = temperatureK(geopotentialAltitudeM) / SEA_LEVEL_TEMPERATURE_K;
  return geopotentialAltitudeM > TROPOPAUSE_M
    ? TROPOPAUSE_PRESSURE_HPA * Math.exp((TROPOPAUSE_M - geopotentialAltitudeM) / SCALE_HEIGHT_M)
    : SEA_LEVEL_PRESSURE_HPA * ratio ** (1 / PRESSURE_EXPONENT);
}

/**
 * Density of the standard atmosphere. The inverse is isaAltitudeOfDensityM.
 * @param geopotentialAltitudeM -5,000 to 20,000 m
 * @returns kg/m3
 * @throws RangeProblem naming geopotentialAltitudeM
 * @example isaDensityKgM3(0) is 1.2250
 * @source U.S. Standard Atmosphere 1976, equation 42; ICAO Doc 7488/3, section 2
 */
export function isaDensityKgM3(geopotentialAltitudeM: number): number {
  return (
    (isaPressureHpa(geopotentialAltitudeM) * 100) /
    (GAS_CONSTANT_DRY_AIR * temperatureK(geopotentialAltitudeM))
  );
}

export type IsaRatios = { temperatureRatio: number; pressureRatio: number; densityRatio: number };

/**
 * Temperature, pressure and density of the standard atmosphere as ratios to sea level (theta, delta, sigma).
 * @param geopotentialAltitudeM -5,000 to 20,000 m
 * @throws RangeProblem naming geopotentialAltitudeM
 */
export function isaRatios(geopotentialAltitudeM: number): IsaRatios {
  return {
    temperatureRatio: temperatureK(geopotentialAltitudeM) / SEA_LEVEL_TEMPERATURE_K,
    pressureRatio: isaPressureHpa(geopotentialAltitudeM) / SEA_LEVEL_PRESSURE_HPA,
    densityRatio: isaDensityKgM3(geopotentialAltitudeM) / SEA_LEVEL_DENSITY_KG_M3,
  };
}

/** Pressures at the ends of the standard atmosphere used here: 20,000 m and -5,000 m. */
export const LOWEST_ISA_PRESSURE_HPA = isaPressureHpa(HIGHEST_ISA_M);
export const HIGHEST_ISA_PRESSURE_HPA = isaPressureHpa(LOWEST_ISA_M);
export const LOWEST_ISA_DENSITY_KG_M3 = isaDensityKgM3(HIGHEST_ISA_M);
export const HIGHEST_ISA_DENSITY_KG_M3 = isaDensityKgM3(LOWEST_ISA_M);

/**
 * Pressure altitude: where the standard atmosphere has this pressure. The inverse of isaPressureHpa.
 * It is what an altimeter set to 1013.25 hPa (29.92 inHg) reads.
 * @param pressureHpa static pressure, 54.75 to 1776.87 hPa (20,000 m to -5,000 m); at a field: its station pressure
 * @returns geopotential m
 * @throws RangeProblem naming pressureHpa
 * @example pressureAltitudeM(843.07) is 1524.0 (5,000 ft)
 * @source ICAO Doc 7488/3, section 2, solved for the altitude
 */
export function pressureAltitudeM(pressureHpa: number): number {
  requireRange(
    'pressureHpa',
    pressureHpa,
    LOWEST_ISA_PRESSURE_HPA,
    HIGHEST_ISA_PRESSURE_HPA,
    'hPa',
    inchesHint(pressureHpa),
  );
  if (pressureHpa < TROPOPAUSE_PRESSURE_HPA) {
    return TROPOPAUSE_M + SCALE_HEIGHT_M * Math.log(TROPOPAUSE_PRESSURE_HPA / pressureHpa);
  }
  return (
    (SEA_LEVEL_TEMPERATURE_K / LAPSE_K_PER_M) *
    (1 - (pressureHpa / SEA_LEVEL_PRESSURE_HPA) ** PRESSURE_EXPONENT)
  );
}

/**
 * Where the standard atmosphere has this density. The inverse of isaDensityKgM3; for air of a given density, its density altitude.
 * @param densityKgM3 0.0881 to 1.930 kg/m3 (20,000 m to -5,000 m)
 * @returns geopotential m
 * @throws RangeProblem naming densityKgM3
 * @source ICAO Doc 7488/3, section 2, solved for the altitude
 */
export function isaAltitudeOfDensityM(densityKgM3: number): number {
  requireRange('densityKgM3', densityKgM3, LOWEST_ISA_DENSITY_KG_M3, HIGHEST_ISA_DENSITY_KG_M3, 'kg/m3');
  if (densityKgM3 < TROPOPAUSE_DENSITY_KG_M3) {
    return TROPOPAUSE_M + SCALE_HEIGHT_M * Math.log(TROPOPAUSE_DENSITY_KG_M3 / densityKgM3);
  }
  return (
    (SEA_LEVEL_TEMPERATURE_K / LAPSE_K_PER_M) *
    (1 - (densityKgM3 / SEA_LEVEL_DENSITY_KG_M3) ** DENSITY_EXPONENT)
  );
}

/** The likely cause when a pressure is refused: 25 to 32 are inches of mercury. */
export function inchesHint(pressureHpa: number): string | undefined {
  return pressureHpa >= 20 && pressureHpa <= 33 ? 'was inHg meant?' : undefined;
}
