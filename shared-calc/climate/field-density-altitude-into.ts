import { densityAltitudeFromSettingInto, type Reals } from '../atmosphere/density-altitude-into.ts';
import { fieldDensityAltitudeM } from './field-density-altitude.ts';

/** Below this the tables of the fast way end; `fieldDensityAltitudeM` counts such air as dry. */
const DRIEST_DEW_POINT_C = -45;

/**
 * `fieldDensityAltitudeM` of every hour of a record, within 1 cm of it, at some 20 ns an hour.
 * @param outM        filled; as long as the others
 * @param settingHpa  the altimeter setting of each hour, as `fieldSettingHpa` gives it; NaN where there is none
 * @param temperatureC
 * @param dewPointC   at most the temperature
 * @param elevationM  of the field, -500 to 6,000 m
 * @throws InputProblem when the lengths differ; RangeProblem naming elevationM
 */
export function fieldDensityAltitudeInto(
  outM: Reals,
  settingHpa: Reals,
  temperatureC: Reals,
  dewPointC: Reals,
  elevationM: number,
): void {
  densityAltitudeFromSettingInto(outM, settingHpa, temperatureC, dewPointC, elevationM);
  for (let i = 0; i < outM.length; i++)
    if ((dewPointC[i] as number) < DRIEST_DEW_POINT_C)
      outM[i] = fieldDensityAltitudeM(
        {
          temperatureC: temperatureC[i] as number,
          dewPointC: dewPointC[i] as number,
          altimeterSettingHpa: settingHpa[i] as number,
          stationPressureHpa: NaN,
          seaLevelPressureHpa: NaN,
        },
        elevationM,
        elevationM,
      );
}
