import { requireRange } from '../../problem.ts';
import type { GaugeFit } from './gauge-fit.ts';
import { GRID_CELLS, volumeOnGridL } from './slope-curve.ts';

/** Usable litres for one reading: 5, 50 and 95 % over what the fill tests allow. */
export interface VolumeBand {
  /** The figure to plan on: at least this much is there about nineteen times in twenty. */
  readonly lowL: number;
  readonly bestL: number;
  readonly highL: number;
}

/** The reading's own error as parts of a cell: the middles of equal slices. */
const SLICES = 8;

/**
 * Usable litres for a needle exactly on a position.
 * @param positionRatio between the first and the last reading that moved
 * @throws RangeProblem outside them: nothing was measured there
 */
export function bandOnMark(fit: GaugeFit, positionRatio: number): VolumeBand {
  requireRead(fit, positionRatio);
  return quantiles(fit, [positionRatio]);
}

/**
 * Usable litres for a reading noted to the nearest division: the needle may have been anywhere within half a
 * division, so the band is wider and the figure to plan on lower than with the needle on the mark.
 * @param positionRatio the division that was noted, between the first and the last reading that moved
 * @throws RangeProblem outside them
 */
export function bandOfReading(fit: GaugeFit, positionRatio: number): VolumeBand {
  requireRead(fit, positionRatio);
  const { resolutionRatio } = fit.rows.gauge;
  const positions = Array.from({ length: SLICES }, (_, slice) =>
    Math.min(1, Math.max(0, positionRatio + ((slice + 0.5) / SLICES - 0.5) * resolutionRatio)),
  );
  return quantiles(fit, positions);
}

/** The band at equal steps of the position, for drawing: `count` of them from the first reading to the last. */
export function bandCurve(fit: GaugeFit, count: number): (VolumeBand & { positionRatio: number })[] {
  requireRange('count', count, 2, 2000, '');
  const { firstPosition, lastPosition } = fit.rows;
  return Array.from({ length: count }, (_, index) => {
    const positionRatio = firstPosition + ((lastPosition - firstPosition) * index) / (count - 1);
    return { positionRatio, ...quantiles(fit, [positionRatio]) };
  });
}

function requireRead(fit: GaugeFit, positionRatio: number): void {
  const slack = 1e-9;
  requireRange(
    'positionRatio',
    positionRatio,
    fit.rows.firstPosition - slack,
    fit.rows.lastPosition + slack,
    '',
  );
}

function quantiles(fit: GaugeFit, positions: readonly number[]): VolumeBand {
  const { count, volumesL } = fit.refits;
  const values = new Float64Array(count * positions.length);
  let at = 0;
  for (const position of positions)
    for (let refit = 0; refit < count; refit++)
      values[at++] = volumeOnGridL(volumesL, position, refit * (GRID_CELLS + 1));
  values.sort();
  return {
    lowL: quantileSorted(values, 0.05),
    bestL: quantileSorted(values, 0.5),
    highL: quantileSorted(values, 0.95),
  };
}

/** Type R-7 quantile of sorted values. */
function quantileSorted(values: Float64Array, prob: number): number {
  const place = (values.length - 1) * prob;
  const below = Math.floor(place);
  const low = values[below] as number;
  return low + (place - below) * ((values[Math.min(below + 1, values.length - 1)] as number) - low);
}
