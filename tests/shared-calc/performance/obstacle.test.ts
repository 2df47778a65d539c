import { expect, test } from 'vitest';
import { performanceBook } from '../../../shared-calc/performance/departure-book.ts';
import { departureFigures } from '../../../shared-calc/performance/departure-figures.ts';
import { overObstacle } from '../../../shared-calc/performance/obstacle.ts';
import { examplePerformance } from '../../main/example-performance.ts';

const book = performanceBook(examplePerformance('x'), { bestGlideMs: 28, bestGlideRatio: 9 });
const figures = departureFigures(book, {
  massKg: 600,
  pressureAltitudeM: 0,
  temperatureC: 15,
  dewPointC: null,
  headwindMs: 0,
  runway: { availableM: 1000, surface: 'paved', slopeRatio: 0 },
});
// Round figures instead of the table's, so that the hand can follow: 50 ft at 600 m with the factor, then 8 %.
const takeOff = { ...figures.takeOff, overObstacleM: 480, safety: { factorRatio: 1.25, source: 'test' } };
const climb = { ...figures.climb, gradientRatio: 0.08 };

test('from 50 ft on the gradient counts: by hand 15.24 + 500 x 0.08 = 55.24 m', () => {
  const found = overObstacle(takeOff, climb, { fromStartM: 1100, heightM: 30, clearanceM: 15.24 });
  if (found.kind !== 'height') throw new Error(found.kind);
  expect(found.heightM).toBeCloseTo(55.24, 9);
  expect(found.marginM).toBeCloseTo(10, 9);
  // 30 m more than 50 ft in 500 m.
  expect(found.neededGradientRatio).toBeCloseTo(0.06, 9);
  expect(found.worth).toBe('table');
});

test('with the very gradient that is needed nothing is left and nothing is missing', () => {
  const ahead = { fromStartM: 900, heightM: 40, clearanceM: 10 };
  const first = overObstacle(takeOff, climb, ahead);
  if (first.kind !== 'height') throw new Error(first.kind);
  const again = overObstacle(takeOff, { ...climb, gradientRatio: first.neededGradientRatio }, ahead);
  expect(again.kind === 'height' ? again.marginM : NaN).toBeCloseTo(0, 9);
});

test('nearer than where 50 ft are reached, and without a climb or a take-off, there is no height', () => {
  const ahead = { fromStartM: 600, heightM: 10, clearanceM: 0 };
  expect(overObstacle(takeOff, climb, ahead)).toEqual({ kind: 'nearerThan50Ft', fiftyFtFromStartM: 600 });
  expect(overObstacle({ ...takeOff, kind: 'hotter' }, climb, ahead)).toEqual({
    kind: 'refused',
    why: 'hotter',
  });
  expect(overObstacle(takeOff, { ...climb, gradientKind: 'noRule' }, ahead)).toEqual({
    kind: 'refused',
    why: 'noRule',
  });
  expect(overObstacle({ ...takeOff, overObstacleM: Infinity }, climb, ahead)).toEqual({
    kind: 'refused',
    why: 'noTable',
  });
});

test('an estimate or an edge behind it is said', () => {
  const ahead = { fromStartM: 900, heightM: 10, clearanceM: 0 };
  const worth = (one: typeof takeOff, other: typeof climb) => {
    const found = overObstacle(one, other, ahead);
    return found.kind === 'height' ? found.worth : found.kind;
  };
  expect(worth({ ...takeOff, kind: 'edge' }, climb)).toBe('edge');
  expect(worth({ ...takeOff, kind: 'edge' }, { ...climb, gradientKind: 'estimate' })).toBe('estimate');
});
