import { requireRange } from '../problem.ts';
import { fromSi, toSi } from './convert.ts';
import { decimalsOf, figureText, NO_BREAK_SPACE } from './figure-text.ts';
import { digitsOf, type Quantity, type UnitOf } from './quantities.ts';
import { roundSafely, type Question } from './round-safely.ts';
import { UNITS } from './unit-table.ts';

/**
 * Every figure with a unit that a person sees, on screen, on paper and from scripts, comes from here. The caller says
 * what is asked and of what, never how many digits: "11 mm", "−3 °C", "1 004 hPa", "less than 1 mm".
 *
 * A margin (or excess, or time left) that is there but rounds to nothing says "less than" one step.
 * @param valueSi  in the unit kept inside; finite
 * @param quantity decides the digits
 * @param unit     in which it is shown, mostly from the person's preferences
 * @param question decides the side of rounding; 'plain' unless told
 * @throws RangeProblem naming valueSi
 * @example shown(0.03697, 'arm', 'mm', 'margin') is "36 mm"; shown(0.0002, 'arm', 'mm', 'margin') is "less than 1 mm"
 */
export function shown<Q extends Quantity>(
  valueSi: number,
  quantity: Q,
  unit: UnitOf[Q],
  question: Question = 'plain',
): string {
  const figure = shownFigure(valueSi, quantity, unit, question);
  return quantity === 'direction' ? `${figure}°` : `${figure}${unitSuffix(unit)}`;
}

/** The same without its unit, for columns and axes that name the unit once. */
export function shownFigure<Q extends Quantity>(
  valueSi: number,
  quantity: Q,
  unit: UnitOf[Q],
  question: Question = 'plain',
): string {
  const { resolution } = digitsOf(quantity, unit);
  const rounded = roundedFor(valueSi, quantity, unit, question);
  const decimals = decimalsOf(resolution);
  if (quantity === 'direction' && unit === 'deg') return compassFigure(rounded);
  if (rounded === 0 && valueSi > 0 && SAYS_LESS_THAN.has(question)) {
    return `less than ${figureText(resolution, decimals)}`;
  }
  const text = figureText(rounded, decimals);
  return question === 'change' && rounded > 0 ? `+${text}` : text;
}

const SAYS_LESS_THAN: ReadonlySet<Question> = new Set(['margin', 'excess', 'duration left', 'until inside']);

/** Directions are written with three figures, north as 360. */
function compassFigure(degrees: number): string {
  const turned = ((degrees % 360) + 360) % 360;
  return String(turned === 0 ? 360 : turned).padStart(3, '0');
}

/**
 * The number behind `shown`, in the shown unit and rounded to the question's safe side: for plots and for further words.
 * @throws RangeProblem naming valueSi
 */
export function roundedFor<Q extends Quantity>(
  valueSi: number,
  quantity: Q,
  unit: UnitOf[Q],
  question: Question,
): number {
  return roundSafely(fromSi(valueSi, unit), digitsOf(quantity, unit).resolution, question);
}

/** What stands after a figure: a no-break space and the unit; the degree of an angle stands close. */
export function unitSuffix(unit: keyof typeof UNITS): string {
  const { label } = UNITS[unit];
  if (label === '' || label === '°') return label;
  return `${NO_BREAK_SPACE}${label}`;
}

/**
 * A range in words, "31 to 35 °C". Rounded outward (nothing inside is left out) unless it is a window to act in,
 * which is rounded inward.
 * @throws RangeProblem naming lowSi or highSi (highSi must be at least lowSi)
 */
export function shownRange<Q extends Quantity>(
  lowSi: number,
  highSi: number,
  quantity: Q,
  unit: UnitOf[Q],
  side: 'outward' | 'inward' = 'outward',
): string {
  requireRange('highSi', highSi, lowSi, Infinity, '');
  const low = shownFigure(lowSi, quantity, unit, side === 'outward' ? 'available' : 'needed');
  const high = shown(highSi, quantity, unit, side === 'outward' ? 'needed' : 'available');
  return `${low} to ${high}`;
}

/**
 * What a field shows for a value that was typed or read: as many decimals as it takes to say it exactly (1320 lb kept as
 * 598.7419284 kg is "1320" again), else one more than the quantity's digits. Not grouped, so that it can be edited.
 * @throws RangeProblem naming valueSi
 */
export function fieldText<Q extends Quantity>(valueSi: number, quantity: Q, unit: UnitOf[Q]): string {
  const value = fromSi(valueSi, unit);
  const usual = decimalsOf(digitsOf(quantity, unit).resolution);
  for (let decimals = 0; decimals <= usual + 3; decimals += 1) {
    const text = value.toFixed(decimals);
    // A billionth, and for values next to nothing a billionth of a step's own size.
    if (Math.abs(Number(text) - value) <= 1e-9 * Math.max(Math.abs(value), 10 ** -usual))
      return trueMinus(text);
  }
  return trueMinus(value.toFixed(usual + 1));
}

function trueMinus(text: string): string {
  return text.startsWith('-') ? (/[1-9]/.test(text) ? `\u2212${text.slice(1)}` : text.slice(1)) : text;
}

/**
 * A value one arrow key away, on the grid of steps: 80.3 kg stepped up by 0.5 is 80.5, then 81.
 * @param count how many steps, negative for down; a page key may send 10
 * @throws RangeProblem naming valueSi
 * @returns the new value in the unit kept inside; the caller holds it against the field's range
 */
export function stepped<Q extends Quantity>(
  valueSi: number,
  quantity: Q,
  unit: UnitOf[Q],
  count: number,
): number {
  requireRange('count', count, -1e6, 1e6, '');
  const { step } = digitsOf(quantity, unit);
  const steps = fromSi(valueSi, unit) / step;
  const nearest = Math.round(steps);
  const onGrid = Math.abs(steps - nearest) < 1e-6;
  const from = onGrid ? nearest : count > 0 ? Math.floor(steps) : Math.ceil(steps);
  const target = (from + count) * step;
  return toSi(Number(target.toFixed(9)), unit);
}
