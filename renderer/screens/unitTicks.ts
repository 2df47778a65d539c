import { convert } from '../../shared-calc/units/convert.ts';
import { decimalsOf, figureText } from '../../shared-calc/units/figure-text.ts';
import { SI_UNIT, UNITS, type Unit } from '../../shared-calc/units/unit-table.ts';
import { ticksFor } from '../plot/ticksFor.ts';

/** Ticks of an axis at round values of the person's unit, kept where the data are: in the unit kept inside. */
export interface UnitTicks {
  values: number[];
  text: (valueSi: number) => string;
}

/**
 * @param domainSi  ends of the axis, in the unit kept inside
 * @param lengthPx  of the axis
 * @param spacingPx wished between two ticks
 */
export function unitTicks(
  domainSi: readonly [number, number],
  unit: Unit,
  lengthPx: number,
  spacingPx: number,
): UnitTicks {
  const inside = SI_UNIT[UNITS[unit].dimension];
  const ends = domainSi.map((end) => convert(end, inside, unit));
  const shown = ticksFor([ends[0] ?? 0, ends[1] ?? 1], lengthPx, spacingPx);
  const step = Math.abs((shown[1] ?? 1) - (shown[0] ?? 0));
  const decimals = decimalsOf(step);
  return {
    values: shown.map((value) => convert(value, unit, inside)),
    text: (valueSi) => figureText(Number(convert(valueSi, inside, unit).toFixed(9)), decimals),
  };
}
