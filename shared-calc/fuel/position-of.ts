import type { GaugeReading } from './fill-run.ts';

/** Where the needle stands, 0 at the empty stop and 1 at the full one. */
export function positionOf(reading: GaugeReading): number {
  if (reading.at === 'emptyStop') return 0;
  return reading.at === 'fullStop' ? 1 : reading.positionRatio;
}
