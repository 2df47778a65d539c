import { dryAirDensityKgM3, moistAirDensityKgM3 } from '../../../shared-calc/atmosphere/air-density.ts';
import {
  compareDensityAltitudes,
  densityAltitudeM,
  dryDensityAltitudeM,
  ruleOfThumbDensityAltitudeM,
  weatherServiceDensityAltitudeM,
} from '../../../shared-calc/atmosphere/density-altitude.ts';
import * as bulk from '../../../shared-calc/atmosphere/density-altitude-into.ts';
import { geometricAltitudeM, geopotentialAltitudeM } from '../../../shared-calc/atmosphere/geopotential.ts';
import { goffGratchVapourPressureHpa } from '../../../shared-calc/atmosphere/goff-gratch.ts';
import * as humidity from '../../../shared-calc/atmosphere/humidity.ts';
import {
  ruleOfThumbPressureHpa,
  ruleOfThumbTemperatureC,
} from '../../../shared-calc/atmosphere/rules-of-thumb.ts';
import * as standard from '../../../shared-calc/atmosphere/standard-atmosphere.ts';
import * as station from '../../../shared-calc/atmosphere/station-pressure.ts';
import { byPosition, type RoomRefusals } from './table.ts';

const isaAltitude = { field: 'geopotentialAltitudeM', min: -5000, max: 20_000, good: 0 };
const moistPressure = { field: 'pressureHpa', min: 300, max: 1100, good: 1000 };
const waterC = { field: 'temperatureC', min: -45, max: 60, good: 20 };
const dewWater = { field: 'dewPointC', min: -45, max: 60, good: 10 };
/** No dewier than the air itself, which is 20 degC in these rows. */
const dewToAir = { field: 'dewPointC', min: -45, max: 20, good: -45 };
const airC = { field: 'temperatureC', min: -45, max: 60, good: 20 };
const setting = { field: 'altimeterSettingHpa', min: 850, max: 1100, good: 1013.25 };
const elevation = { field: 'elevationM', min: -500, max: 6000, good: 300 };

const enhancement = humidity.enhancementFactorRatio(1000);
const thumbAltitude = { field: 'altitudeM', min: 0, max: 3048, good: 0 };

const two = new Float64Array(2);

export const refusals: RoomRefusals = {
  functions: [
    byPosition(standard.isaTemperatureC, [isaAltitude]),
    byPosition(standard.isaPressureHpa, [isaAltitude]),
    byPosition(standard.isaDensityKgM3, [isaAltitude]),
    { of: standard.isaRatios, ranges: [{ ...isaAltitude, call: (v) => standard.isaRatios(v) }] },
    byPosition(standard.pressureAltitudeM, [
      {
        field: 'pressureHpa',
        min: standard.LOWEST_ISA_PRESSURE_HPA,
        max: standard.HIGHEST_ISA_PRESSURE_HPA,
        good: 1000,
      },
    ]),
    byPosition(standard.isaAltitudeOfDensityM, [
      {
        field: 'densityKgM3',
        min: standard.LOWEST_ISA_DENSITY_KG_M3,
        max: standard.HIGHEST_ISA_DENSITY_KG_M3,
        good: 1,
      },
    ]),
    byPosition(geopotentialAltitudeM, [{ field: 'geometricAltitudeM', min: -5000, max: 32_000, good: 0 }]),
    byPosition(geometricAltitudeM, [{ field: 'geopotentialAltitudeM', min: -5000, max: 31_800, good: 0 }]),
    byPosition(station.stationPressureHpa, [setting, elevation]),
    byPosition(station.altimeterSettingHpa, [
      { field: 'stationPressureHpa', min: 350, max: 1200, good: 900 },
      elevation,
    ]),
    byPosition(station.pressureAltitudeFromSettingM, [setting, elevation]),
    byPosition(station.stationPressureFromSeaLevelHpa, [
      { field: 'seaLevelPressureHpa', min: 850, max: 1100, good: 1013.25 },
      { field: 'temperatureC', min: -60, max: 60, good: 15 },
      elevation,
    ]),
    byPosition(humidity.saturationVapourPressureWaterHpa, [waterC]),
    byPosition(humidity.saturationVapourPressureIceHpa, [
      { field: 'temperatureC', min: -65, max: 0, good: -10 },
    ]),
    byPosition(goffGratchVapourPressureHpa, [{ field: 'temperatureC', min: -50, max: 100, good: 20 }]),
    byPosition(humidity.enhancementFactorRatio, [moistPressure]),
    byPosition(humidity.vapourPressureHpa, [moistPressure, dewWater]),
    byPosition(humidity.vapourPressureOverIceHpa, [
      moistPressure,
      { field: 'frostPointC', min: -65, max: 0, good: -10 },
    ]),
    byPosition(humidity.dewPointC, [
      moistPressure,
      {
        field: 'vapourPressureHpa',
        min: enhancement * humidity.saturationVapourPressureWaterHpa(-45),
        max: enhancement * humidity.saturationVapourPressureWaterHpa(60),
        good: 10,
      },
    ]),
    byPosition(humidity.frostPointC, [
      moistPressure,
      {
        field: 'vapourPressureHpa',
        min: enhancement * humidity.saturationVapourPressureIceHpa(-65),
        max: enhancement * humidity.saturationVapourPressureIceHpa(0),
        good: 1,
      },
    ]),
    byPosition(humidity.relativeHumidityRatio, [waterC, dewToAir]),
    byPosition(humidity.dewPointFromHumidityC, [
      { ...waterC },
      {
        field: 'humidityRatio',
        min: humidity.saturationVapourPressureWaterHpa(-45) / humidity.saturationVapourPressureWaterHpa(20),
        max: 1,
        good: 1,
      },
    ]),
    byPosition(humidity.mixingRatio, [moistPressure, dewWater]),
    byPosition(humidity.specificHumidityRatio, [moistPressure, dewWater]),
    byPosition(humidity.virtualTemperatureC, [moistPressure, { ...airC, good: 20 }, dewToAir]),
    byPosition(humidity.virtualTemperatureFromSpecificC, [
      { field: 'temperatureC', min: -90, max: 60, good: 20 },
      { field: 'specificHumidityRatio', min: 0, max: 0.1, good: 0.01 },
    ]),
    byPosition(dryAirDensityKgM3, [
      { field: 'pressureHpa', min: 100, max: 1100, good: 1000 },
      { field: 'temperatureC', min: -90, max: 60, good: 15 },
    ]),
    byPosition(moistAirDensityKgM3, [moistPressure, airC, dewToAir]),
    byPosition(densityAltitudeM, [moistPressure, airC, dewToAir]),
    byPosition(dryDensityAltitudeM, [
      { field: 'pressureHpa', min: 100, max: 1100, good: 1000 },
      { field: 'temperatureC', min: -90, max: 60, good: 15 },
    ]),
    byPosition(weatherServiceDensityAltitudeM, [
      moistPressure,
      { field: 'temperatureC', min: -60, max: 60, good: 15 },
    ]),
    byPosition(ruleOfThumbDensityAltitudeM, [
      moistPressure,
      { field: 'temperatureC', min: -60, max: 60, good: 15 },
    ]),
    {
      of: compareDensityAltitudes,
      ranges: [
        { ...moistPressure, call: (v) => compareDensityAltitudes(v, 20, 10) },
        { ...airC, call: (v) => compareDensityAltitudes(1000, v, -45) },
        { ...dewToAir, call: (v) => compareDensityAltitudes(1000, 20, v) },
      ],
    },
    {
      of: bulk.densityAltitudeInto,
      refused: [
        {
          when: 'columns of different lengths',
          call: () => {
            bulk.densityAltitudeInto(two, two, new Float64Array(3), two);
          },
          sentence: /temperatureC: has 3 values, the result has room for 2/,
        },
      ],
    },
    {
      of: bulk.densityAltitudeFromSettingInto,
      ranges: [
        {
          ...elevation,
          call: (v) => {
            bulk.densityAltitudeFromSettingInto(two, two, two, two, v);
          },
        },
      ],
    },
    {
      of: bulk.stationPressureInto,
      ranges: [
        {
          ...elevation,
          call: (v) => {
            bulk.stationPressureInto(two, two, v);
          },
        },
      ],
    },
    byPosition(ruleOfThumbTemperatureC, [thumbAltitude]),
    byPosition(ruleOfThumbPressureHpa, [thumbAltitude]),
  ],
  takeNoNumber: [[standard.inchesHint, 'gives a hint for a refusal, for any number']],
};
