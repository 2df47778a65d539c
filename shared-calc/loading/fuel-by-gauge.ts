import type { GaugeReading } from '../fuel/fill-run.ts';
import type { GaugeCurve } from '../fuel/gauge-curve.ts';
import { fuelAtReading } from '../fuel/readout.ts';
import { withFuelL } from './alter.ts';
import type { LoadingRecord, TankRecord } from './records.ts';

/**
 * What is in a tank by its gauge, read to the nearest division: the figure to plan on, the best estimate and as much as
 * may be there, none of them beyond what the tank holds. Where only an interval is known its middle stands for the best.
 * @throws RangeProblem when the position lies outside the scale
 */
export function fuelByGauge(
  curve: GaugeCurve,
  reading: GaugeReading,
  usableCapacityL: number,
): { lowL: number; bestL: number; highL: number } {
  const { planningL, bestL, mostL } = fuelAtReading(curve, reading, 'nearestDivision');
  const within = (volumeL: number) => Math.min(usableCapacityL, Math.max(0, volumeL));
  const [lowL, highL] = [within(planningL), within(mostL)];
  return { lowL, bestL: Math.min(highL, Math.max(lowL, within(bestL ?? (planningL + mostL) / 2))), highL };
}

/** Put into a loading what a tank's gauge reads; its figures come from the calibration that counts. */
export function withGaugeReading(
  copy: LoadingRecord,
  tank: Pick<TankRecord, 'id' | 'capacityL' | 'unusableL'>,
  reading: GaugeReading,
  calibration: { id: string; curve: GaugeCurve },
): void {
  const figures = fuelByGauge(calibration.curve, reading, tank.capacityL - tank.unusableL);
  // Takes care of the order of burning; the figures follow.
  withFuelL(copy, tank, figures.bestL);
  copy.fuel = copy.fuel.map((each) =>
    each.tankId === tank.id
      ? { ...each, ...figures, gauge: { reading, calibrationId: calibration.id } }
      : each,
  );
}
