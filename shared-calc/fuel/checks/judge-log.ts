import type { FuelCheckRecord, RefillCheckRecord } from './check-record.ts';
import { checkResiduals, type ResidualSet } from './check-residuals.ts';
import { drawsOfKept } from './draws-of-kept.ts';
import { flowFromRefills, type LearnedFlow } from './flow-from-refills.ts';
import { judgeChecks, type CheckJudgement } from './judge-checks.ts';
import { refillMeasure } from './pump.ts';
import type { KeptRefits } from '../kept-refits.ts';
import type { CalibrationRecord, ContainerRecord, FillTestRecord } from '../records.ts';

/** A day of the calendar as a count of days, for axes and differences. */
export function dayNumber(day: string): number {
  return Date.parse(`${day}T00:00:00Z`) / 86_400_000;
}

export interface JudgedLog {
  readonly set: ResidualSet;
  readonly judgement: CheckJudgement;
}

/**
 * The attitude in which a log is judged: that of the fill tests behind the curve; where they are gone, that of the
 * latest refill.
 */
export function attitudeOfLog(
  testIds: readonly string[],
  tests: readonly Pick<FillTestRecord, 'id' | 'attitude'>[],
  checks: readonly FuelCheckRecord[],
): RefillCheckRecord['attitude'] {
  const behind = tests.find(({ id }) => testIds.includes(id));
  const latest = refillsOf(checks)
    .filter(({ withdrawn }) => !withdrawn)
    .reduce<RefillCheckRecord | null>(
      (last, check) => (last === null || check.checkedOn > last.checkedOn ? check : last),
      null,
    );
  return behind?.attitude ?? latest?.attitude ?? 'ground';
}

/**
 * The log held against the adopted curve.
 * @param attitude in which its fill tests were read; a check in another is left out
 * @throws RangeProblem for a refill or a state outside its range
 */
export function judgeLog(
  checks: readonly FuelCheckRecord[],
  calibration: CalibrationRecord,
  kept: KeptRefits,
  containers: readonly ContainerRecord[],
  attitude: RefillCheckRecord['attitude'],
): JudgedLog {
  const set = checkResiduals(
    drawsOfKept(kept, calibration.curve.resolutionRatio),
    refillsOf(checks),
    containers,
    calibration.checkIds,
    attitude,
  );
  const days = set.checks.map(({ checkedOn }) => dayNumber(checkedOn));
  const first = days[0] ?? 0;
  return {
    set,
    judgement: judgeChecks(
      set.residualsL,
      set.covarianceL2,
      days.map((day) => day - first),
    ),
  };
}

export function refillsOf(checks: readonly FuelCheckRecord[]): RefillCheckRecord[] {
  return checks.filter((check) => check.kind === 'refill');
}

/** Fuel flow from the log's refills and times. A scale's error is common to them: the largest among them counts. */
export function flowOfLog(
  checks: readonly FuelCheckRecord[],
  containers: readonly ContainerRecord[],
): LearnedFlow | null {
  const timed = refillsOf(checks).flatMap((check) => {
    if (check.withdrawn || check.flightS === null) return [];
    const container = containers.find(({ id }) => id === check.containerId) ?? null;
    const measure = refillMeasure(container, check.refillL);
    return [
      {
        refillL: check.refillL,
        flightS: check.flightS,
        refillSdL: Math.hypot(Math.SQRT2 * check.stateSdL, measure.refillSdL),
        scaleSdRatio: measure.scaleSdRatio,
      },
    ];
  });
  return flowFromRefills(timed, Math.max(0, ...timed.map(({ scaleSdRatio }) => scaleSdRatio)));
}
