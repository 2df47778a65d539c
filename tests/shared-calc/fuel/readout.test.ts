import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { shapeOf, volumesAt } from '../../../shared-calc/fuel/curve-shape.ts';
import { fuelAtReading } from '../../../shared-calc/fuel/readout.ts';
import { curveOf, filling, LINEAR, read, WITH_DEAD_ZONE } from './fill-tests.ts';

const eighths = curveOf([WITH_DEAD_ZONE], 0.125);
const linear = curveOf([LINEAR], 0.1);

// All expected figures are worked by hand from the rows in fill-tests.ts.
describe('from a reading to usable fuel', () => {
  test('on a linear gauge the needle on a mark gives its volume, and the nearest division half a division less', () => {
    expect(fuelAtReading(linear, read(0.5), 'needleOnMark')).toMatchObject({ place: 'onCurve', bestL: 30 });
    const nearest = fuelAtReading(linear, read(0.5), 'nearestDivision');
    // A monotone cubic through points on a line is that line: 0.45 is 27 L and 0.55 is 33 L, but for rounding.
    expect(nearest.planningL).toBeCloseTo(27, 9);
    expect(nearest.mostL).toBeCloseTo(33, 9);
  });

  test('where pours passed with no movement the answer is an interval and the plan its bottom', () => {
    expect(fuelAtReading(eighths, read(0.5), 'needleOnMark')).toEqual({
      place: 'deadZone',
      precision: 'needleOnMark',
      planningL: 25,
      bestL: null,
      mostL: 40,
      standstill: { fromL: 25, toL: 40 },
    });
  });

  test('at the empty stop plan on nothing; less than the first pour that moved the needle may be there', () => {
    expect(fuelAtReading(eighths, read('E'), 'nearestDivision')).toMatchObject({
      place: 'emptyStop',
      planningL: 0,
      mostL: 10,
    });
  });

  test('at the full stop plan on the last reading that moved; up to the capacity may be there', () => {
    expect(fuelAtReading(eighths, read('F'), 'needleOnMark')).toMatchObject({
      place: 'fullStop',
      planningL: 50,
      bestL: null,
      mostL: 60,
    });
    expect(fuelAtReading(eighths, read('F'), 'nearestDivision').planningL).toBe(
      fuelAtReading(eighths, read(0.875), 'nearestDivision').planningL,
    );
  });

  test('nothing is promised below the first reading that moved', () => {
    expect(fuelAtReading(eighths, read(0.0625), 'needleOnMark')).toEqual({
      place: 'belowFirstMoved',
      precision: 'needleOnMark',
      planningL: 0,
      bestL: null,
      mostL: 10,
      standstill: null,
    });
  });

  test('read to the nearest division, the first mark that moved is worth what the stop last held', () => {
    // The lower edge of 1/8 is 1/16, below every reading that moved; at 5 L the needle still lay on the stop.
    expect(fuelAtReading(eighths, read(0.125), 'nearestDivision').planningL).toBe(5);
    expect(fuelAtReading(eighths, read(0.125), 'needleOnMark').planningL).toBe(10);
  });

  test('above the last reading that moved no more is promised than there', () => {
    expect(fuelAtReading(eighths, read(0.95), 'needleOnMark')).toMatchObject({
      place: 'aboveLastMoved',
      planningL: 50,
      bestL: null,
      mostL: 60,
    });
  });

  test('unusable fuel at a reading is no fuel to plan on', () => {
    const sump = curveOf(
      [{ direction: 'filling', start: { from: 'sump' }, rows: filling([1, 0.1], [3, 0.2], [5, 0.3]).rows }],
      0.02,
    );
    expect(fuelAtReading(sump, read(0.1), 'needleOnMark')).toMatchObject({ planningL: 0, bestL: 0 });
  });

  test('a reading outside the scale is refused with its range', () => {
    expect(() => fuelAtReading(linear, read(1.01), 'needleOnMark')).toThrow(
      'positionRatio is 1.01; allowed 0 to 1',
    );
  });
});

describe('for any reading', () => {
  const position = fc.double({ min: 0, max: 1, noNaN: true });
  const precision = fc.constantFrom('needleOnMark' as const, 'nearestDivision' as const);

  test('the plan is at most the curve, and the curve at most what may be there', () => {
    fc.assert(
      fc.property(fc.constantFrom(eighths, linear), position, precision, (curve, positionRatio, how) => {
        const { planningL, bestL, mostL } = fuelAtReading(curve, read(positionRatio), how);
        expect(planningL).toBeGreaterThanOrEqual(0);
        expect(planningL).toBeLessThanOrEqual((bestL ?? mostL) + 1e-9);
        expect(bestL ?? planningL).toBeLessThanOrEqual(mostL + 1e-9);
      }),
    );
  });

  test('a higher reading never lowers the plan', () => {
    fc.assert(
      fc.property(fc.constantFrom(eighths, linear), position, position, precision, (curve, a, b, how) => {
        const [lower, higher] = a < b ? [a, b] : [b, a];
        const plan = (at: number) => fuelAtReading(curve, read(at), how).planningL;
        expect(plan(higher)).toBeGreaterThanOrEqual(plan(lower) - 1e-9);
        expect(fuelAtReading(curve, read('F'), how).planningL).toBeGreaterThanOrEqual(plan(higher) - 1e-9);
      }),
    );
  });

  test('drawing and reading out are the same curve', () => {
    const shape = shapeOf(eighths);
    for (const positionRatio of [0.125, 0.2, 0.5, 0.51, 0.875]) {
      expect(shape(positionRatio)).toEqual(volumesAt(eighths, positionRatio));
    }
  });
});
