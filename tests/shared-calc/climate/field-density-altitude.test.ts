import { expect, test } from 'vitest';
import { densityAltitudeM } from '../../../shared-calc/atmosphere/density-altitude.ts';
import {
  fieldDensityAltitudeM,
  pressureFrom,
  seaLevelBandM,
  type ReportedAir,
} from '../../../shared-calc/climate/field-density-altitude.ts';

const air = (change: Partial<ReportedAir>): ReportedAir => ({
  temperatureC: 30,
  dewPointC: 10,
  stationPressureHpa: NaN,
  altimeterSettingHpa: NaN,
  seaLevelPressureHpa: NaN,
  ...change,
});
/** The exact ISA relation between a setting and a pressure, written out once more from the formula. */
const atElevation = (settingHpa: number, elevationM: number) =>
  1013.25 * ((settingHpa / 1013.25) ** 0.190263 - (0.0065 * elevationM) / 288.15) ** (1 / 0.190263);

test('the surest pressure counts: station, then altimeter setting, then sea level', () => {
  const all = { stationPressureHpa: 840, altimeterSettingHpa: 1013, seaLevelPressureHpa: 1012 };
  expect(pressureFrom(air(all))).toBe('station');
  expect(pressureFrom(air({ ...all, stationPressureHpa: NaN }))).toBe('altimeterSetting');
  expect(pressureFrom(air({ seaLevelPressureHpa: 1012 }))).toBe('seaLevel');
  expect(pressureFrom(air({}))).toBeNull();
});

test('a setting carries over from the station to the field', () => {
  // 0.05 m: the exponent is printed with six figures.
  expect(fieldDensityAltitudeM(air({ altimeterSettingHpa: 1020 }), 1600, 1620)).toBeCloseTo(
    densityAltitudeM(atElevation(1020, 1620), 30, 10),
    1,
  );
});

test('a station pressure becomes a setting first', () => {
  const pressureHpa = atElevation(1020, 1600);
  expect(fieldDensityAltitudeM(air({ stationPressureHpa: pressureHpa }), 1600, 1700)).toBeCloseTo(
    densityAltitudeM(atElevation(1020, 1700), 30, 10),
    1,
  );
  expect(fieldDensityAltitudeM(air({ stationPressureHpa: pressureHpa }), 1600, 1600)).toBeCloseTo(
    densityAltitudeM(pressureHpa, 30, 10),
    6,
  );
});

test('a sea-level pressure is taken back with the temperature of the moment', () => {
  // P = SLP exp(-9.80665 h / (287.05287 (T + 273.15 + 0.0065 h / 2))), hypsometric equation with the layer's mean.
  const h = 201.8;
  const pressureHpa = 1017.2 * Math.exp((-9.80665 * h) / (287.05287 * (30 + 273.15 + (0.0065 * h) / 2)));
  expect(fieldDensityAltitudeM(air({ seaLevelPressureHpa: 1017.2 }), h, h)).toBeCloseTo(
    densityAltitudeM(pressureHpa, 30, 10),
    6,
  );
});

test('what lacks a value or lies outside the formulas is no figure', () => {
  const of = (change: Partial<ReportedAir>) => fieldDensityAltitudeM(air(change), 0, 0);
  expect(of({})).toBeNaN();
  expect(of({ altimeterSettingHpa: 1013, dewPointC: NaN })).toBeNaN();
  expect(of({ altimeterSettingHpa: 1013, temperatureC: NaN })).toBeNaN();
  expect(of({ altimeterSettingHpa: 1013, temperatureC: -45.1, dewPointC: -50 })).toBeNaN();
  expect(of({ altimeterSettingHpa: 849 })).toBeNaN();
});

test('a dew point above the temperature by rounding is the temperature; the driest air is dry', () => {
  const at = (dewPointC: number) =>
    fieldDensityAltitudeM(air({ altimeterSettingHpa: 1013, temperatureC: -20, dewPointC }), 0, 0);
  expect(at(-19.96)).toBe(at(-20));
  // Half a metre is what the docstring promises.
  expect(Math.abs(at(-45.01) - at(-44.99))).toBeLessThan(0.5);
});

test('the band of a sea-level pressure grows with the elevation', () => {
  // 10 K of 288.15 K over the layer: by hand.
  expect(seaLevelBandM(0)).toBe(0);
  expect(seaLevelBandM(1600)).toBeCloseTo(55.53, 2);
});
