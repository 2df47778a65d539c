import { expect, test } from 'vitest';
import { fuelDensityKgPerL, weighedVolumeL } from '../../../shared-calc/fuel/weighed-volume.ts';

// ASTM-IP petroleum measurement tables, table 6 (worked example in W. Va. Code R. 110-14-4): gasoline of 64.8 deg API
// at 34 degF, factor 1.0170 to 60 degF. Density by API gravity: 141.5 / (131.5 + 64.8) times water's 0.999012 kg/L.
// The table is of 1952, the equations of 1980: the two editions differ by about 0.1 %, so 0.2 % is the tolerance.
test('cold gasoline is denser by the printed factor', () => {
  const at60F = (141.5 / (131.5 + 64.8)) * 0.999012;
  const at34F = fuelDensityKgPerL(at60F, (60 - 32) / 1.8, (34 - 32) / 1.8);
  expect(Math.abs(at34F / at60F - 1.017)).toBeLessThan(0.002);
});

// Table 54B of ASTM D1250-80, from memory: 740 kg/m3, 25 degC, factor 0.9877 to 15 degC, printed to four decimals.
test('warm gasoline is lighter by the printed factor', () => {
  expect(Math.abs(fuelDensityKgPerL(0.74, 15, 25) / 0.74 - 0.9877)).toBeLessThan(5e-5);
});

test('at its own temperature a density is itself, for every group of fuels, and the groups meet', () => {
  for (const density of [0.653, 0.72, 0.77, 0.7803, 0.8, 0.838])
    expect(fuelDensityKgPerL(density, 15, 15)).toBe(density);
  for (const edge of [0.7703, 0.7875]) {
    const [below, above] = [edge - 1e-9, edge + 1e-9].map((each) => fuelDensityKgPerL(each, 15, 40));
    // The published constants meet within a few parts in ten thousand.
    expect(Math.abs((below ?? 0) - (above ?? 1))).toBeLessThan(5e-4);
  }
});

test('a weighed pour without a measured temperature counts at that of the density', () => {
  expect(weighedVolumeL(3.71, { densityKgPerL: 0.742, temperatureC: 15 }, null)).toBeCloseTo(5, 12);
  expect(weighedVolumeL(3.71, { densityKgPerL: 0.742, temperatureC: 15 }, 25)).toBeGreaterThan(5.05);
});
