import { ensembleL } from '../../../../shared-calc/fuel/fit/ensemble.ts';
import type { GaugeFit } from '../../../../shared-calc/fuel/fit/gauge-fit.ts';
import type { CurveDraws } from '../../../../shared-calc/fuel/checks/check-residuals.ts';

/**
 * The curves of a fit as checks take them.
 * @param containerIds of the fit's containers in their order; null for one that was not written down
 */
export function drawsOfFit(fit: GaugeFit, containerIds: readonly (string | null)[]): CurveDraws {
  const { rows, refits } = fit;
  return {
    firstRatio: rows.firstPosition,
    lastRatio: rows.lastPosition,
    resolutionRatio: rows.gauge.resolutionRatio,
    volumesAtL: (positionRatio) => ensembleL(fit, positionRatio),
    containerErrors: Object.fromEntries(
      containerIds.flatMap((id, index) => {
        const column = rows.scaleColumns[index];
        if (id === null || column === undefined) return [];
        const errors = Array.from(
          { length: refits.count },
          (_, refit) => refits.errors[refit * rows.errorCount + column] ?? 0,
        );
        return [[id, errors] as const];
      }),
    ),
  };
}
