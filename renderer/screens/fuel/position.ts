import type { GaugeReading } from '../../../shared-calc/fuel/fill-run.ts';

/** Where the needle stands, 0 at the empty stop and 1 at the full one. */
export function positionOf(reading: GaugeReading): number {
  if (reading.at === 'emptyStop') return 0;
  return reading.at === 'fullStop' ? 1 : reading.positionRatio;
}

/** The reading at the division nearest to a position; the ends of the scale are the stops. */
export function readingOf(positionRatio: number, resolutionRatio: number): GaugeReading {
  const divisions = Math.round(positionRatio / resolutionRatio);
  const snapped = Number((divisions * resolutionRatio).toPrecision(12));
  if (snapped <= 0) return { at: 'emptyStop' };
  return snapped >= 1 ? { at: 'fullStop' } : { at: 'scale', positionRatio: snapped };
}
