import type { GaugeReading } from '../../../shared-calc/fuel/fill-run.ts';

/** The reading at the division nearest to a position; the ends of the scale are the stops. */
export function readingOf(positionRatio: number, resolutionRatio: number): GaugeReading {
  const divisions = Math.round(positionRatio / resolutionRatio);
  const snapped = Number((divisions * resolutionRatio).toPrecision(12));
  if (snapped <= 0) return { at: 'emptyStop' };
  return snapped >= 1 ? { at: 'fullStop' } : { at: 'scale', positionRatio: snapped };
}
