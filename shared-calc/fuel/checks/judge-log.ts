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

/** As what the fill tests behind a curve were read, and since when it is to hold. */
export interface LogTerms {
  readonly attitude: RefillCheckRecord['attitude'];
  /** The day of the latest of its fill tests: an earlier check says nothing of a gauge that was tested anew. */
  readonly sinceOn: string;
}

/**
 * On which terms a log is held against a curve: by its fill tests; where they are gone, by the day it was adopted and
 * the attitude of the latest refill.
 */
export function termsOfLog(
  calibration: Pick<CalibrationRecord, 'testIds' | 'adoptedOn'>,
  tests: readonly Pick<FillTestRecord, 'id' | 'attitude' | 'testedOn'>[],
  checks: readonly FuelCheckRecord[],
): LogTerms {
  const behind = tests.filter(({ id }) => calibration.testIds.includes(id));
  const latest = refillsOf(checks)
    .filter(({ withdrawn }) => !withdrawn)
    .reduce<RefillCheckRecord | null>(
      (last, check) => (last === null || check.checkedOn > last.checkedOn ? check : last),
      null,
    );
  return {
    attitude: behind[0]?.attitude ?? latest?.attitude ?? 'ground',
    sinceOn: behind.reduce(
      (last, { testedOn }) => (testedOn > last ? testedOn : last),
      behind[0]?.testedOn ?? calibration.adoptedOn,
    ),
  };
}

/**
 * The log held against the adopted curve.
 * @param terms a check in another attitude or before the fill tests is left out, and said to be
 * @throws RangeProblem for a refill or a state outside its range
 */
export function judgeLog(
  checks: readonly FuelCheckRecord[],
  calibration: CalibrationRecord,
  kept: KeptRefits,
  containers: readonly ContainerRecord[],
  { attitude, sinceOn }: LogTerms,
): JudgedLog {
  const refills = refillsOf(checks);
  const isEarlier = ({ id, checkedOn }: RefillCheckRecord) =>
    checkedOn < sinceOn && !calibration.checkIds.includes(id);
  const found = checkResiduals(
    drawsOfKept(kept, calibration.curve.resolutionRatio),
    refills.filter((check) => !isEarlier(check)),
    containers,
    calibration.checkIds,
    attitude,
  );
  const earlier = refills.filter((check) => !check.withdrawn && isEarlier(check));
  const set: ResidualSet = {
    ...found,
    left: [...found.left, ...earlier.map(({ id }) => ({ id, why: 'beforeTest' as const }))],
  };
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
