import { endKnots, shapeOf } from '../../../shared-calc/fuel/curve-shape.ts';
import type { GaugeCurve } from '../../../shared-calc/fuel/gauge-curve.ts';
import { fuelAtReading, type ReadingPrecision } from '../../../shared-calc/fuel/readout.ts';

export interface CurvePoints {
  best: (readonly [number, number])[];
  planning: (readonly [number, number])[];
  band: { x: number; low: number; high: number }[];
}

const samplesCount = 160;

/** A curve as it is drawn: between the first and the last reading that moved, and nowhere else. */
export function curvePoints(curve: GaugeCurve, precision: ReadingPrecision): CurvePoints {
  const { first, last } = endKnots(curve);
  const shape = shapeOf(curve);
  const span = last.positionRatio - first.positionRatio;
  // The knots themselves too, so that a standstill is drawn upright where it is.
  const positions = [
    ...Array.from({ length: samplesCount + 1 }, (_, i) => first.positionRatio + (span * i) / samplesCount),
    ...curve.knots.map((knot) => knot.positionRatio),
  ].sort((a, b) => a - b);
  const points: CurvePoints = { best: [], planning: [], band: [] };
  for (const positionRatio of positions) {
    const { lowL, highL } = shape(positionRatio);
    points.best.push([positionRatio, Math.max(0, lowL)]);
    if (highL > lowL) points.best.push([positionRatio, Math.max(0, highL)]);
    const { planningL, mostL } = fuelAtReading(curve, { at: 'scale', positionRatio }, precision);
    points.planning.push([positionRatio, planningL]);
    // Where a reading may already mean the full stop, the open interval drawn there says what may be in the tank.
    const high = curve.method === 'logSlopeRefits' ? mostL : Math.min(mostL, last.highL);
    points.band.push({ x: positionRatio, low: planningL, high });
  }
  return points;
}
