import type { GaugeFit } from './gauge-fit.ts';
import { GRID_CELLS, volumeOnGridL } from './slope-curve.ts';

// What the many curves of a fit say together: an estimate, and how figures taken from them go together.

/** Usable litres at a position by each of the fit's curves. */
export function ensembleL({ refits }: GaugeFit, position: number): number[] {
  return Array.from({ length: refits.count }, (_, refit) =>
    volumeOnGridL(refits.volumesL, position, refit * (GRID_CELLS + 1)),
  );
}

export function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}

/** Litres for the whole sweep that the needle passes between two positions, on average over the curves. */
export function meanSlopeL(fit: GaugeFit, lowRatio: number, highRatio: number): number {
  return (mean(ensembleL(fit, highRatio)) - mean(ensembleL(fit, lowRatio))) / (highRatio - lowRatio);
}
