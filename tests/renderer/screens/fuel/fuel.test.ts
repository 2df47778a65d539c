import { expect, test } from 'vitest';
import { fuelTankOf, runsOfTest } from '../../../../shared-calc/fuel/records.ts';
import { curvePoints } from '../../../../renderer/screens/fuel/curvePoints.ts';
import {
  nextRun,
  withAside,
  withReading,
  withRun,
  withVolume,
} from '../../../../renderer/screens/fuel/edits.ts';
import { linearSentence } from '../../../../renderer/screens/fuel/linearSentence.ts';
import { positionOf } from '../../../../shared-calc/fuel/position-of.ts';
import { readingOf } from '../../../../renderer/screens/fuel/position.ts';
import { readingKind } from '../../../../renderer/screens/fuel/readingKind.ts';
import { rowsOf } from '../../../../renderer/screens/fuel/rowsOf.ts';
import { fuelAtReading } from '../../../../shared-calc/fuel/readout.ts';
import { exampleFillTest } from '../../../main/example-fill-test.ts';
import { fitGaugeCurve } from '../../../shared-calc/fuel/older-curve.ts';

// The example's curve, by hand: five litres a pour, so 1/8 is 10 L, 3/8 15 L, 1/2 20 L, 5/8 25 L, 7/8 30 L; at 5 L
// the needle still rests on the empty stop, at 35 L on the full one. The tank holds 45 L, 1 L of it unusable.
const tank = { capacityL: 45, unusableL: 1 };
const eighths = { kind: 'fractions', denominator: 8 } as const;
const units = { volume: 'L' } as const;

function curveOf(test: ReturnType<typeof exampleFillTest>) {
  const fit = fitGaugeCurve(
    runsOfTest(test).map(({ run }) => run),
    fuelTankOf(tank),
    1 / 8,
  );
  if (fit.kind !== 'curve') throw new Error('the example has five readings');
  return fit.curve;
}

test('a volume past the last row makes a row, and the reading completes it', () => {
  const before = exampleFillTest();
  const after = withRun(before, 'may-test-filling', (run) =>
    withReading(withVolume(run, 8, 2.5, { id: 'new', atEpochS: 7 }), 8, { at: 'fullStop' }),
  );
  expect(after.runs[0]?.pours.at(-1)).toEqual({
    id: 'new',
    atEpochS: 7,
    written: null,
    volumeL: 2.5,
    reading: { at: 'fullStop' },
    asideReason: null,
  });
  expect(before.runs[0]?.pours).toHaveLength(8);
});

test('an emptied volume takes its row out, and a row set aside keeps its figures', () => {
  const [run] = exampleFillTest().runs;
  if (run === undefined) throw new Error('the example has a run');
  expect(withVolume(run, 2, null, { id: 'x', atEpochS: 0 }).pours.map(({ id }) => id)).not.toContain(
    'may-test-pour-3',
  );
  expect(withAside(run, 1, 'misread').pours[1]).toMatchObject({ volumeL: 5, asideReason: 'misread' });
});

test('draining goes on from what the filling left, and never from more than the tank holds', () => {
  expect(nextRun(exampleFillTest(), 'draining', tank, 'r').start).toEqual({ from: 'known', usableL: 40 });
  const small = { capacityL: 31, unusableL: 1 };
  expect(nextRun(exampleFillTest(), 'draining', small, 'r').start).toEqual({ from: 'known', usableL: 30 });
  expect(nextRun(exampleFillTest(), 'filling', tank, 'r').start).toEqual({ from: 'engineFeed' });
});

test('each row has its running sum, its distance from the curve, and what is odd about it', () => {
  const fillTest = exampleFillTest();
  const second = fillTest.runs[0]?.pours[1];
  if (second !== undefined) second.reading = { at: 'scale', positionRatio: 7 / 8 };
  const rows = rowsOf(fillTest, tank, curveOf(exampleFillTest()), units);
  expect(rows.get('may-test-pour-4')).toEqual({
    usableL: 20,
    residualL: 0,
    sentences: [],
    isBackwards: false,
  });
  // 10 L at 7/8, where the curve has 30 L; then the needle fell to 3/8 though fuel went in.
  expect(rows.get('may-test-pour-2')?.residualL).toBe(-20);
  expect(rows.get('may-test-pour-2')?.sentences).toEqual([
    '20.0\u00a0L less than the curve; kept. Repeat it.',
  ]);
  expect(rows.get('may-test-pour-3')?.sentences[0]).toContain('fell by 50\u00a0% of the scale');
});

test('a curve is drawn between the readings that moved and nowhere else', () => {
  const { best, planning, band } = curvePoints(curveOf(exampleFillTest()), 'needleOnMark');
  for (const line of [best, planning]) {
    expect(line[0]).toEqual([0.125, 10]);
    expect(line.at(-1)).toEqual([0.875, 30]);
  }
  for (const { low, high } of band) expect(low).toBeLessThanOrEqual(high);
});

test('the planning line of a reading to the nearest division lies below the best estimate throughout', () => {
  const { best, planning } = curvePoints(curveOf(exampleFillTest()), 'nearestDivision');
  planning.forEach(([x, y], index) => {
    expect(best[index]?.[0]).toBe(x);
    expect(y).toBeLessThanOrEqual((best[index]?.[1] ?? 0) + 1e-9);
  });
});

test('the linear gauge is named with what it promises too much', () => {
  const curve = curveOf(exampleFillTest());
  const reading = { at: 'scale', positionRatio: 0.75 } as const;
  // 3/4 of 44 L is 33 L; the curve's cubic between 25 and 30 L answers less.
  const readout = fuelAtReading(curve, reading, 'needleOnMark');
  expect(readout.planningL).toBeGreaterThan(25);
  expect(readout.planningL).toBeLessThan(30);
  expect(linearSentence(curve, reading, readout, units)).toContain('would promise 33.0\u00a0L');
  expect(linearSentence(curve, { at: 'emptyStop' }, readout, units)).toBe('');
});

test('a grip falls on divisions of the gauge, and its ends are the stops', () => {
  expect(readingOf(0.49, 1 / 8)).toEqual({ at: 'scale', positionRatio: 0.5 });
  expect(readingOf(0.03, 1 / 8)).toEqual({ at: 'emptyStop' });
  expect(readingOf(0.99, 1 / 8)).toEqual({ at: 'fullStop' });
  expect(positionOf({ at: 'fullStop' })).toBe(1);
});

test('a reading is typed as the gauge prints it; what it cannot show is refused in words', () => {
  const kind = readingKind(eighths, 1 / 8);
  expect(kind.read('5/8')).toEqual({ value: { at: 'scale', positionRatio: 0.625 } });
  expect(kind.read('e')).toEqual({ value: { at: 'emptyStop' } });
  const refused = kind.read('9/8');
  expect('refused' in refused ? refused.refused : '').toBe(
    '"9/8" lies outside the scale, which runs from 0 to 1.',
  );
  expect(kind.step?.({ at: 'scale', positionRatio: 0.875 }, 1)).toEqual({ at: 'fullStop' });
  expect(kind.show({ at: 'scale', positionRatio: 0.25 })).toBe('1/4');
});
