import { expect, test } from 'vitest';
import {
  cardRows,
  cardUnit,
  nextCheckDue,
  stopFigures,
  trueMarks,
} from '../../../../renderer/screens/fuel/cardRows.ts';
import { BANDED } from '../../../shared-calc/fuel/banded-example.ts';

// By hand from the example's three places: 10, 20 and 36 L, ±4 L as read to the nearest quarter.
const quarters = { kind: 'fractions', denominator: 4 } as const;
const cruise = { fuelFlowLPerH: 18, reserveS: 1800 };

test('each mark has what to plan on, the best estimate, and the endurance of the former less reserve', () => {
  // 6 L are less than the reserve's 9 L; 16 L last 53 min 20 s, less 30 min; 32 L last 1 h 46 min 40 s, less 30 min.
  expect(cardRows(BANDED, quarters, 'nearestDivision', cruise, 'L')).toEqual([
    { mark: '1/4', positionRatio: 0.25, plan: '6.0', best: '10.0', endurance: 'reserve only' },
    { mark: '1/2', positionRatio: 0.5, plan: '16.0', best: '20.0', endurance: '0:23' },
    { mark: '3/4', positionRatio: 0.75, plan: '32.0', best: '36.0', endurance: '1:16' },
  ]);
});

test('without a fuel flow there is no endurance, and outside the readings that moved nothing to plan on', () => {
  const [first] = cardRows(BANDED, { kind: 'fractions', denominator: 8 }, 'needleOnMark', null, 'L');
  expect(first).toEqual({ mark: '1/8', positionRatio: 0.125, plan: '0.0', best: '', endurance: '' });
});

test('the stops promise nothing and the last reading that moved, and say what may be there', () => {
  expect(stopFigures(BANDED, 'nearestDivision', 'L')).toEqual({
    emptyMost: '14.0',
    fullPlan: '32.0',
    fullMost: '48.0',
  });
});

test('a gauge in gallons has its card in gallons, and a fine scale prints at most sixteen marks', () => {
  const gallons = { kind: 'volume', unit: 'US gal', atEmpty: 0, atFull: 12, step: 1 } as const;
  expect(cardUnit(gallons, 'L')).toBe('US gal');
  expect(cardUnit(quarters, 'L')).toBe('L');
  expect(
    cardRows(BANDED, { kind: 'percent', step: 5 }, 'needleOnMark', null, 'L').map(({ mark }) => mark),
  ).toEqual([10, 20, 30, 40, 50, 60, 70, 80, 90].map((percent) => `${String(percent)}\u00a0%`));
});

test('the next check is due a year later, on a day that there is', () => {
  expect(nextCheckDue('2026-05-10')).toBe('2027-05-10');
  expect(nextCheckDue('2028-02-29')).toBe('2029-02-28');
});

test('round volumes lie where the figure to plan on reaches them', () => {
  // By hand: 6 L at 1/4, 16 L at 1/2, 32 L at 3/4, straight between them; at most five marks leave room for tens
  // only: 10 L is 4 of 10 L past 1/4, 20 L 4 of 16 L past 1/2, 30 L 14 of 16 L past it.
  const marks = trueMarks(BANDED, 'nearestDivision', 'L', 5);
  expect(marks.map(({ figure }) => figure)).toEqual(['10', '20', '30']);
  [0.25 + 0.4 * 0.25, 0.5 + 0.25 * 0.25, 0.5 + 0.875 * 0.25].forEach((position, index) => {
    // The place is found by halving to a millionth of the scale.
    expect(Math.abs((marks[index]?.positionRatio ?? NaN) - position)).toBeLessThan(2e-6);
  });
});

test('a gauge in imperial gallons has its card in imperial gallons', () => {
  const gallons = { kind: 'volume', unit: 'imp gal', atEmpty: 0, atFull: 10, step: 1 } as const;
  expect(cardUnit(gallons, 'L')).toBe('imp gal');
});
