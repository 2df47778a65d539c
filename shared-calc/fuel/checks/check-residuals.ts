import { requireRange } from '../../problem.ts';
import { mean } from '../fit/ensemble.ts';
import type { GaugeReading } from '../fill-run.ts';
import { DEFAULT_BEHAVIOUR } from '../fit/fill-data.ts';
import { covariance } from '../kept-refits.ts';
import type { ContainerRecord } from '../records.ts';
import type { RefillCheckRecord } from './check-record.ts';
import { refillMeasure } from './pump.ts';

/** The many curves behind an adopted band, as far as checks need them. */
export interface CurveDraws {
  /** The readings that moved: a check outside them says nothing. */
  readonly firstRatio: number;
  readonly lastRatio: number;
  /** Smallest step read. */
  readonly resolutionRatio: number;
  /** Usable litres at a position by each curve. */
  volumesAtL(positionRatio: number): readonly number[];
  /** For each container of the fill test, by its id, the error of its scale with each curve, in standard deviations. */
  readonly containerErrors: Readonly<Record<string, readonly number[]>>;
}

/** Why a check says nothing about the curve. */
export type NotJudged =
  | 'atStop'
  | 'beyondCurve'
  | 'otherAttitude'
  /** The gauge was tested anew after it. */
  | 'beforeTest'
  /** It is part of the curve itself. */
  | 'takenIn'
  | 'notBurned';

export interface ResidualSet {
  /** The checks that can be held against the curve, in the order of their days. */
  readonly checks: readonly RefillCheckRecord[];
  readonly predictedL: readonly number[];
  /** Predicted by the readings less bought, litres. Below 0: more was burned than the gauge showed. */
  readonly residualsL: readonly number[];
  /** Covariance of the residuals, litres squared: what the curve, a pump and the lag bring is common to them. */
  readonly covarianceL2: readonly (readonly number[])[];
  /** Of each residual alone: the curve's part, and all the rest (readings, state, measure). */
  readonly curveSdL: readonly number[];
  readonly otherSdL: readonly number[];
  readonly left: readonly { readonly id: string; readonly why: NotJudged }[];
}

/**
 * A needle read after filling hangs low and one read in flight high: the root mean square of the expected lag. It is
 * the same gauge each time, so it is common to all checks.
 */
export const LAG_RMS_RATIO = Math.hypot(DEFAULT_BEHAVIOUR.lagRatio, DEFAULT_BEHAVIOUR.lagSdRatio);

/**
 * Burn predicted by two readings against the refill, for every check that the curve can judge, with the covariance
 * that they share: each of the fit's curves gives all of them at once, with its own error of a container that was
 * used for both the fill test and the refill.
 * @param curves     behind the curve that counts
 * @param checks     of the same tank; withdrawn ones are left out without a word
 * @param takenInIds checks that are part of the curve's own data
 * @param attitude   in which the fill test was made
 * @throws RangeProblem for a refill outside 0.1 to 1000 L or a state's spread outside 0 to 100 L
 * @source JCGM 100:2008 (GUM), F.1.2 (errors in common); FUEL-METHOD: perturb-and-refit, drift
 */
export function checkResiduals(
  curves: CurveDraws,
  checks: readonly RefillCheckRecord[],
  containers: readonly ContainerRecord[],
  takenInIds: readonly string[],
  attitude: RefillCheckRecord['attitude'],
): ResidualSet {
  const left: { id: string; why: NotJudged }[] = [];
  const judged: { check: RefillCheckRecord; beforeRatio: number; afterRatio: number }[] = [];
  const sorted = checks
    .filter(({ withdrawn }) => !withdrawn)
    .toSorted((a, b) => a.checkedOn.localeCompare(b.checkedOn));
  for (const check of sorted) {
    requireRange('refillL', check.refillL, 0.1, 1000, 'L');
    requireRange('stateSdL', check.stateSdL, 0, 100, 'L');
    const beforeRatio = positionOnScale(check.before);
    const afterRatio = positionOnScale(check.after);
    if (takenInIds.includes(check.id)) left.push({ id: check.id, why: 'takenIn' });
    else if (check.attitude !== attitude) left.push({ id: check.id, why: 'otherAttitude' });
    else if (beforeRatio === null || afterRatio === null) left.push({ id: check.id, why: 'atStop' });
    else if (!isCovered(curves, beforeRatio) || !isCovered(curves, afterRatio))
      left.push({ id: check.id, why: 'beyondCurve' });
    else if (afterRatio >= beforeRatio) left.push({ id: check.id, why: 'notBurned' });
    else judged.push({ check, beforeRatio, afterRatio });
  }

  const parts = judged.map(({ check, beforeRatio, afterRatio }) => {
    const container = containers.find(({ id }) => id === check.containerId) ?? null;
    const measure = refillMeasure(container, check.refillL);
    const shared = check.containerId === null ? undefined : curves.containerErrors[check.containerId];
    const afterL = curves.volumesAtL(afterRatio);
    const burned = curves.volumesAtL(beforeRatio).map((beforeL, draw) => beforeL - (afterL[draw] ?? 0));
    const predictedL = mean(burned);
    // A can of the fill test: where a curve made it larger, the same can's refill was larger too.
    const apart = burned.map(
      (burnedL, draw) => burnedL - check.refillL * measure.scaleSdRatio * (shared?.[draw] ?? 0),
    );
    const slopeBeforeL = slopeAtL(curves, beforeRatio);
    const slopeAfterL = slopeAtL(curves, afterRatio);
    const readSd = Math.hypot(curves.resolutionRatio / Math.sqrt(12), DEFAULT_BEHAVIOUR.stickingSdRatio);
    return {
      check,
      predictedL,
      residualL: mean(apart) - check.refillL,
      apart,
      // Only a scale that is not the fill test's is still to be added, in common with others of the same.
      scaleL: shared !== undefined ? 0 : check.refillL * measure.scaleSdRatio,
      lagL: slopeBeforeL * LAG_RMS_RATIO,
      ownVarianceL2:
        (slopeBeforeL * readSd) ** 2 +
        (slopeAfterL * readSd) ** 2 +
        // The state is met twice: before the flight and after the refill.
        2 * check.stateSdL ** 2 +
        measure.refillSdL ** 2,
    };
  });
  const covarianceL2 = parts.map((a, i) =>
    parts.map((b, j) => {
      const common = covariance(a.apart, b.apart) + a.lagL * b.lagL;
      const pump = a.check.containerId === b.check.containerId ? a.scaleL * b.scaleL : 0;
      return common + pump + (i === j ? a.ownVarianceL2 : 0);
    }),
  );
  return {
    checks: parts.map(({ check }) => check),
    predictedL: parts.map(({ predictedL }) => predictedL),
    residualsL: parts.map(({ residualL }) => residualL),
    covarianceL2,
    curveSdL: parts.map(({ apart }) => Math.sqrt(covariance(apart, apart))),
    otherSdL: parts.map(({ ownVarianceL2, lagL, scaleL }) =>
      Math.sqrt(ownVarianceL2 + lagL ** 2 + scaleL ** 2),
    ),
    left,
  };
}

function positionOnScale(reading: GaugeReading): number | null {
  return reading.at === 'scale' ? reading.positionRatio : null;
}

function isCovered({ firstRatio, lastRatio }: CurveDraws, position: number): boolean {
  return position >= firstRatio - 1e-9 && position <= lastRatio + 1e-9;
}

/** Litres for the whole sweep, over the cell that a reading cannot tell apart, as far as the curve was read. */
function slopeAtL(curves: CurveDraws, position: number): number {
  const half = Math.max(curves.resolutionRatio / 2, LEAST_HALF_CELL_RATIO);
  const low = Math.max(curves.firstRatio, position - half);
  const high = Math.min(curves.lastRatio, position + half);
  return (mean(curves.volumesAtL(high)) - mean(curves.volumesAtL(low))) / (high - low);
}

/** Curves are kept at about sixty-four places. */
const LEAST_HALF_CELL_RATIO = 1 / 128;
