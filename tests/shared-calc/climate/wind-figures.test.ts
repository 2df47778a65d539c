import { expect, test } from 'vitest';
import { crosswindFigureMs, headwindFigureMs } from '../../../shared-calc/climate/wind-figures.ts';
import { trueDirection } from '../../../shared-calc/performance/direction.ts';

const wind = (fromDeg: number, meanMs: number, gustMs = NaN) => ({ fromDeg, meanMs, gustMs });
const north = trueDirection(360);

// Pilot's Handbook of Aeronautical Knowledge, FAA-H-8083-25C, ch. 11, wind component chart: at 40 degrees to the runway
// 30 kt are 23 kt ahead and 19 kt across (read to a knot).
test('at an angle the wind splits as on the handbook’s chart', () => {
  const runway = trueDirection(180);
  expect(headwindFigureMs(wind(220, 30), runway)).toBeCloseTo(23, 0);
  expect(crosswindFigureMs(wind(220, 30), runway)).toBeCloseTo(19, 0);
});

test('a headwind counts with its mean, a tailwind and a crosswind with the gust', () => {
  expect(headwindFigureMs(wind(360, 5, 9), north)).toBe(5);
  expect(headwindFigureMs(wind(180, 5, 9), north)).toBe(-9);
  expect(crosswindFigureMs(wind(270, 5, 9), north)).toBe(9);
  expect(crosswindFigureMs(wind(90, 5), north)).toBe(5);
});

test('a variable wind counts fully as a tailwind and as a crosswind; calm counts as nothing', () => {
  expect(headwindFigureMs(wind(NaN, 3, 6), north)).toBe(-6);
  expect(crosswindFigureMs(wind(NaN, 3), north)).toBe(3);
  expect(headwindFigureMs(wind(0, 0), north)).toBe(0);
  expect(crosswindFigureMs(wind(0, 0), north)).toBe(0);
});

test('no wind reported is no observation', () => {
  expect(headwindFigureMs(wind(NaN, NaN), north)).toBeNaN();
  expect(crosswindFigureMs(wind(NaN, NaN), north)).toBeNaN();
});
