import { requireRange } from '../problem.ts';

/** U+00A0: between a figure and its unit, so that no line breaks there. */
export const NO_BREAK_SPACE = '\u00a0';
/** Word joiner, thin space, word joiner: groups thousands without a break (U+202F is too tight in the program's font). */
export const THOUSANDS = '\u2060\u2009\u2060';
/** U+2212, as wide as a plus. */
export const MINUS = '\u2212';

/**
 * A figure with a given number of decimals, thousands apart and a true minus: "1 004", "−3.5".
 * @param value    finite; magnitude below 1e15, where a double still holds every whole number
 * @param decimals 0 to 9
 * @throws RangeProblem naming either
 */
export function figureText(value: number, decimals: number): string {
  requireRange('value', value, -1e15, 1e15, '');
  requireRange('decimals', decimals, 0, 9, '');
  const [whole = '', fraction] = Math.abs(value).toFixed(decimals).split('.');
  const grouped = whole.replace(/\B(?=(\d{3})+$)/g, THOUSANDS);
  const text = fraction === undefined ? grouped : `${grouped}.${fraction}`;
  // What rounds to nothing carries no sign.
  return value < 0 && /[1-9]/.test(text) ? `${MINUS}${text}` : text;
}

/** How many decimals a step needs: 0.05 needs 2, 10 none. Takes 1e-9 to 1e9. */
export function decimalsOf(resolution: number): number {
  requireRange('resolution', resolution, 1e-9, 1e9, '');
  for (let decimals = 0; decimals < 9; decimals += 1) {
    if (Math.abs(resolution - Number(resolution.toFixed(decimals))) < 1e-12) return decimals;
  }
  return 9;
}
