import { expect, test } from 'vitest';
import { acrossFrom } from '../../../../renderer/screens/loading/coordinates.ts';
import { doubtOutlines } from '../../../../renderer/screens/loading/doubtDrawing.ts';
import { assessLoading } from '../../../../shared-calc/loading/assess.ts';
import { load, twoFriends, twoSeater } from '../../../shared-calc/loading/example.ts';

const certain = { ...twoSeater, empty: { ...twoSeater.empty, massSdKg: 0, armSdM: 0 } };
/** One mass in doubt: the point moves along one line, 6 kg for a standard deviation. */
const oneInDoubt = {
  ...twoFriends,
  loads: [load('left', 'Mara', 68), load('right', 'Jonas', 86, 6), load('bag', 'Bag', 15)],
};

test('there is one at take-off and one where the margin is least, when the front tank is empty', () => {
  const outlines = doubtOutlines(assessLoading(certain, oneInDoubt), acrossFrom('arm', null));
  expect(outlines).toHaveLength(2);
  // By hand: 318 + 169 + 0.72 (82.3 - 1.5) at take-off, 0.72 x 34.3 of fuel in the end of the front tank;
  // nine in ten of two normals lie within sqrt(-2 ln 0.1) = 2.1460 standard deviations.
  for (const [outline, massKg] of [
    [outlines[0], 545.176],
    [outlines[1], 511.696],
  ] as const) {
    const masses = outline?.map(([, kg]) => kg) ?? [];
    expect(Math.max(...masses)).toBeCloseTo(massKg + 2.146 * 6, 2);
    expect(Math.min(...masses)).toBeCloseTo(massKg - 2.146 * 6, 2);
  }
});

test('over moment each of its points is the same mass at the same arm', () => {
  const result = assessLoading(twoSeater, twoFriends);
  const [arms] = doubtOutlines(result, acrossFrom('arm', null));
  const [moments] = doubtOutlines(result, acrossFrom('moment', null));
  arms?.forEach(([armM, massKg], i) => {
    expect(moments?.[i]?.[0]).toBeCloseTo(armM * massKg, 9);
    expect(moments?.[i]?.[1]).toBe(massKg);
  });
  expect(arms?.length).toBeGreaterThan(20);
});

test('there is none where nothing is in doubt', () => {
  const sure = { ...twoFriends, loads: [load('left', 'Mara', 68), load('right', 'Jonas', 86)] };
  expect(doubtOutlines(assessLoading(certain, sure), acrossFrom('arm', null))).toEqual([]);
});
