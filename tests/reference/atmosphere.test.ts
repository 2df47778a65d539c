import {
  dryDensityAltitudeM,
  weatherServiceDensityAltitudeM,
} from '../../shared-calc/atmosphere/density-altitude.ts';
import { goffGratchVapourPressureHpa } from '../../shared-calc/atmosphere/goff-gratch.ts';
import { geopotentialAltitudeM } from '../../shared-calc/atmosphere/geopotential.ts';
import {
  saturationVapourPressureWaterHpa,
  virtualTemperatureFromSpecificC,
} from '../../shared-calc/atmosphere/humidity.ts';
import {
  ruleOfThumbPressureHpa,
  ruleOfThumbTemperatureC,
} from '../../shared-calc/atmosphere/rules-of-thumb.ts';
import {
  isaDensityKgM3,
  isaPressureHpa,
  isaRatios,
  isaTemperatureC,
  pressureAltitudeM,
} from '../../shared-calc/atmosphere/standard-atmosphere.ts';
import {
  pressureAltitudeFromSettingM,
  stationPressureHpa,
} from '../../shared-calc/atmosphere/station-pressure.ts';
import { coldErrorByTableM } from '../../shared-calc/altimetry/temperature-error.ts';
import { convert, fromSi, toSi } from '../../shared-calc/units/convert.ts';
import type { Unit } from '../../shared-calc/units/unit-table.ts';
import { alike, inputOf, numbered, publishedChecks, unitOf, type PublishedCase } from './cases.ts';

/** A plain input in the unit kept inside. */
function kept(published: PublishedCase, name: string): number {
  return toSi(inputOf(published, name), unitOf(published, name) as Unit);
}

/** Pressure in the unit in which the case prints it. */
function asPrinted(published: PublishedCase, name: string, valueSi: number): number {
  return fromSi(valueSi, published.expected[name]?.unit as Unit);
}

function correctionFt(published: PublishedCase): number {
  const elevationM = kept(published, 'field_elevation');
  const altitudeM = pressureAltitudeFromSettingM(kept(published, 'altimeter_setting'), elevationM);
  return fromSi(altitudeM - elevationM, 'ft');
}

publishedChecks('atmosphere', {
  ...alike(numbered('ATM', 1, 10), (c) => {
    const altitudeM = kept(c, 'geopotential_altitude');
    const temperatureC = isaTemperatureC(altitudeM);
    return {
      pressure: fromSi(isaPressureHpa(altitudeM), 'inHg'),
      temperature_C: temperatureC,
      temperature_F: fromSi(temperatureC, 'degF'),
    };
  }),
  ...alike(numbered('ATM', 11, 16), (c) => {
    const { pressureRatio, densityRatio, temperatureRatio } = isaRatios(kept(c, 'geopotential_altitude'));
    return { delta: pressureRatio, sigma: densityRatio, theta: temperatureRatio };
  }),
  ...alike(numbered('ATM', 17, 20), (c) => {
    const altitudeM = geopotentialAltitudeM(kept(c, 'geometric_altitude'));
    return {
      temperature: fromSi(isaTemperatureC(altitudeM), 'K'),
      pressure: isaPressureHpa(altitudeM),
      density: isaDensityKgM3(altitudeM),
    };
  }),
  ...alike(numbered('ATM', 21, 22), (c) => {
    const altitudeM = kept(c, 'geopotential_altitude');
    return {
      pressure: asPrinted(c, 'pressure', isaPressureHpa(altitudeM)),
      temperature: fromSi(isaTemperatureC(altitudeM), 'K'),
      density: isaDensityKgM3(altitudeM),
    };
  }),
  ...alike(numbered('ATM', 23, 34), (c) => ({ correction: correctionFt(c) })),
  'ATM-035': (c) => ({
    correction: correctionFt(c),
    pressure_altitude: fromSi(
      pressureAltitudeFromSettingM(kept(c, 'altimeter_setting'), kept(c, 'field_elevation')),
      'ft',
    ),
  }),
  // The chart that was read knows no humidity.
  'ATM-036': (c) => ({
    density_altitude: fromSi(
      dryDensityAltitudeM(isaPressureHpa(kept(c, 'pressure_altitude')), kept(c, 'temperature')),
      'ft',
    ),
  }),
  'ATM-037': (c) => ({
    temperature: ruleOfThumbTemperatureC(kept(c, 'altitude')),
    pressure: fromSi(ruleOfThumbPressureHpa(kept(c, 'altitude')), 'inHg'),
  }),
  ...alike(numbered('ATM', 38, 41), (c) => ({ height: pressureAltitudeM(kept(c, 'pressure')) })),
  ...alike(numbered('ATM', 42, 44), (c) => ({
    station_pressure: stationPressureHpa(kept(c, 'altimeter_setting'), kept(c, 'station_elevation')),
  })),
  ...alike([...numbered('ATM', 45, 46), ...numbered('ATM', 48, 50)], (c) => ({
    e_s: saturationVapourPressureWaterHpa(kept(c, 'temperature')),
  })),
  // 31.67 is the figure of Goff and Gratch's formula. The short one of WMO-No. 8 (2018), with which the program plans, gives
  // 31.60, inside its own stated accuracy of 0.6 % and outside this case's 0.06 %; density altitude differs by 0.9 ft.
  'ATM-047': (c) => ({ e_s: goffGratchVapourPressureHpa(kept(c, 'temperature')) }),
  'ATM-051': (c) => ({
    virtual_temperature: fromSi(
      virtualTemperatureFromSpecificC(kept(c, 'temperature'), inputOf(c, 'specific_humidity', 'kg/kg')),
      'K',
    ),
  }),
  'ATM-052': (c) => ({
    density_altitude: fromSi(
      weatherServiceDensityAltitudeM(kept(c, 'station_pressure'), kept(c, 'temperature')),
      'ft',
    ),
  }),
  ...alike(numbered('ATM', 53, 60), (c) => ({
    correction: fromSi(
      coldErrorByTableM(kept(c, 'reported_temperature'), kept(c, 'height_above_airport')),
      'ft',
    ),
  })),
  'ATM-061': (c) => {
    const heightM = kept(c, 'fix_altitude') - kept(c, 'airport_elevation');
    return {
      height_above_airport: convert(heightM, 'm', 'ft'),
      correction: fromSi(coldErrorByTableM(kept(c, 'reported_temperature'), heightM), 'ft'),
    };
  },
});
