import { fieldText, unitSuffix } from '../../../shared-calc/units/shown.ts';
import type { FieldKind, Reading } from '../../ui/fieldKind.ts';
import { quantityKind } from '../../ui/quantityKind.ts';
import type { ManualUnits } from './printedUnits.ts';

/**
 * A limit of the lateral CG, negative to the left. Manuals often print it as "3 in left", so that a left limit without a
 * minus, or a right one with it, is asked about; both are possible where the manual measures from another line.
 */
export function lateralLimitKind(
  side: 'left' | 'right',
  across: 'arm' | 'moment',
  units: Pick<ManualUnits, 'arm' | 'moment'>,
): FieldKind<number> {
  const kind =
    across === 'arm'
      ? quantityKind('arm', units.arm, { minSi: -15, maxSi: 15 })
      : quantityKind('moment', units.moment, { minSi: -300_000, maxSi: 300_000 });
  const text = (limit: number) =>
    across === 'arm'
      ? `${fieldText(limit, 'arm', units.arm)}${unitSuffix(units.arm)}`
      : `${fieldText(limit, 'moment', units.moment)}${unitSuffix(units.moment)}`;
  return {
    ...kind,
    // As wide as the fields beside it.
    widthCount: 6,
    read: (typed): Reading<number> => {
      const reading = kind.read(typed);
      if ('refused' in reading || reading.value === null) return reading;
      const limit = reading.value;
      if (side === 'left' ? limit <= 0 : limit >= 0) return reading;
      const other = side === 'left' ? 'right' : 'left';
      return {
        refused: `${text(limit)} lies to the ${other} of the middle.`,
        ways: [
          { verb: `Take it as ${text(-limit)}`, value: -limit },
          { verb: `Keep ${text(limit)}`, value: limit },
        ],
        isDoubt: true,
      };
    },
  };
}
