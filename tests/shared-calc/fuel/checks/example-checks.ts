import type { CurveDraws } from '../../../../shared-calc/fuel/checks/check-residuals.ts';
import type { RefillCheckRecord } from '../../../../shared-calc/fuel/checks/check-record.ts';

/** From 3/4 to 1/4 of a gauge read to the nearest eighth, 25 L bought at a fuel station. */
export function exampleCheck(changed: Partial<RefillCheckRecord> = {}): RefillCheckRecord {
  return {
    kind: 'refill',
    id: 'september',
    tankId: 'rear',
    checkedOn: '2026-09-12',
    attitude: 'level flight',
    before: { at: 'scale', positionRatio: 0.75 },
    after: { at: 'scale', positionRatio: 0.25 },
    flightS: 5400,
    refillL: 25,
    stateSdL: 0.5,
    containerId: null,
    note: '',
    withdrawn: false,
    ...changed,
  };
}

/** Two curves of a straight gauge: 48 and 52 L for the whole sweep; a can of 1 % less and more went with them. */
export const twoStraightCurves: CurveDraws = {
  firstRatio: 0.125,
  lastRatio: 0.875,
  resolutionRatio: 0.125,
  volumesAtL: (positionRatio) => [48 * positionRatio, 52 * positionRatio],
  containerErrors: { can: [-1, 1] },
};
