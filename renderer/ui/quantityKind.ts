import { parseQuantity } from '../../shared-calc/units/parse-quantity.ts';
import { fromSi, toSi } from '../../shared-calc/units/convert.ts';
import { QUANTITIES, type Quantity, type UnitOf } from '../../shared-calc/units/quantities.ts';
import { fieldText, shown, shownFigure, stepped, unitSuffix } from '../../shared-calc/units/shown.ts';
import { UNITS } from '../../shared-calc/units/unit-table.ts';
import type { FieldKind, Reading } from './fieldKind.ts';

/** What is allowed, both ends included, in the unit kept inside. */
export interface Allowed {
  minSi?: number;
  maxSi?: number;
  /**
   * What is usual, in the unit kept inside. A bare figure outside of it that another unit of the quantity would put
   * inside is doubted: the person settles which was meant. Nothing is guessed.
   */
  usualSi?: readonly [number, number];
}

/**
 * A field's figure with its unit: any unit of the quantity may be typed, the person's own is shown.
 * Out of range is refused with the value as it was understood and what is allowed, in the person's unit.
 */
export function quantityKind<Q extends Quantity>(
  quantity: Q,
  unit: UnitOf[Q],
  { minSi = -Infinity, maxSi = Infinity, usualSi }: Allowed = {},
): FieldKind<number> {
  const words = (valueSi: number) => `${fieldText(valueSi, quantity, unit)}${unitSuffix(unit)}`;
  const outside = (valueSi: number): string | null => {
    // The same billionth by which a limit met exactly is met everywhere.
    const slack = 1e-9 * Math.max(Math.abs(valueSi), 1e-3);
    if (valueSi < minSi - slack) return `${words(valueSi)} is below what is allowed: ${allowedWords()}.`;
    if (valueSi > maxSi + slack) return `${words(valueSi)} is above what is allowed: ${allowedWords()}.`;
    return null;
  };
  /** The figure without its unit would be usual in another one: say so, and offer both. */
  const doubted = (text: string, valueSi: number): Reading<number> | null => {
    const isUsual = (si: number) => usualSi !== undefined && si >= usualSi[0] && si <= usualSi[1];
    if (usualSi === undefined || isUsual(valueSi) || /[^\d.,\s+\u2212-]/.test(text)) return null;
    const other = QUANTITIES[quantity].units
      .map((each) => each.unit as UnitOf[Q])
      .filter((each) => each !== unit)
      .map((each) => ({ unit: each, si: toSi(fromSi(valueSi, unit), each) }))
      .find(({ si }) => isUsual(si) && outside(si) === null);
    if (other === undefined) return null;
    const ways = [
      { verb: `Take it as ${UNITS[other.unit].label}, ${shown(other.si, quantity, unit)}`, value: other.si },
    ];
    if (outside(valueSi) === null) ways.push({ verb: `Keep ${UNITS[unit].label}`, value: valueSi });
    return { refused: `${text.trim()} looks like ${UNITS[other.unit].label}.`, ways, isDoubt: true };
  };
  /** An end that is round in another unit is rounded inward: 10,000 kg are 22,046.2 lb. */
  const end = (valueSi: number, question: 'needed' | 'available') => {
    const exact = fieldText(valueSi, quantity, unit);
    const isLong = (exact.split('.')[1]?.length ?? 0) > 3;
    return isLong ? shownFigure(valueSi, quantity, unit, question) : exact;
  };
  const allowedWords = () => {
    const least = minSi === -Infinity ? '' : end(minSi, 'needed');
    const most = maxSi === Infinity ? '' : end(maxSi, 'available');
    if (most === '') return `at least ${least}${unitSuffix(unit)}`;
    if (least === '') return `at most ${most}${unitSuffix(unit)}`;
    return `${least} to ${most}${unitSuffix(unit)}`;
  };

  return {
    show: (valueSi) => fieldText(valueSi, quantity, unit),
    read: (text): Reading<number> => {
      if (text.trim() === '') return { value: null };
      const parsed = parseQuantity(text, quantity, unit);
      if (!parsed.ok) {
        const ways = parsed.readings
          .filter((reading) => outside(reading.valueSi) === null)
          .map((reading) => ({ verb: `Take it as ${reading.text}`, value: reading.valueSi }));
        return { refused: parsed.sentence, ways };
      }
      const doubt = doubted(text, parsed.valueSi);
      if (doubt !== null) return doubt;
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
