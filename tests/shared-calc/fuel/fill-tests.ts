import type { FillRow, FillRun, FuelTank, GaugeReading } from '../../../shared-calc/fuel/fill-run.ts';
import { fitGaugeCurve } from './older-curve.ts';
import type { IsotonicCurve } from '../../../shared-calc/fuel/gauge-curve.ts';

// Small invented fill tests whose answers can be worked out by hand.

export const TANK: FuelTank = { usableCapacityL: 60, unusableL: 2 };

/** A reading from a position, or from the letter of a stop. */
export function read(position: number | 'E' | 'F'): GaugeReading {
  if (position === 'E') return { at: 'emptyStop' };
  return position === 'F' ? { at: 'fullStop' } : { at: 'scale', positionRatio: position };
}

export function rows(...pairs: [volumeL: number, position: number | 'E' | 'F'][]): FillRow[] {
  return pairs.map(([volumeL, position]) => ({ volumeL, reading: read(position), setAside: false }));
}

export function filling(...pairs: [volumeL: number, position: number | 'E' | 'F'][]): FillRun {
  return { direction: 'filling', start: { from: 'engineFeed' }, rows: rows(...pairs) };
}

export function curveOf(runs: FillRun[], resolutionRatio: number, tank = TANK): IsotonicCurve {
  const fit = fitGaugeCurve(runs, tank, resolutionRatio);
  if (fit.kind !== 'curve') throw new Error(`only ${String(fit.distinctCount)} distinct readings`);
  return fit.curve;
}

/**
 * Eighths, 5 L a pour: the needle leaves the empty stop at the second pour, stands still at 1/2 while 15 L go
 * in, and reaches the full stop with 55 L.
 */
export const WITH_DEAD_ZONE = filling(
  [0, 'E'],
  [5, 'E'],
  [5, 0.125],
  [5, 0.25],
  [5, 0.375],
  [5, 0.5],
  [5, 0.5],
  [5, 0.5],
  [5, 0.5],
  [5, 0.625],
  [5, 0.875],
  [5, 'F'],
);

/** A needle that shows tenths and is linear: 6 L a tenth from 0 to 60 L. */
export const LINEAR = filling(
  [0, 'E'],
  ...[0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9].map((position): [number, number] => [6, position]),
  [6, 'F'],
);
