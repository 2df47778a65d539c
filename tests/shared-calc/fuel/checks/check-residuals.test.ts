import { describe, expect, test } from 'vitest';
import { checkResiduals } from '../../../../shared-calc/fuel/checks/check-residuals.ts';
import type { RefillCheckRecord } from '../../../../shared-calc/fuel/checks/check-record.ts';
import type { ContainerRecord } from '../../../../shared-calc/fuel/records.ts';
import { exampleCheck, twoStraightCurves } from './example-checks.ts';

const can: ContainerRecord = {
  id: 'can',
  name: 'Can',
  nominalL: 5,
  how: 'marked',
  scaleSdRatio: 0.01,
  pourSdL: 0.1,
  weighed: null,
};
const residuals = (checks: RefillCheckRecord[], takenIn: string[] = []) =>
  checkResiduals(twoStraightCurves, checks, [can], takenIn, 'level flight');

describe('the residual of a check', () => {
  test('is the burn predicted by two readings less the refill, with the uncertainty of each part', () => {
    const { predictedL, residualsL, covarianceL2, curveSdL, otherSdL } = residuals([
      exampleCheck({ refillL: 23 }),
    ]);
    // By hand: half of 48 and of 52 L, so 25 L with a standard deviation of root 2 between the two.
    expect(predictedL[0]).toBeCloseTo(25, 10);
    expect(residualsL[0]).toBeCloseTo(2, 10);
    expect(curveSdL[0]).toBeCloseTo(Math.SQRT2, 10);
    // Two readings: 50 L x root of (0.125^2/12 + 0.005^2) each; the state twice 0.5 L; the pump 0.05 L and 0.4 % of
    // 23 L; the lag once, 50 L x 0.005.
    const readingL2 = 2 * 50 ** 2 * (0.125 ** 2 / 12 + 0.005 ** 2);
    const otherL2 = readingL2 + 2 * 0.5 ** 2 + 0.05 ** 2 + (0.004 * 23) ** 2 + 0.25 ** 2;
    expect(otherSdL[0]).toBeCloseTo(Math.sqrt(otherL2), 10);
    expect(covarianceL2[0]?.[0]).toBeCloseTo(2 + otherL2, 10);
  });

  test("shares the curve's error, the pump's and the lag with every other check", () => {
    const { covarianceL2 } = residuals([
      exampleCheck(),
      exampleCheck({
        id: 'later',
        checkedOn: '2026-10-01',
        after: { at: 'scale', positionRatio: 0.5 },
        refillL: 12,
      }),
    ]);
    // By hand: the curve moves 25 L by 1 either way and 12.5 L by 0.5, (1 x 0.5 x 2) / (2 - 1); pump 0.4 % of each; lag.
    expect(covarianceL2[0]?.[1]).toBeCloseTo(1 + 0.004 * 25 * 0.004 * 12 + 0.25 * 0.25, 10);
    expect(covarianceL2[1]?.[0]).toBeCloseTo(covarianceL2[0]?.[1] ?? NaN, 12);
  });

  test('by a can of the fill test itself: what makes the curve larger makes the refill larger too', () => {
    const { curveSdL, covarianceL2 } = residuals([exampleCheck({ containerId: 'can' })]);
    // By hand: 24 + 0.25 and 26 - 0.25 L: 1.5 L apart instead of 2.
    expect(curveSdL[0]).toBeCloseTo(1.5 / Math.SQRT2, 10);
    // Five fills of the can at 0.1 L each, and no scale besides.
    const readingL2 = 2 * 50 ** 2 * (0.125 ** 2 / 12 + 0.005 ** 2);
    expect(covarianceL2[0]?.[0]).toBeCloseTo(1.125 + readingL2 + 0.5 + 5 * 0.01 + 0.0625, 10);
  });

  test('is taken in the order of the days, without those that were withdrawn', () => {
    const { checks } = residuals([
      exampleCheck({ id: 'late', checkedOn: '2026-10-01' }),
      exampleCheck({ id: 'gone', withdrawn: true }),
      exampleCheck({ id: 'early', checkedOn: '2026-08-01' }),
    ]);
    expect(checks.map(({ id }) => id)).toEqual(['early', 'late']);
  });
});

test('a check that says nothing of the curve is left with its reason', () => {
  const { checks, left } = residuals(
    [
      exampleCheck({ id: 'full', before: { at: 'fullStop' } }),
      exampleCheck({ id: 'low', after: { at: 'scale', positionRatio: 0.05 } }),
      exampleCheck({ id: 'ground', attitude: 'ground' }),
      exampleCheck({ id: 'in' }),
      exampleCheck({ id: 'rose', after: { at: 'scale', positionRatio: 0.8 } }),
    ],
    ['in'],
  );
  expect(checks).toEqual([]);
  expect(Object.fromEntries(left.map(({ id, why }) => [id, why]))).toEqual({
    full: 'atStop',
    low: 'beyondCurve',
    ground: 'otherAttitude',
    in: 'takenIn',
    rose: 'notBurned',
  });
});
