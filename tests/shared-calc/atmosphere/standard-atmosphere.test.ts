import fc from 'fast-check';
import { expect, test } from 'vitest';
import { geometricAltitudeM, geopotentialAltitudeM } from '../../../shared-calc/atmosphere/geopotential.ts';
import {
  isaAltitudeOfDensityM,
  isaDensityKgM3,
  isaPressureHpa,
  isaTemperatureC,
  pressureAltitudeM,
} from '../../../shared-calc/atmosphere/standard-atmosphere.ts';

// U.S. Standard Atmosphere 1976, table I, geometric altitude (from memory): temperature to 0.001 K, pressure to five
// figures, density to five. Half of the last printed figure, rounded up, is the tolerance.
test.each([
  [-1000, 294.651, 1139.3, 1.347],
  [3000, 268.659, 701.21, 0.90925],
  [4000, 262.166, 616.6, 0.81935],
  [8000, 236.215, 356.51, 0.52579],
  [10_000, 223.252, 264.99, 0.41351],
])('at %d m geometric the tables of 1976 have %d K, %d hPa and %d kg/m3', (geometricM, K, hPa, density) => {
  const altitudeM = geopotentialAltitudeM(geometricM);
  expect(Math.abs(isaTemperatureC(altitudeM) + 273.15 - K)).toBeLessThan(6e-4);
  expect(Math.abs(isaPressureHpa(altitudeM) / hPa - 1)).toBeLessThan(5e-5);
  expect(Math.abs(isaDensityKgM3(altitudeM) / density - 1)).toBeLessThan(5e-5);
});

// Geopotential altitudes of the pressure levels in ICAO Doc 7488/3 (from memory), printed to the metre.
test.each([
  [850, 1457],
  [700, 3012],
  [500, 5574],
  [300, 9164],
  [200, 11_784],
  [100, 16_180],
])('%d hPa stands at %d m in the standard atmosphere', (hPa, altitudeM) => {
  expect(Math.abs(pressureAltitudeM(hPa) - altitudeM)).toBeLessThanOrEqual(0.51);
});

test('geopotential and geometric altitude differ as the tables of 1976 say, 10,000 m being 9,984 geopotential metres', () => {
  expect(geopotentialAltitudeM(10_000)).toBeCloseTo(9984.293, 2);
  expect(geopotentialAltitudeM(20_000)).toBeCloseTo(19_937.272, 2);
});

const altitudes = fc.double({ min: -5000, max: 20_000, noNaN: true });
const near = { seed: 11, numRuns: 500 };

test('pressure, density and geometric altitude lead back to the altitude they came from', () => {
  fc.assert(
    fc.property(altitudes, (altitudeM) => {
      expect(Math.abs(pressureAltitudeM(isaPressureHpa(altitudeM)) - altitudeM)).toBeLessThan(1e-7);
      expect(Math.abs(isaAltitudeOfDensityM(isaDensityKgM3(altitudeM)) - altitudeM)).toBeLessThan(1e-7);
      expect(Math.abs(geopotentialAltitudeM(geometricAltitudeM(altitudeM)) - altitudeM)).toBeLessThan(1e-7);
    }),
    near,
  );
});

test('higher is thinner, everywhere, and nothing jumps at the tropopause', () => {
  fc.assert(
    fc.property(altitudes, fc.double({ min: 0.01, max: 1000, noNaN: true }), (low, more) => {
      const high = Math.min(low + more, 20_000);
      fc.pre(high > low);
      expect(isaPressureHpa(high)).toBeLessThan(isaPressureHpa(low));
      expect(isaDensityKgM3(high)).toBeLessThan(isaDensityKgM3(low));
    }),
    near,
  );
  expect(isaPressureHpa(11_000 + 1e-6)).toBeCloseTo(isaPressureHpa(11_000), 7);
  expect(isaDensityKgM3(11_000 + 1e-6)).toBeCloseTo(isaDensityKgM3(11_000), 9);
});
