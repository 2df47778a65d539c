import fc from 'fast-check';
import { expect, test } from 'vitest';
import { fitGaugeCurve } from '../../../shared-calc/fuel/gauge-curve.ts';
import type { FillRun } from '../../../shared-calc/fuel/fill-run.ts';
import { curveOf, filling, LINEAR, TANK, WITH_DEAD_ZONE } from './fill-tests.ts';

test('a linear gauge gives the points as they were poured', () => {
  const { knots, readingCount } = curveOf([LINEAR], 0.1);
  expect(readingCount).toBe(9);
  knots.forEach((knot, i) => {
    // Sums of 6 and of 0.1: rounding only.
    expect(knot.positionRatio).toBeCloseTo(0.1 * (i + 1), 12);
    expect(knot.lowL).toBeCloseTo(6 * (i + 1), 12);
    expect(knot.highL).toBe(knot.lowL);
  });
});

test('readings at a stop are no points of the curve', () => {
  const { knots } = curveOf([WITH_DEAD_ZONE], 0.125);
  expect(knots[0]).toEqual({ positionRatio: 0.125, lowL: 10, highL: 10 });
  expect(knots.at(-1)).toEqual({ positionRatio: 0.875, lowL: 50, highL: 50 });
});

test('where pours pass with no movement the curve keeps the interval', () => {
  const { knots } = curveOf([WITH_DEAD_ZONE], 0.125);
  // By hand: 25 L when the needle first reached 1/2, 40 L when it last stood there.
  expect(knots.find((knot) => knot.positionRatio === 0.5)).toEqual({
    positionRatio: 0.5,
    lowL: 25,
    highL: 40,
  });
  expect(knots.filter((knot) => knot.highL > knot.lowL)).toHaveLength(1);
});

test('a needle read in coarse steps that moves evenly has no dead zone', () => {
  // 2 L a pour, 8 L an eighth: four pours on each mark, which is what the step of the scale explains.
  const evenly = filling(
    ...Array.from({ length: 27 }, (_, i): [number, number] => [2, Math.round((2 * (i + 1)) / 8) / 8]),
  );
  const onScale = {
    ...evenly,
    rows: evenly.rows.filter((row) => row.reading.at === 'scale' && row.reading.positionRatio > 0),
  };
  const start: FillRun = { ...onScale, start: { from: 'known', usableL: 2 } };
  const { knots } = curveOf([start], 0.125, { usableCapacityL: 64, unusableL: 0 });
  expect(knots.every((knot) => knot.highL === knot.lowL)).toBe(true);
});

test('the same mark read in two runs is a mean, and a fall is pooled with its neighbour', () => {
  const second: FillRun = {
    direction: 'draining',
    start: { from: 'known', usableL: 29 },
    rows: filling([0, 0.5], [10, 0.3], [2, 0.4]).rows,
  };
  const first = filling([20, 0.3], [4, 0.4], [6, 0.5]);
  // By hand: 0.3: (20 + 19)/2 = 19.5; 0.4: (24 + 17)/2 = 20.5; 0.5: (30 + 29)/2 = 29.5.
  expect(curveOf([first, second], 0.05).knots.map((knot) => knot.lowL)).toEqual([19.5, 20.5, 29.5]);
  const falling = filling([10, 0.2], [10, 0.4], [4, 0.3], [6, 0.5]);
  // By hand: 0.3 at 24 L and 0.4 at 20 L pool to 22 L.
  expect(curveOf([falling], 0.05).knots.map((knot) => knot.lowL)).toEqual([10, 22, 22, 30]);
});

test('fewer than three distinct readings on the scale are too few, and said with their count', () => {
  const run = filling([0, 'E'], [10, 0.25], [10, 0.5], [5, 0.5], [10, 'F']);
  expect(fitGaugeCurve([run], TANK, 0.125)).toEqual({
    kind: 'tooFewReadings',
    distinctCount: 2,
    neededCount: 3,
  });
  expect(fitGaugeCurve([], TANK, 0.125)).toEqual({
    kind: 'tooFewReadings',
    distinctCount: 0,
    neededCount: 3,
  });
});

test('a reading set aside is not used', () => {
  const run = filling([10, 0.2], [10, 0.9], [10, 0.6], [10, 0.8]);
  const aside = { ...run, rows: run.rows.map((row, i) => ({ ...row, setAside: i === 1 })) };
  expect(curveOf([aside], 0.1).knots.map((knot) => knot.positionRatio)).toEqual([0.2, 0.6, 0.8]);
});

test('the empty stop is bounded by the first pour that moved the needle and the last that did not', () => {
  const curve = curveOf([WITH_DEAD_ZONE], 0.125);
  expect(curve.atEmptyMostL).toBe(10);
  expect(curve.offEmptyLeastL).toBe(5);
  // A second run in which the needle moved earlier: both bounds go to the safe side.
  const earlier = filling([0, 'E'], [3, 0.125], [10, 0.25], [10, 0.375]);
  const both = curveOf([WITH_DEAD_ZONE, earlier], 0.125);
  expect(both.atEmptyMostL).toBe(10);
  expect(both.offEmptyLeastL).toBe(0);
});

const anyRun = fc
  .array(fc.tuple(fc.integer({ min: 1, max: 80 }), fc.integer({ min: 0, max: 16 })), {
    minLength: 3,
    maxLength: 25,
  })
  .map((pairs) =>
    filling(
      ...pairs.map(([tenthsL, mark]): [number, number | 'E' | 'F'] => [
        tenthsL / 10,
        mark === 0 ? 'E' : mark === 16 ? 'F' : mark / 16,
      ]),
    ),
  );

test('whatever was read, the curve rises in position and never falls in volume', () => {
  fc.assert(
    fc.property(fc.array(anyRun, { minLength: 1, maxLength: 3 }), (runs) => {
      const fit = fitGaugeCurve(runs, { usableCapacityL: 200, unusableL: 0 }, 1 / 16);
      if (fit.kind !== 'curve') return;
      const { knots } = fit.curve;
      knots.forEach((knot, i) => {
        const before = knots[i - 1];
        expect(knot.highL).toBeGreaterThanOrEqual(knot.lowL);
        if (before !== undefined) {
          expect(knot.positionRatio).toBeGreaterThan(before.positionRatio);
          expect(knot.lowL).toBeGreaterThanOrEqual(before.highL - 1e-9);
        }
      });
    }),
  );
});
