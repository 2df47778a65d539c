import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  altimeterSettingHpa,
  pressureAltitudeFromSettingM,
  stationPressureFromSeaLevelHpa,
  stationPressureHpa,
} from '../../../shared-calc/atmosphere/station-pressure.ts';
import { isaPressureHpa } from '../../../shared-calc/atmosphere/standard-atmosphere.ts';
import { toSi } from '../../../shared-calc/units/convert.ts';

test('at the standard setting the station has the standard pressure of its elevation', () => {
  for (const elevationM of [-400, 0, 300, 1655, 2500, 4400]) {
    expect(stationPressureHpa(1013.25, elevationM)).toBeCloseTo(isaPressureHpa(elevationM), 9);
  }
});

// The same relation with the constants as printed in the project's design (0.190263, 288.15), worked by hand on a
// calculator: q = (1030 / 1013.25)^0.190263 = 1.003120; minus 0.0065 * 2500 / 288.15 = 0.056394; 0.946726^5.255883 = 0.749987.
test('2,500 m and 1030 hPa give 759.9 hPa, not the 759.2 of the standard ratio', () => {
  expect(stationPressureHpa(1030, 2500)).toBeCloseTo(759.93, 1);
  const byRatio = 1030 * (1 - (0.0065 * 2500) / 288.15) ** 5.25588;
  // The README of the weather samples: multiplying is 0.74 hPa low there.
  expect(stationPressureHpa(1030, 2500) - byRatio).toBeCloseTo(0.74, 2);
});

// NOAA's record of Denver International, 2012 (Integrated Surface Data, station 725650-03017, elevation 1,655 m): group MA1
// prints altimeter setting and station pressure, both rounded to 0.1 hPa. Nine rows in ten of six years lie 0.05 to 0.18 hPa
// from the exact relation, the barometer standing a little off the record's elevation.
test.each([
  [1026.4, 840.7],
  [1005.8, 823.1],
  [1013.2, 829.5],
  [1004.4, 822.0],
  [1024.0, 838.7],
  [1028.4, 842.4],
  [1022.4, 837.2],
])('Denver with a setting of %d hPa reported %d hPa at the station', (settingHpa, reportedHpa) => {
  expect(Math.abs(stationPressureHpa(settingHpa, 1655) - reportedHpa)).toBeLessThan(0.25);
});

// FAA knowledge tests: 1 inHg of setting is about 1,000 ft, exactly 921 to 938 ft in this range (PHAK figure 11-21: 29.00
// adds 863 ft, 30.00 takes 73 off).
test('a setting lower by an inch of mercury puts the field some 936 ft higher', () => {
  const higher =
    pressureAltitudeFromSettingM(toSi(29, 'inHg'), 0) - pressureAltitudeFromSettingM(toSi(30, 'inHg'), 0);
  expect(higher / 0.3048).toBeCloseTo(863 + 73, -0.5);
});

test('setting and station pressure lead back to each other', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 850, max: 1100, noNaN: true }),
      fc.double({ min: -500, max: 6000, noNaN: true }),
      (settingHpa, elevationM) => {
        const back = altimeterSettingHpa(stationPressureHpa(settingHpa, elevationM), elevationM);
        expect(Math.abs(back - settingHpa)).toBeLessThan(1e-9);
      },
    ),
    { seed: 12, numRuns: 500 },
  );
});

test('a higher setting presses harder, a higher field less', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 850, max: 1090, noNaN: true }),
      fc.double({ min: -500, max: 5900, noNaN: true }),
      (settingHpa, elevationM) => {
        const here = stationPressureHpa(settingHpa, elevationM);
        expect(stationPressureHpa(settingHpa + 1, elevationM)).toBeGreaterThan(here);
        expect(stationPressureHpa(settingHpa, elevationM + 10)).toBeLessThan(here);
      },
    ),
    { seed: 13 },
  );
});

// The hypsometric equation of an isothermal column of the layer's mean temperature, worked by hand: 1000 m, 15 degC at the
// station, mean 18.25 degC (291.4 K): exp(-9.80665 * 1000 / (287.05287 * 291.4)) = 0.8893733.
test('sea-level pressure goes back to the station by the mean temperature of the layer', () => {
  expect(stationPressureFromSeaLevelHpa(1000, 15, 1000)).toBeCloseTo(889.3733, 3);
  expect(stationPressureFromSeaLevelHpa(1000, 15, 0)).toBe(1000);
});

// At the standard temperature of the station both ways describe the same column of the standard atmosphere.
test('in standard air sea-level pressure and altimeter setting give the same station pressure within 0.3 hPa', () => {
  for (const elevationM of [500, 1000, 1600]) {
    const bySlp = stationPressureFromSeaLevelHpa(1013.25, 15 - 0.0065 * elevationM, elevationM);
    expect(Math.abs(bySlp - stationPressureHpa(1013.25, elevationM))).toBeLessThan(0.3);
  }
});
