import type { BandedCurve } from '../gauge-curve.ts';
import type { KeptRefits } from '../kept-refits.ts';
import type { GaugeFit } from './gauge-fit.ts';
import { GRID_CELLS, volumeOnGridL } from './slope-curve.ts';

/** A gauge that is read to a thousandth of a litre does not exist. */
const KEPT_STEPS_PER_L = 1000;

/**
 * The curves behind a band as they are kept with it, rounded to the millilitre.
 * @param containerIds of the fit's containers in their order; null for one that was not written down
 */
export function refitsToKeep(
  fit: GaugeFit,
  curve: BandedCurve,
  containerIds: readonly (string | null)[],
): KeptRefits {
  const { rows, refits } = fit;
  const positionsRatio = curve.knots.map(({ positionRatio }) => positionRatio);
  const rounded = (value: number) => Math.round(value * KEPT_STEPS_PER_L) / KEPT_STEPS_PER_L;
  const each = Array.from({ length: refits.count }, (_, refit) => refit);
  return {
    positionsRatio,
    volumesL: each.map((refit) =>
      positionsRatio.map((position) =>
        rounded(volumeOnGridL(refits.volumesL, position, refit * (GRID_CELLS + 1))),
      ),
    ),
    containerErrors: Object.fromEntries(
      containerIds.flatMap((id, index): [string, number[]][] => {
        const column = rows.scaleColumns[index];
        if (id === null || column === undefined) return [];
        return [[id, each.map((refit) => rounded(refits.errors[refit * rows.errorCount + column] ?? 0))]];
      }),
    ),
  };
}
