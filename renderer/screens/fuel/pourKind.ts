import { weighedVolumeL } from '../../../shared-calc/fuel/weighed-volume.ts';
import { parseQuantity } from '../../../shared-calc/units/parse-quantity.ts';
import type { UnitOf } from '../../../shared-calc/units/quantities.ts';
import { shown } from '../../../shared-calc/units/shown.ts';
import { sentenceOf } from '../../app/client.ts';
import type { FieldKind } from '../../ui/fieldKind.ts';
import { quantityKind } from '../../ui/quantityKind.ts';

/** What a pour was measured with, as far as its field needs it. */
export interface PouredWith {
  nominalL: number | null;
  weighed: { densityKgPerL: number; temperatureC: number } | null;
}

/** Far enough from a full can that another unit is worth a question, near enough to one in that unit. */
const NEAR_NOMINAL = 0.1;

/**
 * A field for the volume of a pour. Where the fuel is weighed it takes a mass too ('3.7 kg') and says what it becomes;
 * a bare figure that would be a full can in another unit is doubted.
 * @param fuelC the fuel's temperature; null where it was not measured
 */
export function pourKind(
  unit: UnitOf['volume'],
  { nominalL, weighed }: PouredWith,
  fuelC: number | null,
): FieldKind<number> {
  const usual =
    nominalL === null
      ? {}
      : { usualSi: [(1 - NEAR_NOMINAL) * nominalL, (1 + NEAR_NOMINAL) * nominalL] as const };
  const { show, read, step, align } = quantityKind('volume', unit, {
    minSi: 0,
    maxSi: 1000,
    ...usual,
  });
  // The column's head names the unit.
  return {
    show,
    ...(step === undefined ? {} : { step }),
    align,
    widthCount: 5,
    read: (text) => {
      const asVolume = read(text);
      if (!('refused' in asVolume) || weighed === null || !/[a-z]/i.test(text)) return asVolume;
      const mass = parseQuantity(text, 'mass', 'kg');
      if (!mass.ok) return asVolume;
      try {
        const valueL = weighedVolumeL(mass.valueSi, weighed, fuelC);
        return { value: valueL, becomes: `becomes ${shown(valueL, 'volume', unit)}` };
      } catch (error) {
        return { refused: `${sentenceOf(error)}.` };
      }
    },
  };
}
