import { quantileReordering } from '../climate/quantile.ts';
import { bandShapeOf, endKnots } from './curve-shape.ts';
import type { BandedCurve } from './gauge-curve.ts';
import { covariance, pairedRefits, refitVolumesAtL, type KeptRefits } from './kept-refits.ts';

/** A curve with the ones behind its band. */
export interface CurveWithRefits {
  readonly curve: BandedCurve;
  readonly refits: KeptRefits;
}

/** The newer curve less the older one at one reading. */
export interface CurveDifference {
  readonly positionRatio: number;
  readonly bestL: number;
  /** 5 and 95 % of the difference, the errors that both share taken out. */
  readonly lowL: number;
  readonly highL: number;
  /** More than both curves' doubt explains, all readings looked at together. */
  readonly isBeyondDoubt: boolean;
}

export interface CurveComparison {
  readonly differences: readonly CurveDifference[];
  /** At some reading the two differ by more than chance gives in one comparison of twenty. */
  readonly differ: boolean;
}

/** How often two curves of one unchanged gauge may be said to differ. */
const FALSE_ALARM_PROB = 0.05;

/**
 * Whether two calibrations of one tank differ beyond their uncertainty, and where. At each reading the difference is
 * set against its own spread; the limit is the one that the largest of these ratios passes once in twenty, so that
 * looking at many readings raises no false alarm.
 * @param positionsRatio readings to look at; those outside either curve are left out
 * @returns nothing differs and no entries where the two curves have no reading in common
 */
export function compareCurves(
  older: CurveWithRefits,
  newer: CurveWithRefits,
  positionsRatio: readonly number[],
): CurveComparison {
  const ends = [endKnots(older.curve), endKnots(newer.curve)];
  const common = positionsRatio.filter((position) =>
    ends.every(({ first, last }) => position >= first.positionRatio && position <= last.positionRatio),
  );
  const pairs = pairedRefits(newer.refits, older.refits);
  const places = common.map((positionRatio) => {
    const after = refitVolumesAtL(newer.refits, positionRatio);
    const before = refitVolumesAtL(older.refits, positionRatio);
    const drawn = pairs.map((index, at) => (after[at] ?? 0) - (before[index] ?? 0));
    const bestL =
      bandShapeOf(newer.curve)(positionRatio).bestL - bandShapeOf(older.curve)(positionRatio).bestL;
    const sdL = Math.sqrt(covariance(drawn, drawn));
    const meanL = drawn.reduce((sum, each) => sum + each, 0) / drawn.length;
    return { positionRatio, drawn, bestL, meanL, sdL };
  });
  const limit = largestByChance(places);
  const differences = places.map(({ positionRatio, drawn, bestL, meanL, sdL }): CurveDifference => {
    const values = Float64Array.from(drawn);
    return {
      positionRatio,
      bestL,
      lowL: quantileReordering(values, 0.05),
      highL: quantileReordering(values, 0.95),
      isBeyondDoubt: sdL > 0 && Math.abs(meanL) > limit * sdL,
    };
  });
  return { differences, differ: differences.some(({ isBeyondDoubt }) => isBeyondDoubt) };
}

/** The largest deviation from the mean over all readings, in standard deviations, that chance passes once in twenty. */
function largestByChance(
  places: readonly { drawn: readonly number[]; meanL: number; sdL: number }[],
): number {
  const count = places[0]?.drawn.length ?? 0;
  const largest = new Float64Array(count);
  for (const { drawn, meanL, sdL } of places)
    for (let at = 0; at < count; at++)
      largest[at] = Math.max(largest[at] ?? 0, sdL === 0 ? 0 : Math.abs((drawn[at] ?? 0) - meanL) / sdL);
  return count === 0 ? Infinity : quantileReordering(largest, 1 - FALSE_ALARM_PROB);
}
