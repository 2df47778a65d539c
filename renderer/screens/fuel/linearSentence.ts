import type { GaugeReading } from '../../../shared-calc/fuel/fill-run.ts';
import type { GaugeCurve } from '../../../shared-calc/fuel/gauge-curve.ts';
import type { FuelReadout } from '../../../shared-calc/fuel/readout.ts';
import type { UnitPreferences } from '../../../shared-calc/units/preferences.ts';
import { shown } from '../../../shared-calc/units/shown.ts';
import { positionOf } from '../../../shared-calc/fuel/position-of.ts';

/** How far a gauge that were linear would be believed too far: 'A linear gauge would promise 28.1 L, 8.1 L more.' */
export function linearSentence(
  curve: GaugeCurve,
  reading: GaugeReading,
  readout: FuelReadout,
  units: Pick<UnitPreferences, 'volume'>,
): string {
  const linearL = positionOf(reading) * curve.usableCapacityL;
  const moreL = linearL - readout.planningL;
  const volume = (valueL: number) => shown(valueL, 'volume', units.volume);
  if (linearL === 0) return '';
  const difference = `${volume(Math.abs(moreL))} ${moreL < 0 ? 'less' : 'more'} than to plan on`;
  return `A linear gauge would promise ${volume(linearL)}, ${difference}. `;
}
