import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  indicatedAltitudeM,
  pressureOfReadingHpa,
  settingForElevationHpa,
  staleSettingErrorM,
} from '../../../shared-calc/altimetry/altimeter-reading.ts';
import { groundCheck } from '../../../shared-calc/altimetry/ground-check.ts';
import { isaPressureHpa } from '../../../shared-calc/atmosphere/standard-atmosphere.ts';
import { altimeterSettingHpa, stationPressureHpa } from '../../../shared-calc/atmosphere/station-pressure.ts';
import { toSi } from '../../../shared-calc/units/convert.ts';

const FT = 0.3048;

test('set to 1013.25 hPa an altimeter reads the standard altitude of the pressure', () => {
  for (const altitudeM of [-500, 0, 1500, 5000]) {
    expect(indicatedAltitudeM(isaPressureHpa(altitudeM), 1013.25)).toBeCloseTo(altitudeM, 7);
  }
});

test('set to the field an altimeter reads its elevation, whatever the weather: that is what the setting means', () => {
  for (const settingHpa of [960, 1013.25, 1040]) {
    for (const elevationM of [-100, 0, 1000, 2500]) {
      expect(indicatedAltitudeM(stationPressureHpa(settingHpa, elevationM), settingHpa)).toBeCloseTo(
        elevationM,
        7,
      );
    }
  }
});

// 14 CFR 43 appendix E table IV, pressure and altitude difference: 28.10 inHg shows -1,727 ft, 28.50 -1,340, 29.00 -863,
// 29.50 -392, 30.50 +531, 30.90 +893, 30.99 +974 (from memory); 25 ft is that table's own tolerance, 2 ft its agreement here.
test.each([
  [28.1, -1727],
  [28.5, -1340],
  [29.0, -863],
  [29.5, -392],
  [30.5, 531],
  [30.9, 893],
  [30.99, 974],
])('at 29.92 inHg a setting of %d inHg moves the reading by %d ft', (setInHg, differenceFt) => {
  const moved =
    indicatedAltitudeM(1013.25, toSi(setInHg, 'inHg')) - indicatedAltitudeM(1013.25, toSi(29.92, 'inHg'));
  expect(Math.abs(moved / FT - differenceFt)).toBeLessThan(2);
});

// Handbook practice (AIM 7-2-2): an inch of mercury is about 1,000 ft; set 30.00 and reported 29.00: 863 + 73 ft by PHAK
// figure 11-21.
test('from high to low the altimeter reads too high by some 936 ft an inch', () => {
  expect(staleSettingErrorM(toSi(30, 'inHg'), toSi(29, 'inHg')) / FT).toBeCloseTo(936, -0.5);
  expect(staleSettingErrorM(1000, 1013)).toBeLessThan(0);
});

test('a stale setting is wrong by the same at every altitude', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 330, max: 1050, noNaN: true }),
      fc.double({ min: 960, max: 1050, noNaN: true }),
      fc.double({ min: 960, max: 1050, noNaN: true }),
      (pressureHpa, setHpa, currentHpa) => {
        const difference =
          indicatedAltitudeM(pressureHpa, setHpa) - indicatedAltitudeM(pressureHpa, currentHpa);
        expect(Math.abs(difference - staleSettingErrorM(setHpa, currentHpa))).toBeLessThan(1e-8);
        expect(
          Math.abs(pressureOfReadingHpa(indicatedAltitudeM(pressureHpa, setHpa), setHpa) - pressureHpa),
        ).toBeLessThan(1e-9);
      },
    ),
    { seed: 41 },
  );
});

test('a reading on the ground gives the setting that a barometer there would', () => {
  const stationHpa = 930;
  const readingM = indicatedAltitudeM(stationHpa, 1013.25);
  expect(settingForElevationHpa(readingM, 1013.25, 650)).toBeCloseTo(altimeterSettingHpa(stationHpa, 650), 9);
});

test('75 ft on the ground is within the tolerance of the AIM and 76 ft is not', () => {
  const elevationM = 1234 * FT;
  expect(groundCheck(elevationM + 75 * FT, elevationM)).toMatchObject({ withinTolerance: true });
  expect(groundCheck(elevationM - 75 * FT, elevationM)).toMatchObject({ withinTolerance: true });
  const high = groundCheck(elevationM + 76 * FT, elevationM);
  expect(high.withinTolerance).toBe(false);
  expect(high.errorM / FT).toBeCloseTo(76, 9);
  expect(high.leftM / FT).toBeCloseTo(-1, 9);
});
