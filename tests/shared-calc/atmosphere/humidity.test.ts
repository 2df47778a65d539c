import fc from 'fast-check';
import { expect, test } from 'vitest';
import { moistAirDensityKgM3, dryAirDensityKgM3 } from '../../../shared-calc/atmosphere/air-density.ts';
import { goffGratchVapourPressureHpa } from '../../../shared-calc/atmosphere/goff-gratch.ts';
import {
  dewPointC,
  dewPointFromHumidityC,
  enhancementFactorRatio,
  frostPointC,
  mixingRatio,
  relativeHumidityRatio,
  saturationVapourPressureIceHpa,
  saturationVapourPressureWaterHpa,
  specificHumidityRatio,
  vapourPressureHpa,
  vapourPressureOverIceHpa,
  virtualTemperatureC,
  virtualTemperatureFromSpecificC,
} from '../../../shared-calc/atmosphere/humidity.ts';

// IAPWS-95 saturation pressures of water (NIST Chemistry WebBook / Wagner and Pruss 2002, from memory), hPa.
// WMO-No. 8 states 0.6 % for its short formula over this range.
test.each([
  [0.01, 6.1166],
  [10, 12.282],
  [20, 23.393],
  [30, 42.47],
  [40, 73.849],
  [50, 123.52],
])('over water at %d degC the reference has %d hPa', (temperatureC, hPa) => {
  expect(Math.abs(saturationVapourPressureWaterHpa(temperatureC) / hPa - 1)).toBeLessThan(0.006);
});

// The formulas of WMO-No. 8 (2018) annex 4.B evaluated in decimal arithmetic, outside the program.
test('the formulas are those of WMO-No. 8', () => {
  expect(saturationVapourPressureWaterHpa(20)).toBeCloseTo(23.32596022, 7);
  expect(saturationVapourPressureWaterHpa(-20)).toBeCloseTo(1.25965126, 7);
  expect(saturationVapourPressureIceHpa(-10)).toBeCloseTo(2.59873806, 7);
});

// Smithsonian Meteorological Tables, 6th edition, table 94 (over water) and table 96 (over ice), hPa, from memory.
test.each([
  [-20, 1.254],
  [-10, 2.8627],
  [0, 6.1078],
  [10, 12.272],
  [20, 23.373],
  [30, 42.43],
  [40, 73.777],
])('the Smithsonian table has %d degC: %d hPa', (temperatureC, hPa) => {
  expect(Math.abs(goffGratchVapourPressureHpa(temperatureC) / hPa - 1)).toBeLessThan(5e-5);
});
test.each([
  [0, 6.1071],
  [-10, 2.597],
  [-20, 1.032],
  [-30, 0.3798],
  [-40, 0.1283],
])('over ice at %d degC the Smithsonian table has %d hPa', (temperatureC, hPa) => {
  expect(Math.abs(saturationVapourPressureIceHpa(temperatureC) / hPa - 1)).toBeLessThan(0.006);
});

test('the enhancement factor at 1,000 hPa is 1.0047 (WMO-No. 8 annex 4.B, by hand: 1.0016 + 0.00315 - 0.000074)', () => {
  expect(enhancementFactorRatio(1000)).toBeCloseTo(1.004676, 9);
});

/** CIPM-2007 (Picard et al., Metrologia 45, 2008, appendix A): the reference of mass metrology, with compressibility. */
function cipmDensityKgM3(pressureHpa: number, temperatureC: number, dewC: number): number {
  const p = pressureHpa * 100;
  const T = temperatureC + 273.15;
  const Td = dewC + 273.15;
  const saturationPa = Math.exp(1.2378847e-5 * Td * Td - 1.9121316e-2 * Td + 33.93711047 - 6343.1645 / Td);
  const vapourShare = ((1.00062 + 3.14e-8 * p + 5.6e-7 * dewC * dewC) * saturationPa) / p;
  const t = temperatureC;
  const Z =
    1 -
    (p / T) *
      (1.58123e-6 -
        2.9331e-8 * t +
        1.1043e-10 * t * t +
        (5.707e-6 - 2.051e-8 * t) * vapourShare +
        (1.9898e-4 - 2.376e-6 * t) * vapourShare ** 2) +
    (p / T) ** 2 * (1.83e-11 - 0.765e-8 * vapourShare ** 2);
  return ((3.48374e-3 * p) / (Z * T)) * (1 - 0.378 * vapourShare);
}

// Hot, high and humid, which tables for pilots leave thin. CIPM-2007 has 400 ppm of CO2 (0.01 % heavier) and Z (0.04 %).
test.each([
  [1013.25, 15, -20],
  [1013.25, 30, 24],
  [1000, 38, 28],
  [850, 35, 20],
  [750, 30, 15],
  [700, 25, 10],
  [1030, -20, -25],
  [900, 45, 5],
])('%d hPa, %d degC, dew point %d degC: density as by CIPM-2007 within 0.1 %%', (hPa, temperatureC, dewC) => {
  const ratio = moistAirDensityKgM3(hPa, temperatureC, dewC) / cipmDensityKgM3(hPa, temperatureC, dewC);
  expect(Math.abs(ratio - 1)).toBeLessThan(1e-3);
});

// By the definition of partial pressures: dry air and vapour each with its own gas constant (461.523 J/(kg K) for vapour).
test('moist density is that of dry air and vapour together', () => {
  const vapourHpa = vapourPressureHpa(950, 22);
  const T = 303.15;
  const parts = ((950 - vapourHpa) * 100) / (287.05287 * T) + (vapourHpa * 100) / (461.523 * T);
  expect(Math.abs(moistAirDensityKgM3(950, 30, 22) / parts - 1)).toBeLessThan(2e-6);
});

// FAA-H-8083-25C has no table for humidity. ASHRAE Handbook Fundamentals (2017) chapter 1, table 2: saturated moist air at
// 101.325 kPa holds 0.014758 kg/kg at 20 degC and 0.027329 at 30 degC (from memory).
test.each([
  [20, 0.014758],
  [30, 0.027329],
])('saturated air of %d degC at sea level holds %d kg/kg', (temperatureC, ratio) => {
  expect(Math.abs(mixingRatio(1013.25, temperatureC) / ratio - 1)).toBeLessThan(0.005);
});

test('dry air is the limit: the driest allowed dew point changes density by less than 0.01 %', () => {
  expect(moistAirDensityKgM3(1000, 20, -45) / dryAirDensityKgM3(1000, 20)).toBeGreaterThan(0.9999);
});

const pressures = fc.double({ min: 300, max: 1100, noNaN: true });
/** Tenths, as they are reported. */
const temperatures = fc.integer({ min: -440, max: 600 }).map((tenths) => tenths / 10);
const share = fc.integer({ min: 0, max: 999 }).map((part) => part / 1000);

test('dew point, frost point and humidity lead back to where they came from', () => {
  fc.assert(
    fc.property(pressures, temperatures, share, (hPa, temperatureC, part) => {
      const dewC = -45 + (temperatureC + 45) * part;
      expect(Math.abs(dewPointC(hPa, vapourPressureHpa(hPa, dewC)) - dewC)).toBeLessThan(1e-9);
      const humidity = relativeHumidityRatio(temperatureC, dewC);
      expect(Math.abs(dewPointFromHumidityC(temperatureC, humidity) - dewC)).toBeLessThan(1e-9);
      const frostC = -64.9 * part;
      expect(Math.abs(frostPointC(hPa, vapourPressureOverIceHpa(hPa, frostC)) - frostC)).toBeLessThan(1e-9);
    }),
    { seed: 21, numRuns: 500 },
  );
});

test('virtual temperature is the same by dew point and by specific humidity', () => {
  fc.assert(
    fc.property(pressures, temperatures, share, (hPa, temperatureC, part) => {
      const dewC = -45 + (temperatureC + 45) * part;
      const q = specificHumidityRatio(hPa, dewC);
      // At 300 hPa air of 60 degC would be mostly vapour: beyond 0.1 kg/kg there is no such air.
      fc.pre(q <= 0.1);
      const byDewPoint = virtualTemperatureC(hPa, temperatureC, dewC);
      expect(Math.abs(virtualTemperatureFromSpecificC(temperatureC, q) - byDewPoint)).toBeLessThan(1e-9);
      expect(byDewPoint).toBeGreaterThanOrEqual(temperatureC);
    }),
    { seed: 22, numRuns: 500 },
  );
});

test('over ice air is saturated sooner than over water', () => {
  for (let t = -45; t < -0.5; t += 0.5) {
    expect(saturationVapourPressureIceHpa(t)).toBeLessThan(saturationVapourPressureWaterHpa(t));
  }
});
