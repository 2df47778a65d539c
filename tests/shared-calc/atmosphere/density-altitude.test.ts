import fc from 'fast-check';
import { expect, test } from 'vitest';
import { moistAirDensityKgM3 } from '../../../shared-calc/atmosphere/air-density.ts';
import {
  compareDensityAltitudes,
  densityAltitudeM,
  dryDensityAltitudeM,
  ruleOfThumbDensityAltitudeM,
  weatherServiceDensityAltitudeM,
} from '../../../shared-calc/atmosphere/density-altitude.ts';
import { stationPressureHpa } from '../../../shared-calc/atmosphere/station-pressure.ts';
import {
  isaDensityKgM3,
  isaPressureHpa,
  isaTemperatureC,
} from '../../../shared-calc/atmosphere/standard-atmosphere.ts';

const FT = 0.3048;

test('in dry standard air density altitude is the altitude', () => {
  for (const altitudeM of [0, 1000, 3000, 6000]) {
    const dry = dryDensityAltitudeM(isaPressureHpa(altitudeM), isaTemperatureC(altitudeM));
    expect(dry).toBeCloseTo(altitudeM, 6);
  }
});

// FAA-H-8083-25C, density altitude chart (figure 11-21), read to about 100 ft (from memory): pressure altitude, temperature.
test.each([
  [0, 30, 1750],
  [5000, 30, 7800],
  [2000, 20, 3000],
])(
  'pressure altitude %d ft and %d degC: the handbook chart has %d ft',
  (pressureAltitudeFt, temperatureC, chartFt) => {
    const altitudeM = dryDensityAltitudeM(isaPressureHpa(pressureAltitudeFt * FT), temperatureC);
    expect(Math.abs(altitudeM / FT - chartFt)).toBeLessThan(150);
  },
);

test('the published formula for dry air stays within 40 ft of the exact dry figure from sea level to 8,000 ft', () => {
  for (let altitudeFt = 0; altitudeFt <= 8000; altitudeFt += 1000) {
    for (const temperatureC of [-10, 15, 40]) {
      const hPa = isaPressureHpa(altitudeFt * FT);
      const difference =
        weatherServiceDensityAltitudeM(hPa, temperatureC) - dryDensityAltitudeM(hPa, temperatureC);
      expect(Math.abs(difference / FT)).toBeLessThan(40);
    }
  }
});

test('exact is the altitude whose standard density the air has', () => {
  const altitudeM = densityAltitudeM(835, 32, 14);
  expect(isaDensityKgM3(altitudeM)).toBeCloseTo(moistAirDensityKgM3(835, 32, 14), 12);
});

// An independent calculation: Python's decimal arithmetic to 40 figures, dry air and vapour each with its own gas constant,
// the altitude by halving an interval of the standard atmosphere's density. Hot, high and humid, and one cold and low.
test.each([
  [1013.25, 0, 30, 24, 640.7902],
  [1020, 1655, 35, 10, 2683.6832],
  [1005, 2500, 32, 14, 3779.8267],
  [1008, 10, 38, 28, 1004.0875],
  [1030, 3000, 28, -5, 3949.0352],
  [995, 4000, 25, 12, 5465.1636],
  [1040, 200, -35, -40, -2055.7561],
])('setting %d hPa at %d m, %d degC, dew point %d degC: %d m', (settingHpa, elevationM, t, d, altitudeM) => {
  expect(densityAltitudeM(stationPressureHpa(settingHpa, elevationM), t, d)).toBeCloseTo(altitudeM, 3);
});

test('the shorter ways stand beside the exact one, each with its error', () => {
  const { exactM, dry, ruleOfThumb, weatherService } = compareDensityAltitudes(1000, 35, 26);
  expect(dry.altitudeM).toBe(dryDensityAltitudeM(1000, 35));
  expect(ruleOfThumb.altitudeM).toBe(ruleOfThumbDensityAltitudeM(1000, 35));
  expect(weatherService.altitudeM).toBe(weatherServiceDensityAltitudeM(1000, 35));
  for (const way of [dry, ruleOfThumb, weatherService]) {
    expect(way.errorM).toBe(way.altitudeM - exactM);
    // Leaving the humidity out promises too much: common knowledge, "high, hot and humid".
    expect(way.errorM).toBeLessThan(-90);
  }
});

const airs = {
  hPa: fc.double({ min: 600, max: 1049, noNaN: true }),
  temperatureC: fc.double({ min: -30, max: 49, noNaN: true }),
  part: fc.double({ min: 0, max: 0.99, noNaN: true }),
};

test('density altitude rises with heat, with humidity and with falling pressure', () => {
  fc.assert(
    fc.property(airs.hPa, airs.temperatureC, airs.part, (hPa, temperatureC, part) => {
      const dewC = -45 + (temperatureC + 45) * part;
      const here = densityAltitudeM(hPa, temperatureC, dewC);
      expect(densityAltitudeM(hPa, temperatureC + 0.1, dewC)).toBeGreaterThan(here);
      expect(densityAltitudeM(hPa - 0.1, temperatureC, dewC)).toBeGreaterThan(here);
      expect(densityAltitudeM(hPa, temperatureC, dewC + (temperatureC - dewC) / 2)).toBeGreaterThanOrEqual(
        here,
      );
    }),
    { seed: 31, numRuns: 1000 },
  );
});
