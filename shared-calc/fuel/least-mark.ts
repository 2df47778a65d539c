import { requireRange } from '../problem.ts';
import type { GaugeReading } from './fill-run.ts';
import type { GaugeCurve } from './gauge-curve.ts';
import { scaleMarks, type GaugeScale } from './gauge-scale.ts';
import { fuelAtReading, type ReadingPrecision } from './readout.ts';

/**
 * The lowest mark of the gauge at which a quantity may be planned on: the readout asked backwards.
 * @param usableL 0 to 1000 L
 * @returns null where no mark promises that much; the full stop counts as a mark
 * @throws RangeProblem naming usableL
 */
export function leastMarkFor(
  curve: GaugeCurve,
  scale: GaugeScale,
  usableL: number,
  precision: ReadingPrecision,
): { reading: GaugeReading; text: string } | null {
  requireRange('usableL', usableL, 0, 1000, 'L');
  // A billionth of the tank, as every limit that is met exactly.
  const enoughL = usableL - 1e-9 * curve.usableCapacityL;
  return (
    scaleMarks(scale).find(({ reading }) => fuelAtReading(curve, reading, precision).planningL >= enoughL) ??
    null
  );
}
