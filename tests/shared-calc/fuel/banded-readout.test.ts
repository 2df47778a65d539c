import { expect, test } from 'vitest';
import { leastMarkFor } from '../../../shared-calc/fuel/least-mark.ts';
import { fuelAtReading } from '../../../shared-calc/fuel/readout.ts';
import { BANDED } from './banded-example.ts';

// All expected figures by hand from the example's three places, linear between them.
const on = (positionRatio: number) => ({ at: 'scale', positionRatio }) as const;

test('the needle on its mark plans on the 5 % figure, and the 95 % one counts for mass', () => {
  expect(fuelAtReading(BANDED, on(0.5), 'needleOnMark')).toEqual({
    place: 'onCurve',
    precision: 'needleOnMark',
    planningL: 18,
    bestL: 20,
    mostL: 22,
    standstill: null,
  });
});

test('a reading to the nearest division plans on less, with the same best estimate', () => {
  expect(fuelAtReading(BANDED, on(0.5), 'nearestDivision')).toMatchObject({
    planningL: 16,
    bestL: 20,
    mostL: 24,
  });
});

test('between two places the band is linear', () => {
  const { planningL, bestL, mostL } = fuelAtReading(BANDED, on(0.625), 'needleOnMark');
  expect(planningL).toBeCloseTo(26, 9);
  expect(bestL).toBeCloseTo(28, 9);
  expect(mostL).toBeCloseTo(30, 9);
});

test('the empty stop promises nothing, and the full stop no more than the last reading that moved', () => {
  expect(fuelAtReading(BANDED, { at: 'emptyStop' }, 'needleOnMark')).toMatchObject({
    planningL: 0,
    mostL: 12,
  });
  expect(fuelAtReading(BANDED, { at: 'fullStop' }, 'needleOnMark')).toMatchObject({
    place: 'fullStop',
    planningL: 34,
    bestL: null,
    mostL: 48,
  });
});

test('nothing is read beyond the readings that moved: nothing promised below, the last figure above', () => {
  expect(fuelAtReading(BANDED, on(0.2), 'needleOnMark')).toMatchObject({
    place: 'belowFirstMoved',
    planningL: 0,
    bestL: null,
    mostL: 12,
  });
  expect(fuelAtReading(BANDED, on(0.8), 'nearestDivision')).toMatchObject({
    place: 'aboveLastMoved',
    planningL: 32,
    bestL: null,
    mostL: 48,
  });
});

test('litres below the first usable one are none', () => {
  const knots = BANDED.knots.map((knot) => ({ ...knot, lowL: knot.lowL - 10, bestL: knot.bestL - 10 }));
  expect(fuelAtReading({ ...BANDED, knots }, on(0.25), 'needleOnMark')).toMatchObject({
    planningL: 0,
    bestL: 0,
  });
});

test('asked backwards, a quantity needs the mark whose planning figure holds it, by the kind of reading', () => {
  const scale = { kind: 'fractions', denominator: 4 } as const;
  expect(leastMarkFor(BANDED, scale, 17, 'needleOnMark')?.text).toBe('1/2');
  expect(leastMarkFor(BANDED, scale, 17, 'nearestDivision')?.text).toBe('3/4');
  expect(leastMarkFor(BANDED, scale, 35, 'needleOnMark')).toBeNull();
});
