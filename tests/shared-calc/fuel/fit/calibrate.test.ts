import { describe, expect, test } from 'vitest';
import { adviseTest } from '../../../../shared-calc/fuel/fit/advise-test.ts';
import { calibrate, fillDataOf, UNKNOWN_CONTAINER } from '../../../../shared-calc/fuel/fit/calibrate.ts';
import type { ContainerRecord } from '../../../../shared-calc/fuel/records.ts';
import { bandShapeOf } from '../../../../shared-calc/fuel/curve-shape.ts';
import { exampleFillTest } from '../../../main/example-fill-test.ts';

const tank = { capacityL: 45, unusableL: 1 };
const can: ContainerRecord = {
  id: 'can',
  name: 'Can',
  nominalL: 2.5,
  how: 'weighed',
  scaleSdRatio: 0.004,
  pourSdL: 0.02,
  weighed: null,
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

describe('what a person knows better', () => {
  const at = (test: ReturnType<typeof exampleFillTest>, positionRatio: number) => {
    const found = calibrate([test], [], tank);
    if (found.kind !== 'curve') throw new Error('the example has five readings');
    return { ...bandShapeOf(found.curve)(positionRatio), count: found.curve.readingCount };
  };
  const half = { id: 'pin', positionRatio: 1 / 2, note: 'sight mark, checked by the maker' };

  test('a pinned value pulls the curve to itself as far as it is known, and is no reading', () => {
    const before = at(exampleFillTest(), 1 / 2);
    const exact = at({ ...exampleFillTest(), pins: [{ ...half, usableL: 21.5, sdL: 0.05 }] }, 1 / 2);
    const vague = at({ ...exampleFillTest(), pins: [{ ...half, usableL: 21.5, sdL: 20 }] }, 1 / 2);
    expect(Math.abs(exact.bestL - 21.5)).toBeLessThan(Math.abs(before.bestL - 21.5));
    expect(exact.highL - exact.lowL).toBeLessThan(before.highL - before.lowL);
    // Known to 20 L only, it says next to nothing: within a twentieth of the band that was there before.
    expect(Math.abs(vague.bestL - before.bestL)).toBeLessThan(0.05 * (before.highL - before.lowL));
    expect([before.count, exact.count]).toEqual([5, 5]);
  });

  test('a pinned value has an error of its own, shared with no pour', () => {
    const data = fillDataOf(
      [{ ...exampleFillTest(), pins: [{ ...half, usableL: 20, sdL: 0.3 }] }],
      [can],
      tank,
    );
    expect(data.runs.at(-1)).toEqual({
      direction: 'filling',
      startUsableL: 20,
      startSdL: 0.3,
      rows: [{ volumeL: 0, container: null, reading: { at: 'scale', positionRatio: 0.5 }, setAside: false }],
    });
  });

  test('a start that is better known than usual narrows the band, and is taken as it was typed', () => {
    const known = exampleFillTest();
    for (const run of known.runs) run.startSdL = 0.02;
    expect(fillDataOf([known], [], tank).runs[0]?.startSdL).toBe(0.02);
    expect(fillDataOf([exampleFillTest()], [], tank).runs[0]?.startSdL).toBe(0.3);
  });

  test('a stiff curve bends less than a loose one', () => {
    // How far the curve at 1/4 lies from the straight line between its ends, by the readings 10 L at 1/8, 15 L at 3/8.
    const bend = (smoothness: number | null) => {
      const curve = { ...exampleFillTest(), smoothness };
      const [first, middle, last] = [1 / 8, 3 / 8, 7 / 8].map((position) => at(curve, position).bestL);
      return Math.abs((middle ?? 0) - ((first ?? 0) + ((last ?? 0) - (first ?? 0)) / 3));
    };
    expect(bend(0.05)).toBeLessThan(bend(7));
    expect(() => calibrate([{ ...exampleFillTest(), smoothness: 11 }], [], tank)).toThrow(
      'smoothness is 11; allowed 0.01 to 10',
    );
  });

  test('tests that are alike are pooled, and the band narrows', () => {
    const again = exampleFillTest('again');
    const pooled = calibrate([exampleFillTest(), again], [], tank);
    if (pooled.kind !== 'curve') throw new Error('ten readings are enough');
    const one = at(exampleFillTest(), 1 / 2);
    const both = bandShapeOf(pooled.curve)(1 / 2);
    expect(both.highL - both.lowL).toBeLessThan(one.highL - one.lowL);
    expect(pooled.curve.readingCount).toBe(10);
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
    const advice = adviseTest(found.fit, [exampleFillTest()], []);
    expect(advice?.positionRatio).toBeGreaterThan(1 / 8);
    expect(advice?.positionRatio).toBeLessThan(7 / 8);
    expect(advice?.gainL).toBeGreaterThan(0);
  });
});
