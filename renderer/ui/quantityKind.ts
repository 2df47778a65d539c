import { parseQuantity } from '../../shared-calc/units/parse-quantity.ts';
import type { Quantity, UnitOf } from '../../shared-calc/units/quantities.ts';
import { fieldText, shown, stepped, unitSuffix } from '../../shared-calc/units/shown.ts';
import type { FieldKind, Reading } from './fieldKind.ts';

/** What is allowed, both ends included, in the unit kept inside. */
export interface Allowed {
  minSi?: number;
  maxSi?: number;
}

/**
 * A field's figure with its unit: any unit of the quantity may be typed, the person's own is shown.
 * Out of range is refused with the value as it was understood and what is allowed, in the person's unit.
 */
export function quantityKind<Q extends Quantity>(
  quantity: Q,
  unit: UnitOf[Q],
  { minSi = -Infinity, maxSi = Infinity }: Allowed = {},
): FieldKind<number> {
  const words = (valueSi: number) => `${fieldText(valueSi, quantity, unit)}${unitSuffix(unit)}`;
  const outside = (valueSi: number): string | null => {
    // The same billionth by which a limit met exactly is met everywhere.
    const slack = 1e-9 * Math.max(Math.abs(valueSi), 1e-3);
    if (valueSi < minSi - slack) return `${words(valueSi)} is below what is allowed: ${allowedWords()}.`;
    if (valueSi > maxSi + slack) return `${words(valueSi)} is above what is allowed: ${allowedWords()}.`;
    return null;
  };
  const allowedWords = () => {
    if (maxSi === Infinity) return `at least ${words(minSi)}`;
    if (minSi === -Infinity) return `at most ${words(maxSi)}`;
    return `${fieldText(minSi, quantity, unit)} to ${words(maxSi)}`;
  };

  return {
    show: (valueSi) => fieldText(valueSi, quantity, unit),
    read: (text): Reading<number> => {
      if (text.trim() === '') return { value: null };
      const parsed = parseQuantity(text, quantity, unit);
      if (!parsed.ok) {
        const ways = parsed.readings
          .filter((reading) => outside(reading.valueSi) === null)
          .map((reading) => ({ text: reading.text, value: reading.valueSi }));
        return { refused: parsed.sentence, ways };
      }
      const refused = outside(parsed.valueSi);
      if (refused !== null) return { refused };
      return parsed.unit === unit
        ? { value: parsed.valueSi }
        : { value: parsed.valueSi, becomes: `becomes ${shown(parsed.valueSi, quantity, unit)}` };
    },
    step: (valueSi, steps) =>
      Math.min(maxSi, Math.max(minSi, stepped(valueSi ?? Math.max(0, minSi), quantity, unit, steps))),
    widthCount: 7,
    align: 'right',
    unit: unitSuffix(unit).trim(),
  };
}
