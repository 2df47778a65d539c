import { describe, expect, test } from 'vitest';
import { adviseTest } from '../../../../shared-calc/fuel/fit/advise-test.ts';
import { calibrate, fillDataOf, UNKNOWN_CONTAINER } from '../../../../shared-calc/fuel/fit/calibrate.ts';
import type { ContainerRecord } from '../../../../shared-calc/fuel/records.ts';
import { exampleFillTest } from '../../../main/example-fill-test.ts';

const tank = { capacityL: 45, unusableL: 1 };
const can: ContainerRecord = {
  id: 'can',
  name: 'Can',
  nominalL: 2.5,
  how: 'weighed',
  scaleSdRatio: 0.004,
  pourSdL: 0.02,
};

function measuredWith(container: ContainerRecord | null) {
  const measured = exampleFillTest();
  for (const run of measured.runs) run.containerId = container?.id ?? null;
  return measured;
}

describe('what the fit takes from the records', () => {
  test('two fills of a can make one row of five litres: their errors add as squares', () => {
    const data = fillDataOf([measuredWith(can)], [can], tank);
    expect(data.containers[0]?.scaleSdRatio).toBe(0.004);
    // 0.02 L a fill, twice: 0.02 x root 2.
    expect(data.runs[0]?.rows[0]?.pourSdL).toBeCloseTo(0.028284, 6);
    expect(data.capacityL).toBe(44);
  });

  test("a meter's error counts once a row", () => {
    const meter = { ...can, nominalL: null, how: 'meter' } as const;
    expect(fillDataOf([measuredWith(meter)], [meter], tank).runs[0]?.rows[0]?.pourSdL).toBe(0.02);
  });

  test('a container that was not written down is taken to be a poor one', () => {
    const data = fillDataOf([measuredWith(null)], [can], tank);
    expect(data.containers).toEqual([UNKNOWN_CONTAINER]);
    expect(data.runs[0]?.rows[0]).not.toHaveProperty('pourSdL');
  });

  test('a run from the sump begins below the first usable litre', () => {
    const sump = exampleFillTest();
    for (const run of sump.runs) run.start = { from: 'sump' };
    expect(fillDataOf([sump], [], tank).runs[0]?.startUsableL).toBe(-1);
  });

  test('tests that are not alike make no curve, and no test makes none', () => {
    const running = { ...exampleFillTest('running'), power: 'engine running' } as const;
    expect(() => fillDataOf([exampleFillTest(), running], [], tank)).toThrow(
      'differ in tank, attitude, supply',
    );
    expect(() => fillDataOf([], [], tank)).toThrow('at least one fill test');
  });
});

describe('a curve with its band', () => {
  test('rises throughout, and a reading to the nearest division never promises more than the needle on its mark', () => {
    const found = calibrate([exampleFillTest()], [], tank);
    if (found.kind !== 'curve') throw new Error('the example has five readings');
    const { knots } = found.curve;
    knots.slice(1).forEach((knot, index) => {
      const before = knots[index];
      expect(knot.positionRatio).toBeGreaterThan(before?.positionRatio ?? NaN);
      for (const name of ['lowL', 'bestL', 'highL', 'readLowL', 'readHighL'] as const)
        expect(knot[name]).toBeGreaterThanOrEqual(before?.[name] ?? NaN);
    });
    for (const knot of knots) expect(knot.readHighL - knot.readLowL).toBeGreaterThan(knot.highL - knot.lowL);
  });

  test('is not drawn through fewer than three different readings', () => {
    const few = exampleFillTest();
    for (const run of few.runs) run.pours = run.pours.slice(0, 3);
    expect(calibrate([few], [], tank)).toEqual({ kind: 'tooFewReadings', distinctCount: 2, neededCount: 3 });
  });

  test('says where one more pour helps, within the readings that moved, and never that it costs', () => {
    const found = calibrate([exampleFillTest()], [], tank);
    if (found.kind !== 'curve') throw new Error('the example has five readings');
    const advice = adviseTest(found.fit, exampleFillTest(), []);
    expect(advice?.positionRatio).toBeGreaterThan(1 / 8);
    expect(advice?.positionRatio).toBeLessThan(7 / 8);
    expect(advice?.gainL).toBeGreaterThan(0);
  });
});
