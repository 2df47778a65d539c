import { blendDensity, type BlendDensity } from '../fuel/blend-density.ts';
import type { TankRecord } from './records.ts';

/**
 * The density by which a tank's fuel counts: the typed one, as it stands, or that of the fuel's kind at its temperature.
 * @param temperatureC of the fuel, -40 to 60 degC; null where nobody measured it
 * @throws RangeProblem as blendDensity
 */
export function tankDensity(
  { densityKgPerL, blend }: Pick<TankRecord, 'densityKgPerL' | 'blend'>,
  temperatureC: number | null,
): BlendDensity {
  return blend === undefined ? { densityKgPerL, sdKgPerL: 0 } : blendDensity(blend, temperatureC);
}
