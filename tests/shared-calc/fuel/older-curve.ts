import { isotonicMeans } from '../../../shared-calc/numeric/isotonic-means.ts';
import { requireRange } from '../../../shared-calc/problem.ts';
import { requireTank, usableAfterRows } from '../../../shared-calc/fuel/fill-run.ts';
import type { FillRun, FuelTank, PlacedReading } from '../../../shared-calc/fuel/fill-run.ts';

import { SAME_MARK_RATIO } from '../../../shared-calc/fuel/gauge-curve.ts';
import type { CurveKnot, IsotonicCurve } from '../../../shared-calc/fuel/gauge-curve.ts';

// How curves were made before there was a band. Libraries keep such curves, so reading them is tested; nothing makes new
// ones any more.

export type GaugeCurveFit =
  | { readonly kind: 'curve'; readonly curve: IsotonicCurve }
  | { readonly kind: 'tooFewReadings'; readonly distinctCount: number; readonly neededCount: number };

const DISTINCT_READINGS_NEEDED = 3;

/**
 * The curve of one tank from its fill tests: weighted isotonic means of the volumes at each distinct reading
 * (each reading weighs the same). Readings at a stop are censored and are no points of the curve; they bound
 * what may be in the tank at the stops. A reading that held while pours passed is kept as an interval when
 * the step of the scale alone does not explain it.
 * Leaves out the errors of the containers and of the start, lag between filling and draining, and sticking of
 * the needle: see `readout.ts` for what the planning figure covers.
 * @param runs runs that are alike in attitude, supply voltage and fuel
 * @param resolutionRatio smallest step read, 0.001 to 0.5 of the scale
 * @returns the curve, or how many distinct readings on the scale there are when they are too few (three)
 * @throws RangeProblem when a volume, a reading, the tank or the resolution lies outside its range
 * @source R. E. Barlow et al., Statistical Inference under Order Restrictions, 1972, ch. 1 (isotonic means)
 */
export function fitGaugeCurve(
  runs: readonly FillRun[],
  tank: FuelTank,
  resolutionRatio: number,
): GaugeCurveFit {
  requireTank(tank);
  requireRange('resolutionRatio', resolutionRatio, 0.001, 0.5, '');
  const placed = runs.flatMap((run, runIndex) => usableAfterRows(run, tank, runIndex));
  const marks = marksRead(placed);
  if (marks.length < DISTINCT_READINGS_NEEDED) {
    return {
      kind: 'tooFewReadings',
      distinctCount: marks.length,
      neededCount: DISTINCT_READINGS_NEEDED,
    };
  }
  const knots = monotoneKnots(marks, resolutionRatio);
  const lowestL = knots[0]?.lowL ?? 0;
  const atEmpty = emptyStopBounds(placed);
  return {
    kind: 'curve',
    curve: {
      method: 'isotonicMeansMonotoneCubic',
      knots,
      resolutionRatio,
      usableCapacityL: tank.usableCapacityL,
      offEmptyLeastL: Math.max(0, Math.min(atEmpty.leastL, lowestL)),
      atEmptyMostL: Math.max(0, atEmpty.mostL ?? lowestL),
      readingCount: marks.reduce((count, mark) => count + mark.volumesL.length, 0),
    },
  };
}

/** Everything read at one position; `heldL` is the widest change of volume in one run that left the needle there. */
interface Mark {
  positionRatio: number;
  volumesL: number[];
  heldL: number;
}

function marksRead(placed: readonly PlacedReading[]): Mark[] {
  const marks: Mark[] = [];
  let held: { mark: Mark; runIndex: number; fromL: number } | undefined;
  for (const { reading, setAside, usableL, runIndex, rowIndex } of placed) {
    if (setAside) continue;
    if (reading.at !== 'scale') {
      held = undefined;
      continue;
    }
    const { positionRatio } = reading;
    requireRange(
      `runs[${String(runIndex)}].rows[${String(rowIndex)}].positionRatio`,
      positionRatio,
      0,
      1,
      '',
    );
    let mark = marks.find((one) => Math.abs(one.positionRatio - positionRatio) < SAME_MARK_RATIO);
    if (mark === undefined) {
      mark = { positionRatio, volumesL: [], heldL: 0 };
      marks.push(mark);
    }
    mark.volumesL.push(usableL);
    if (held?.mark !== mark || held.runIndex !== runIndex) held = { mark, runIndex, fromL: usableL };
    mark.heldL = Math.max(mark.heldL, Math.abs(usableL - held.fromL));
  }
  return marks.sort((a, b) => a.positionRatio - b.positionRatio);
}

function monotoneKnots(marks: readonly Mark[], resolutionRatio: number): CurveKnot[] {
  // A dead zone enters the isotonic means as two volumes in order, its bottom and its top.
  const isDeadZone = marks.map((_, i) => isHeldLongerThanItsCell(marks, i, resolutionRatio));
  const volumesL: number[] = [];
  const weights: number[] = [];
  marks.forEach((mark, i) => {
    if (isDeadZone[i] === true) volumesL.push(Math.min(...mark.volumesL), Math.max(...mark.volumesL));
    else volumesL.push(meanL(mark));
    while (weights.length < volumesL.length) weights.push(mark.volumesL.length);
  });
  const means = isotonicMeans(volumesL, weights);
  let next = 0;
  return marks.map((mark, i) => {
    const lowL = means[next++] ?? 0;
    const highL = isDeadZone[i] === true ? (means[next++] ?? lowL) : lowL;
    return { positionRatio: mark.positionRatio, lowL, highL };
  });
}

/**
 * A needle read to the nearest division may seem to stand still while it crosses the cell around its mark.
 * What the cell holds is judged from the slope up to the neighbouring marks, without the held volume itself.
 */
function isHeldLongerThanItsCell(marks: readonly Mark[], i: number, resolutionRatio: number): boolean {
  const mark = marks[i];
  if (mark === undefined || mark.heldL === 0) return false;
  const below = marks[i - 1];
  const above = marks[i + 1];
  let outsideL = 0;
  let outsideRatio = 0;
  if (below !== undefined) {
    outsideL += Math.max(0, Math.min(...mark.volumesL) - meanL(below));
    outsideRatio += mark.positionRatio - below.positionRatio - resolutionRatio / 2;
  }
  if (above !== undefined) {
    outsideL += Math.max(0, meanL(above) - Math.max(...mark.volumesL));
    outsideRatio += above.positionRatio - mark.positionRatio - resolutionRatio / 2;
  }
  // Read finer than the stated step: the neighbours lie inside the cell, so nothing explains the standstill.
  if (outsideRatio <= 0) return true;
  return mark.heldL > (outsideL / outsideRatio) * resolutionRatio;
}

function meanL(mark: Mark): number {
  return mark.volumesL.reduce((sum, volumeL) => sum + volumeL, 0) / mark.volumesL.length;
}

/**
 * What the runs that saw the empty stop say about it. The needle may rest on it a little longer in one run
 * than in another, so the bounds are taken to the safe side over the runs: least the smallest, most the largest.
 */
function emptyStopBounds(placed: readonly PlacedReading[]): { leastL: number; mostL: number | undefined } {
  const usable = placed.filter((one) => !one.setAside);
  let leastL = Infinity;
  let mostL: number | undefined;
  for (const runIndex of new Set(usable.map((one) => one.runIndex))) {
    const run = usable.filter((one) => one.runIndex === runIndex);
    const restingL = run.filter((one) => one.reading.at === 'emptyStop').map((one) => one.usableL);
    if (restingL.length === 0) continue;
    const topRestingL = Math.max(...restingL);
    const movedL = run.filter((one) => one.reading.at !== 'emptyStop' && one.usableL > topRestingL);
    leastL = Math.min(leastL, topRestingL);
    const boundL = movedL.length === 0 ? topRestingL : Math.min(...movedL.map((one) => one.usableL));
    mostL = Math.max(mostL ?? 0, boundL);
  }
  return { leastL: leastL === Infinity ? 0 : leastL, mostL };
}
