import { requireRange } from '../../problem.ts';
import { covariance } from '../kept-refits.ts';
import { ensembleL, mean, meanSlopeL } from './ensemble.ts';
import type { GaugeFit } from './gauge-fit.ts';
import { GRID_CELLS } from './slope-curve.ts';

/** One more pour that could be made, and what it is expected to do. */
export interface PourAdvice {
  /** Where the needle would then stand. */
  readonly positionRatio: number;
  /** Usable litres expected in the tank then. */
  readonly expectedL: number;
  /** Mean of best estimate less planning figure over the marks, now and after it. */
  readonly shortfallNowL: number;
  readonly shortfallThenL: number;
}

/** Below this share of the shortfall gained by the best pour there is no point in another. */
export const WORTHWHILE_RATIO = 0.03;

/**
 * Which single further reading would narrow the planning shortfall most. Each candidate's gain follows from the
 * refits alone: how each mark's volume goes together with what would be seen there.
 * @param marks     positions on which the pilot plans, at least one, within the readings that moved
 * @param container which container the pour would come from, with its errors
 * @returns all candidates, best first; compare the best with WORTHWHILE_RATIO before advising it
 * @throws RangeProblem when a mark lies outside the readings that moved, or an error outside 0 to 0.2
 * @source G. Evensen, The ensemble Kalman filter, 2003 (variance after an observation from an ensemble)
 */
export function nextPourAdvice(
  fit: GaugeFit,
  marks: readonly number[],
  container: { index: number; scaleSdRatio: number; pourSdRatio: number; startSdL: number; pourL: number },
): PourAdvice[] {
  const { rows, refits } = fit;
  requireRange('marks.length', marks.length, 1, 1000, '');
  requireRange('container.scaleSdRatio', container.scaleSdRatio, 0, 0.2, '');
  requireRange('container.pourSdRatio', container.pourSdRatio, 0, 0.2, '');
  requireRange('container.startSdL', container.startSdL, 0, 100, 'L');
  requireRange('container.pourL', container.pourL, 0.1, 200, 'L');
  for (const mark of marks)
    requireRange('marks', mark, rows.firstPosition - 1e-9, rows.lastPosition + 1e-9, '');
  const atMarks = marks.map((mark) => ensembleL(fit, mark));
  const shortfalls = atMarks.map((values) => shortfallOf(values));
  const shortfallNowL = mean(shortfalls);
  const scaleColumn = rows.scaleColumns[container.index] ?? -1;
  const candidateCount = 24;
  const candidates = Array.from({ length: candidateCount }, (_, index) => {
    const positionRatio =
      rows.firstPosition + ((rows.lastPosition - rows.firstPosition) * (index + 0.5)) / candidateCount;
    const there = ensembleL(fit, positionRatio);
    const expectedL = mean(there);
    const seen = there.map((value, refit) => {
      const scale = scaleColumn < 0 ? 0 : (refits.errors[refit * rows.errorCount + scaleColumn] as number);
      return value - Math.abs(expectedL) * container.scaleSdRatio * scale;
    });
    const half = 0.5 / GRID_CELLS;
    const slopeL = meanSlopeL(fit, Math.max(0, positionRatio - half), Math.min(1, positionRatio + half));
    const { resolutionRatio, stickingSdRatio } = rows.gauge;
    const pours = Math.max(1, Math.abs(expectedL) / container.pourL);
    const noise =
      container.startSdL ** 2 +
      pours * (container.pourL * container.pourSdRatio) ** 2 +
      slopeL ** 2 * (resolutionRatio ** 2 / 12 + stickingSdRatio ** 2);
    const seenVariance = covariance(seen, seen) + noise;
    const then = atMarks.map((values, mark) => {
      const variance = covariance(values, values);
      const share = variance === 0 ? 0 : covariance(values, seen) ** 2 / (seenVariance * variance);
      return (shortfalls[mark] as number) * Math.sqrt(Math.max(0, 1 - share));
    });
    return { positionRatio, expectedL, shortfallNowL, shortfallThenL: mean(then) };
  });
  return candidates.sort((a, b) => a.shortfallThenL - b.shortfallThenL);
}

function shortfallOf(values: readonly number[]): number {
  const sorted = Float64Array.from(values).sort();
  return (
    (sorted[Math.floor((sorted.length - 1) * 0.5)] as number) -
    (sorted[Math.floor((sorted.length - 1) * 0.05)] as number)
  );
}
