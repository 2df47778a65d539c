import { DENSITY_RANGES, type FuelBlend } from '../fuel/blend-density.ts';
import { Z_95 } from '../numeric/z-95.ts';
import type { TankRecord } from '../loading/records.ts';
import { tankDensity } from '../loading/tank-density.ts';
import type { UnitPreferences } from '../units/preferences.ts';
import { shown, shownFigure } from '../units/shown.ts';

type DensityUnits = Pick<UnitPreferences, 'fuelDensity' | 'temperature'>;

/** What a fuel is called where its density follows from it. */
export function blendName(blend: FuelBlend): string {
  if (blend.kind === 'avgas') return 'aviation gasoline';
  if (blend.kind === 'own') return 'density known at 15 °C';
  return blend.ethanolPercent === 0
    ? 'motor gasoline'
    : `motor gasoline with ${String(blend.ethanolPercent)} % of ethanol`;
}

/**
 * Which density counts for a tank's fuel and whose it is: "0.720 kg/L as typed", "0.748 kg/L ±0.032 for motor gasoline,
 * its temperature not measured".
 * @throws RangeProblem as tankDensity
 */
export function densityWords(
  tank: Pick<TankRecord, 'densityKgPerL' | 'blend'>,
  temperatureC: number | null,
  units: DensityUnits,
): string {
  const { densityKgPerL, sdKgPerL } = tankDensity(tank, temperatureC);
  const figure = shown(1000 * densityKgPerL, 'fuelDensity', units.fuelDensity);
  if (tank.blend === undefined) return `${figure} as typed`;
  const doubt = shownFigure(1000 * sdKgPerL * Z_95, 'fuelDensity', units.fuelDensity, 'doubt');
  const when =
    temperatureC === null
      ? 'its temperature not measured'
      : `at ${shown(temperatureC, 'temperature', units.temperature)}`;
  return `${figure} ±${doubt} for ${blendName(tank.blend)}, ${when}`;
}

/** Where the density at 15 °C of a kind of fuel comes from, for a person who chooses it. */
export function blendSource(blend: FuelBlend, units: DensityUnits): string {
  if (blend.kind === 'own') return 'Counted as good to half a thousandth, as a hydrometer gives it.';
  const { leastKgPerL, mostKgPerL, source } = DENSITY_RANGES[blend.kind];
  const range = `${shownFigure(1000 * leastKgPerL, 'fuelDensity', units.fuelDensity)} to ${shown(1000 * mostKgPerL, 'fuelDensity', units.fuelDensity)}`;
  const more =
    blend.kind === 'motor gasoline' && blend.ethanolPercent > 10
      ? ' Above 10 % the ethanol is counted as added to such gasoline.'
      : '';
  return `At 15 °C anywhere from ${range} (${source}).${more}`;
}
