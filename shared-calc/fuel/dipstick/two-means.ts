import { quantileReordering } from '../../climate/quantile.ts';
import { requireRange } from '../../problem.ts';
import { refitVolumesAtL, type KeptRefits } from '../kept-refits.ts';

/** One of two independent ways of measuring the same tank, at its reading. */
export interface MeasuredBy {
  readonly refits: KeptRefits;
  /** Within the readings that moved. */
  readonly positionRatio: number;
  /** Smallest step read, a share of its scale. */
  readonly resolutionRatio: number;
}

export interface TwoMeans {
  readonly agree: boolean;
  /** Gauge less stick, litres: best estimate and the ends between which it lies 95 times in 100 if nothing is wrong. */
  readonly differenceL: number;
  readonly lowL: number;
  readonly highL: number;
}

/** Each reading's own error as parts of its division: the middles of equal slices. */
const SLICES = 8;

/**
 * Whether gauge and stick agree. Both were calibrated by the same pours, so the errors of what was poured are the same
 * in both and cancel in the difference: the n-th curve of one belongs to the n-th of the other.
 * @param gauge, stick curves kept in the same order, from fits that share their errors of pouring
 * @throws RangeProblem for a position outside the readings that moved, or curves of different number
 * @source JCGM 100:2008 (GUM), F.1.2 (errors in common)
 */
export function compareTwoMeans(gauge: MeasuredBy, stick: MeasuredBy): TwoMeans {
  const count = gauge.refits.volumesL.length;
  requireRange('stick.refits.volumesL.length', stick.refits.volumesL.length, count, count, '');
  const ofGauge = sliced(gauge);
  const ofStick = sliced(stick);
  const differences = new Float64Array(count * SLICES * SLICES);
  let at = 0;
  for (const g of ofGauge)
    for (const s of ofStick)
      for (let refit = 0; refit < count; refit++) differences[at++] = (g[refit] ?? 0) - (s[refit] ?? 0);
  const differenceL = quantileReordering(differences, 0.5);
  const lowL = quantileReordering(differences, 0.025);
  const highL = quantileReordering(differences, 0.975);
  return { agree: lowL <= 0 && highL >= 0, differenceL, lowL, highL };
}

function sliced({ refits, positionRatio, resolutionRatio }: MeasuredBy): number[][] {
  const first = refits.positionsRatio[0] ?? 0;
  const last = refits.positionsRatio.at(-1) ?? 0;
  requireRange('positionRatio', positionRatio, first - 1e-9, last + 1e-9, '');
  return Array.from({ length: SLICES }, (_, slice) => {
    const offset = ((slice + 0.5) / SLICES - 0.5) * resolutionRatio;
    // Past the ends nothing was measured; the end itself stands for what lies beyond it within the division.
    return refitVolumesAtL(refits, Math.min(last, Math.max(first, positionRatio + offset)));
  });
}
