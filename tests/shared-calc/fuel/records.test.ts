import { expect, test } from 'vitest';
import { leastMarkFor } from '../../../shared-calc/fuel/least-mark.ts';
import { fuelTankOf, runsOfTest } from '../../../shared-calc/fuel/records.ts';
import { exampleFillTest } from '../../main/example-fill-test.ts';
import { fitGaugeCurve } from './older-curve.ts';

const tank = { capacityL: 45, unusableL: 1 };

function exampleCurve() {
  const fit = fitGaugeCurve(
    runsOfTest(exampleFillTest()).map(({ run }) => run),
    fuelTankOf(tank),
    1 / 8,
  );
  if (fit.kind !== 'curve') throw new Error('the example has five readings');
  return fit.curve;
}

test('usable capacity is what the tank holds less the unusable', () => {
  expect(fuelTankOf(tank)).toEqual({ usableCapacityL: 44, unusableL: 1 });
});

test('a pour that was not read counts with the next, and which pour a row came from is known', () => {
  const fillTest = exampleFillTest();
  const second = fillTest.runs[0]?.pours[1];
  if (second !== undefined) second.reading = null;
  const [first] = runsOfTest(fillTest);
  expect(first?.run.rows.map((row) => row.volumeL)).toEqual([5, 10, 5, 5, 5, 5, 5]);
  expect(first?.pourIds).not.toContain('may-test-pour-2');
  expect(first?.pourIds[1]).toBe('may-test-pour-3');
});

// The curve of the example, worked out by hand: 1/8 is 10 L, 3/8 15 L, 1/2 20 L, 5/8 25 L, 7/8 30 L.
test('asked backwards, the lowest mark that promises a quantity is found', () => {
  const eighths = { kind: 'fractions', denominator: 8 } as const;
  const curve = exampleCurve();
  expect(leastMarkFor(curve, eighths, 20, 'needleOnMark')?.text).toBe('1/2');
  expect(leastMarkFor(curve, eighths, 20.1, 'needleOnMark')?.text).toBe('5/8');
  // Read to the nearest eighth, the needle may stand at the lower edge of the cell: 1/2 no longer promises 20 L.
  expect(leastMarkFor(curve, eighths, 20, 'nearestDivision')?.text).toBe('5/8');
  expect(leastMarkFor(curve, eighths, 31, 'needleOnMark')).toBeNull();
});
