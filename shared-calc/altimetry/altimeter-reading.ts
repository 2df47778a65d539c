import { requireRange } from '../problem.ts';
import {
  LAPSE_K_PER_M,
  PRESSURE_EXPONENT,
  SEA_LEVEL_PRESSURE_HPA,
  SEA_LEVEL_TEMPERATURE_K,
  inchesHint,
  isaPressureHpa,
  pressureAltitudeM,
} from '../atmosphere/standard-atmosphere.ts';
import { HIGHEST_SETTING_HPA, LOWEST_SETTING_HPA } from '../atmosphere/station-pressure.ts';

function requireSetting(field: string, settingHpa: number): void {
  requireRange(field, settingHpa, LOWEST_SETTING_HPA, HIGHEST_SETTING_HPA, 'hPa', inchesHint(settingHpa));
}

/** Pressure altitude of the level that a setting names: what the setting takes off every reading. */
function shiftM(settingHpa: number): number {
  return (
    (SEA_LEVEL_TEMPERATURE_K / LAPSE_K_PER_M) *
    (1 - (settingHpa / SEA_LEVEL_PRESSURE_HPA) ** PRESSURE_EXPONENT)
  );
}

/**
 * What an altimeter without error of its own reads: pressure altitude less that of the set pressure.
 * @param pressureHpa          static pressure, 226.33 to 1,200 hPa (to the tropopause)
 * @param altimeterSettingHpa  in the window of the instrument, 850 to 1,100 hPa
 * @returns m
 * @throws RangeProblem naming pressureHpa or altimeterSettingHpa
 * @example 843.07 hPa with 1013.25 hPa set reads 1524 m
 * @source ICAO Doc 7488/3 relation of pressure and altitude, by which altimeters are calibrated (14 CFR 43 appendix E)
 */
export function indicatedAltitudeM(pressureHpa: number, altimeterSettingHpa: number): number {
  requireRange('pressureHpa', pressureHpa, 226.33, 1200, 'hPa', inchesHint(pressureHpa));
  requireSetting('altimeterSettingHpa', altimeterSettingHpa);
  return pressureAltitudeM(pressureHpa) - shiftM(altimeterSettingHpa);
}

/**
 * Pressure of the air where an altimeter reads an altitude: the inverse of indicatedAltitudeM.
 * @param indicatedM           -1,000 to 9,000 m
 * @param altimeterSettingHpa  850 to 1,100 hPa
 * @returns hPa
 * @throws RangeProblem naming indicatedM or altimeterSettingHpa
 */
export function pressureOfReadingHpa(indicatedM: number, altimeterSettingHpa: number): number {
  requireRange('indicatedM', indicatedM, -1000, 9000, 'm');
  requireSetting('altimeterSettingHpa', altimeterSettingHpa);
  return isaPressureHpa(indicatedM + shiftM(altimeterSettingHpa));
}

/**
 * How much too high an altimeter reads whose setting is no longer the field's: indicated less true (in standard air).
 * Positive means that the aeroplane is lower than it reads: "from high to low, look out below". The same at every altitude.
 * @param setHpa     in the window of the instrument, 850 to 1,100 hPa
 * @param currentHpa the field's setting now, 850 to 1,100 hPa
 * @returns m
 * @throws RangeProblem naming setHpa or currentHpa
 * @example 30.42 inHg set and 29.42 inHg reported: 282 m (925 ft) too high
 * @source ICAO Doc 7488/3 relation, exact; common practice says 1,000 ft per inHg
 */
export function staleSettingErrorM(setHpa: number, currentHpa: number): number {
  requireSetting('setHpa', setHpa);
  requireSetting('currentHpa', currentHpa);
  return shiftM(currentHpa) - shiftM(setHpa);
}

/**
 * The setting with which the altimeter reads the elevation of where it stands, from a reading with another setting.
 * On the ground it gives the setting of a field that reports none.
 * @param indicatedM           reading, -1,000 to 9,000 m
 * @param altimeterSettingHpa  set while reading, 850 to 1,100 hPa
 * @param elevationM           of the instrument, -500 to 6,000 m
 * @returns hPa, which carries the instrument's own error
 * @throws RangeProblem naming the argument
 */
export function settingForElevationHpa(
  indicatedM: number,
  altimeterSettingHpa: number,
  elevationM: number,
): number {
  requireRange('elevationM', elevationM, -500, 6000, 'm');
  const pressure = pressureOfReadingHpa(indicatedM, altimeterSettingHpa);
  const atSeaLevel =
    (pressure / SEA_LEVEL_PRESSURE_HPA) ** PRESSURE_EXPONENT +
    (LAPSE_K_PER_M * elevationM) / SEA_LEVEL_TEMPERATURE_K;
  return SEA_LEVEL_PRESSURE_HPA * atSeaLevel ** (1 / PRESSURE_EXPONENT);
}
