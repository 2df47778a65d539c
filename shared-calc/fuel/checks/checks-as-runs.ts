import { InputProblem, requireRange } from '../../problem.ts';
import type { MeasuredRun } from '../fit/fill-data.ts';
import { LAG_RMS_RATIO } from './check-residuals.ts';
import type { ContainerRecord } from '../records.ts';
import type { RefillCheckRecord } from './check-record.ts';
import { refillMeasure } from './pump.ts';

/**
 * Checks as further data of a fit: each is a draining run of one drain whose start is not known, so that only the
 * difference of its two readings counts, with the refill as what was drained. Refills by one measure share its scale.
 * @param usableCapacityL of the tank
 * @param indexOf         place of a check's container among those of the fit
 * @throws RangeProblem for a capacity outside 1 to 1000 L
 * @throws InputProblem for a check with a reading at a stop: it says nothing of a difference
 */
export function checksAsRuns(
  checks: readonly RefillCheckRecord[],
  containers: readonly ContainerRecord[],
  usableCapacityL: number,
  indexOf: (check: RefillCheckRecord) => number,
): MeasuredRun[] {
  requireRange('usableCapacityL', usableCapacityL, 1, 1000, 'L');
  return checks.map((check) => {
    if (check.before.at !== 'scale' || check.after.at !== 'scale')
      throw new InputProblem('checks', `the check of ${check.checkedOn} has a reading at a stop`);
    const container = containers.find(({ id }) => id === check.containerId) ?? null;
    const { refillSdL } = refillMeasure(container, check.refillL);
    return {
      direction: 'draining',
      startUsableL: usableCapacityL / 2,
      // As good as unknown: the whole tank.
      startSdL: usableCapacityL,
      rows: [
        { volumeL: 0, container: null, reading: check.before, setAside: false },
        {
          volumeL: check.refillL,
          container: indexOf(check),
          // The first reading follows a filling, so the lag is not the draining one for both.
          pourSdL: Math.hypot(refillSdL, Math.SQRT2 * check.stateSdL, LAG_RMS_RATIO * usableCapacityL),
          reading: check.after,
          setAside: false,
        },
      ],
    };
  });
}
