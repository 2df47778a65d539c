import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  densityAltitudeFromSettingInto,
  densityAltitudeInto,
  stationPressureInto,
} from '../../../shared-calc/atmosphere/density-altitude-into.ts';
import { densityAltitudeM } from '../../../shared-calc/atmosphere/density-altitude.ts';
import { stationPressureHpa } from '../../../shared-calc/atmosphere/station-pressure.ts';

function one(pressureHpa: number, temperatureC: number, dewPointC: number): number {
  const out = new Float64Array(1);
  densityAltitudeInto(
    out,
    Float64Array.of(pressureHpa),
    Float64Array.of(temperatureC),
    Float64Array.of(dewPointC),
  );
  return out[0] ?? NaN;
}

test('in bulk every density altitude is within a centimetre of the exact function, over its whole range', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 300, max: 1100, noNaN: true }),
      fc.double({ min: -44, max: 60, noNaN: true }),
      fc.double({ min: 0, max: 0.999, noNaN: true }),
      (pressureHpa, temperatureC, part) => {
        const dewC = -45 + (temperatureC + 45) * part;
        expect(
          Math.abs(one(pressureHpa, temperatureC, dewC) - densityAltitudeM(pressureHpa, temperatureC, dewC)),
        ).toBeLessThan(0.01);
      },
    ),
    { seed: 61, numRuns: 3000 },
  );
});

test('where airfields are it is within 2 mm', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 650, max: 1050, noNaN: true }),
      fc.double({ min: -30, max: 45, noNaN: true }),
      fc.double({ min: 0, max: 0.999, noNaN: true }),
      (pressureHpa, temperatureC, part) => {
        const dewC = Math.min(30, -45 + (temperatureC + 45) * part);
        expect(
          Math.abs(one(pressureHpa, temperatureC, dewC) - densityAltitudeM(pressureHpa, temperatureC, dewC)),
        ).toBeLessThan(0.002);
      },
    ),
    { seed: 62, numRuns: 3000 },
  );
});

test('from settings it is the same as from the station pressures that they give', () => {
  const settings = Float64Array.from({ length: 400 }, (_, i) => 960 + i / 4);
  const temperatures = settings.map((_, i) => -20 + (i % 60));
  const dewPoints = temperatures.map((t) => t - 7);
  const out = new Float64Array(settings.length);
  densityAltitudeFromSettingInto(out, settings, temperatures, dewPoints, 1655);
  settings.forEach((setting, i) => {
    const exact = densityAltitudeM(
      stationPressureHpa(setting, 1655),
      temperatures[i] ?? 0,
      dewPoints[i] ?? 0,
    );
    expect(Math.abs((out[i] ?? NaN) - exact)).toBeLessThan(0.003);
  });
});

test('bulk station pressures are within 0.0001 hPa of the exact relation', () => {
  const settings = Float64Array.from({ length: 2501 }, (_, i) => 850 + i / 10);
  for (const elevationM of [-400, 0, 1655, 5000]) {
    const out = new Float64Array(settings.length);
    stationPressureInto(out, settings, elevationM);
    settings.forEach((setting, i) => {
      expect(Math.abs((out[i] ?? NaN) - stationPressureHpa(setting, elevationM))).toBeLessThan(1e-4);
    });
  }
});

test('the ends of every range still give a figure', () => {
  for (const [pressureHpa, temperatureC, dewC] of [
    [300, -45, -45],
    [1100, -45, -45],
    [1100, 60, 60],
    [300, 60, -45],
  ] as const) {
    expect(
      Math.abs(one(pressureHpa, temperatureC, dewC) - densityAltitudeM(pressureHpa, temperatureC, dewC)),
    ).toBeLessThan(0.01);
  }
});

test('a missing or outlying value makes the row missing and no other', () => {
  const pressures = Float64Array.of(900, NaN, 299.9, 1100.1, 900, 900, 900, 900, 900);
  const temperatures = Float64Array.of(20, 20, 20, 20, 60.1, -45.1, NaN, 20, 20);
  const dewPoints = Float64Array.of(10, 10, 10, 10, 10, 10, 10, -45.1, NaN);
  const out = new Float64Array(9);
  densityAltitudeInto(out, pressures, temperatures, dewPoints);
  expect([...out].map((value) => Number.isNaN(value))).toEqual([
    false,
    ...Array.from({ length: 8 }, () => true),
  ]);
  stationPressureInto(out, Float64Array.of(1000, 849.9, 1100.1, NaN, 850, 1100, 1000, 1000, 1000), 0);
  expect([...out.subarray(0, 6)].map((value) => Number.isNaN(value))).toEqual([
    false,
    true,
    true,
    true,
    false,
    false,
  ]);
});

test('a dew point a little above the air temperature, as in fog, still gives a figure', () => {
  expect(one(1000, 10, 10.1)).toBeGreaterThan(one(1000, 10, 10));
});

test('single-precision columns cost no more than a few centimetres', () => {
  const out = new Float32Array(1);
  densityAltitudeFromSettingInto(
    out,
    Float32Array.of(1013.25),
    Float32Array.of(30),
    Float32Array.of(20),
    1655,
  );
  expect(
    Math.abs((out[0] ?? NaN) - densityAltitudeM(stationPressureHpa(1013.25, 1655), 30, 20)),
  ).toBeLessThan(0.03);
});
