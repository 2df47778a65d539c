import { densityAltitudeM, dryDensityAltitudeM } from '../atmosphere/density-altitude.ts';
import {
  altimeterSettingHpa,
  HIGHEST_SETTING_HPA,
  LOWEST_SETTING_HPA,
  stationPressureFromSeaLevelHpa,
  stationPressureHpa,
} from '../atmosphere/station-pressure.ts';
import { requireRange } from '../problem.ts';

/** How the pressure of a report was had, surest first. */
export type PressureFrom = 'station' | 'altimeterSetting' | 'seaLevel';

/** What a station reported; NaN where it did not. */
export interface ReportedAir {
  temperatureC: number;
  dewPointC: number;
  stationPressureHpa: number;
  altimeterSettingHpa: number;
  seaLevelPressureHpa: number;
}

/** The surest pressure of a report; null where it has none. */
export function pressureFrom(air: ReportedAir): PressureFrom | null {
  if (!Number.isNaN(air.stationPressureHpa)) return 'station';
  if (!Number.isNaN(air.altimeterSettingHpa)) return 'altimeterSetting';
  return Number.isNaN(air.seaLevelPressureHpa) ? null : 'seaLevel';
}

/** Below this the vapour in the air changes density altitude by less than 0.5 m, and the humidity formulas end. */
const DRIEST_DEW_POINT_C = -45;
const COLDEST_C = -45;
const HOTTEST_C = 60;

/**
 * Density altitude at a field from a report of its weather station.
 *
 * Altimeter setting, temperature and dew point carry over from station to field unchanged; a station pressure or a
 * sea-level pressure first becomes the setting at the station. Air drier than a dew point of -45 degC counts as dry
 * (less than 0.5 m); a dew point above the temperature by rounding counts as the temperature.
 * @param air               temperature -45 to 60 degC; the surest pressure counts
 * @param stationElevationM elevation to which the report's pressure belongs, -500 to 6,000 m
 * @param fieldElevationM   -500 to 6,000 m
 * @returns geopotential m; NaN where the report lacks a value or lies outside these ranges
 * @throws RangeProblem naming stationElevationM or fieldElevationM
 * @source ICAO Doc 7488/3; WMO-No. 8 (2018); the way from station to field: common practice, no source
 */
export function fieldDensityAltitudeM(
  air: ReportedAir,
  stationElevationM: number,
  fieldElevationM: number,
): number {
  requireRange('stationElevationM', stationElevationM, -500, 6000, 'm');
  requireRange('fieldElevationM', fieldElevationM, -500, 6000, 'm');
  const { temperatureC, dewPointC } = air;
  if (!(temperatureC >= COLDEST_C && temperatureC <= HOTTEST_C) || Number.isNaN(dewPointC)) return NaN;
  const setting = fieldSettingHpa(air, stationElevationM);
  if (!(setting >= LOWEST_SETTING_HPA && setting <= HIGHEST_SETTING_HPA)) return NaN;
  const pressureHpa = stationPressureHpa(setting, fieldElevationM);
  return dewPointC < DRIEST_DEW_POINT_C
    ? dryDensityAltitudeM(pressureHpa, temperatureC)
    : densityAltitudeM(pressureHpa, temperatureC, Math.min(dewPointC, temperatureC));
}

/**
 * The altimeter setting that a report gives: its own, or the one that belongs to its station or sea-level pressure,
 * whichever is surest. It carries over to the field unchanged.
 * @param stationElevationM elevation to which the report's pressure belongs, -500 to 6,000 m
 * @returns hPa; NaN where the report has no pressure that can serve
 * @throws RangeProblem naming stationElevationM
 * @source ICAO Doc 7488/3; the way from station to field: common practice, no source
 */
export function fieldSettingHpa(air: ReportedAir, stationElevationM: number): number {
  requireRange('stationElevationM', stationElevationM, -500, 6000, 'm');
  switch (pressureFrom(air)) {
    case 'station':
      return altimeterSettingHpa(air.stationPressureHpa, stationElevationM);
    case 'altimeterSetting':
      return air.altimeterSettingHpa;
    case 'seaLevel': {
      const { seaLevelPressureHpa } = air;
      if (!(seaLevelPressureHpa >= LOWEST_SETTING_HPA && seaLevelPressureHpa <= HIGHEST_SETTING_HPA))
        return NaN;
      return altimeterSettingHpa(
        stationPressureFromSeaLevelHpa(seaLevelPressureHpa, air.temperatureC, stationElevationM),
        stationElevationM,
      );
    }
    case null:
      return NaN;
  }
}

/** Half the swing of a day's temperature: so far can the mean of 12 hours lie from the moment's. */
const MEAN_TEMPERATURE_OFF_K = 10;
const MEAN_LAYER_K = 288.15;

/**
 * How far density altitude may be off, either way, where only a sea-level pressure was reported: its reduction used
 * a mean temperature that nobody reports, here taken as up to 10 K from the moment's.
 * @param stationElevationM -500 to 6,000 m
 * @returns m, never negative; 7 m at 200 m, 56 m at 1,600 m
 * @throws RangeProblem naming stationElevationM
 * @source estimate, no source: hypsometric equation, 10 K on the layer's mean temperature
 */
export function seaLevelBandM(stationElevationM: number): number {
  requireRange('stationElevationM', stationElevationM, -500, 6000, 'm');
  return (Math.abs(stationElevationM) * MEAN_TEMPERATURE_OFF_K) / MEAN_LAYER_K;
}
