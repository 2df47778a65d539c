import { requireRange } from '../problem.ts';
import { STANDARD_GRAVITY_MS2, ZERO_CELSIUS_K } from '../units/constants.ts';
import {
  GAS_CONSTANT_DRY_AIR,
  LAPSE_K_PER_M,
  PRESSURE_EXPONENT,
  SEA_LEVEL_PRESSURE_HPA,
  SEA_LEVEL_TEMPERATURE_K,
  inchesHint,
  pressureAltitudeM,
} from './standard-atmosphere.ts';

/** Lower and higher than any air has ever pressed at sea level (870 and 1085 hPa), with room for a typing check. */
export const LOWEST_SETTING_HPA = 850;
export const HIGHEST_SETTING_HPA = 1100;
/** Every airfield on land lies between these. */
export const LOWEST_FIELD_M = -500;
export const HIGHEST_FIELD_M = 6000;
/** Pressures that settings between the ends above give at such fields. */
const LOWEST_STATION_HPA = 350;
const HIGHEST_STATION_HPA = 1200;

function requireField(elevationM: number): void {
  requireRange('elevationM', elevationM, LOWEST_FIELD_M, HIGHEST_FIELD_M, 'm');
}

function requireSetting(altimeterSettingHpa: number): void {
  requireRange(
    'altimeterSettingHpa',
    altimeterSettingHpa,
    LOWEST_SETTING_HPA,
    HIGHEST_SETTING_HPA,
    'hPa',
    inchesHint(altimeterSettingHpa),
  );
}

/**
 * Pressure of the air at a field from its altimeter setting (QNH), by the definition of the setting: an altimeter set to it
 * reads the field's elevation. The inverse is altimeterSettingHpa.
 *
 * Multiplying the setting by the standard pressure ratio is right at 1013.25 hPa only (26 ft off at 2,500 m and 1030 hPa).
 * Settings in reports are truncated: a Q group may be up to 1 hPa low, an A group up to 0.01 inHg.
 * @param settingHpa 850 to 1,100 hPa, refused as altimeterSettingHpa
 * @param elevationM -500 to 6,000 m, taken as geopotential (0.6 m less at 2,000 m)
 * @returns station pressure, hPa
 * @throws RangeProblem naming altimeterSettingHpa or elevationM
 * @example stationPressureHpa(1013.25, 1524) is 843.07
 * @source ICAO Doc 7488/3 relation of pressure and altitude, applied to a setting as in WMO-No. 8 (2018) part I, 3.7.2.2
 */
export function stationPressureHpa(settingHpa: number, elevationM: number): number {
  requireSetting(settingHpa);
  requireField(elevationM);
  const atSeaLevel = (settingHpa / SEA_LEVEL_PRESSURE_HPA) ** PRESSURE_EXPONENT;
  return (
    SEA_LEVEL_PRESSURE_HPA *
    (atSeaLevel - (LAPSE_K_PER_M * elevationM) / SEA_LEVEL_TEMPERATURE_K) ** (1 / PRESSURE_EXPONENT)
  );
}

/**
 * Altimeter setting (QNH) of a field from the pressure measured there. The inverse of stationPressureHpa.
 * @param pressureHpa station pressure, 350 to 1,200 hPa, refused as stationPressureHpa
 * @param elevationM  -500 to 6,000 m
 * @returns hPa
 * @throws RangeProblem naming stationPressureHpa or elevationM
 * @source as stationPressureHpa
 */
export function altimeterSettingHpa(pressureHpa: number, elevationM: number): number {
  requireRange(
    'stationPressureHpa',
    pressureHpa,
    LOWEST_STATION_HPA,
    HIGHEST_STATION_HPA,
    'hPa',
    inchesHint(pressureHpa),
  );
  requireField(elevationM);
  const atField = (pressureHpa / SEA_LEVEL_PRESSURE_HPA) ** PRESSURE_EXPONENT;
  return (
    SEA_LEVEL_PRESSURE_HPA *
    (atField + (LAPSE_K_PER_M * elevationM) / SEA_LEVEL_TEMPERATURE_K) ** (1 / PRESSURE_EXPONENT)
  );
}

/**
 * Pressure altitude of a field from its altimeter setting: the elevation corrected for the setting.
 * @param settingHpa 850 to 1,100 hPa, refused as altimeterSettingHpa
 * @param elevationM -500 to 6,000 m
 * @returns geopotential m; below the elevation when the setting is above 1013.25 hPa
 * @throws RangeProblem naming altimeterSettingHpa or elevationM
 * @example 5,883 ft and 30.10 inHg give 5,718 ft (FAA-H-8083-25C, density altitude sample problem)
 * @source as stationPressureHpa
 */
export function pressureAltitudeFromSettingM(settingHpa: number, elevationM: number): number {
  return pressureAltitudeM(stationPressureHpa(settingHpa, elevationM));
}

/**
 * Station pressure from a pressure reduced to sea level with the temperature (SLP, not an altimeter setting): the weakest
 * way to a station pressure. It undoes the reduction with the temperature of one moment and 6.5 K/km below, while services
 * use a 12-hour mean and the humidity; at 1,600 m it may be off by several hPa.
 * @param seaLevelPressureHpa 850 to 1,100 hPa
 * @param temperatureC        of the air at the station, -60 to 60 degC
 * @param elevationM          -500 to 6,000 m
 * @returns hPa
 * @throws RangeProblem naming the argument
 * @source hypsometric equation, WMO-No. 8 (2018) part I, 3.7; mean temperature of the layer by 6.5 K/km, humidity left out
 */
export function stationPressureFromSeaLevelHpa(
  seaLevelPressureHpa: number,
  temperatureC: number,
  elevationM: number,
): number {
  requireRange(
    'seaLevelPressureHpa',
    seaLevelPressureHpa,
    LOWEST_SETTING_HPA,
    HIGHEST_SETTING_HPA,
    'hPa',
    inchesHint(seaLevelPressureHpa),
  );
  requireRange('temperatureC', temperatureC, -60, 60, 'degC');
  requireField(elevationM);
  const layerMeanK = temperatureC + ZERO_CELSIUS_K + (LAPSE_K_PER_M * elevationM) / 2;
  return (
    seaLevelPressureHpa * Math.exp((-STANDARD_GRAVITY_MS2 * elevationM) / (GAS_CONSTANT_DRY_AIR * layerMeanK))
  );
}
