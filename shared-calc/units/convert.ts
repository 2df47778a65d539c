import { InputProblem, requireRange } from '../problem.ts';
import { UNITS, SI_UNIT, lowestIn, type Unit } from './unit-table.ts';

/**
 * From a unit that people read to the one that is kept inside (kg, m, L, hPa, degC, m/s, rad, L/h, kg/m3, kg m, m2, s, ratio).
 * There and back is within one unit in the last place; for the shifted scales (degF, K) within two, of the larger of the
 * value and the scale's shift. See also fromSi.
 * @param value finite; a temperature not below absolute zero
 * @throws RangeProblem naming `value`
 * @example toSi(1320, 'lb') is 598.7419284
 * @source NIST SP 811 (2008) appendix B, exact factors (constants.ts)
 */
export function toSi(value: number, unit: Unit): number {
  const { times, per, zero, label } = UNITS[unit];
  requireRange('value', value, lowestIn(unit), Infinity, label);
  return ((value - zero) * times) / per;
}

/**
 * From the unit kept inside to one that people read; the inverse of toSi.
 * @param valueSi finite; a temperature not below absolute zero
 * @throws RangeProblem naming `valueSi`
 * @example fromSi(598.7419284, 'lb') is 1320
 */
export function fromSi(valueSi: number, unit: Unit): number {
  const { times, per, zero, dimension } = UNITS[unit];
  const kept = SI_UNIT[dimension];
  requireRange('valueSi', valueSi, lowestIn(kept), Infinity, UNITS[kept].label);
  return (valueSi * per) / times + zero;
}

/**
 * From one unit to another of the same dimension.
 * @throws RangeProblem for a value that is not finite or lies below absolute zero; InputProblem for units of different dimensions
 * @example convert(1013.25, 'hPa', 'inHg') is 29.9213
 */
export function convert(value: number, from: Unit, to: Unit): number {
  if (UNITS[from].dimension !== UNITS[to].dimension) {
    throw new InputProblem(
      'to',
      `${from} is a unit of ${UNITS[from].dimension} and ${to} one of ${UNITS[to].dimension}`,
    );
  }
  const valueSi = toSi(value, from);
  return from === to ? value : fromSi(valueSi, to);
}
