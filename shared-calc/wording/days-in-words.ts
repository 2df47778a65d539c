import { requireRange } from '../problem.ts';
import { numberWord } from './number-words.ts';

/**
 * A share of days as a count of a round number: 'nine days in ten', 'one day in two', 'three days in four', '19 days in 20'.
 * @param share 0.01 to 0.99, in words where it is a whole number in 2, 4, 10 or 20; else as a count of a hundred
 * @param first 'capital' at the beginning of a sentence
 * @throws RangeProblem naming share
 */
export function daysInWords(share: number, first: 'capital' | 'small' = 'small'): string {
  requireRange('share', share, 0.01, 0.99, '');
  const of =
    [2, 4, 10, 20, 100].find((count) => Math.abs(share * count - Math.round(share * count)) < 1e-6) ?? 100;
  const count = Math.round(share * of);
  const counted = of <= 10 ? numberWord(count) : String(count);
  const words = `${counted} ${count === 1 ? 'day' : 'days'} in ${of <= 10 ? numberWord(of) : String(of)}`;
  return first === 'capital' ? `${words.charAt(0).toUpperCase()}${words.slice(1)}` : words;
}

/**
 * How far other years might differ: 'seven to ten with the years at hand'; '' where nothing is known. Rounded outward, so
 * that nothing inside the interval is left out. Beside another share than nine in ten what it is counted in is said;
 * beside 19 in 20 that is twenty, since a tenth would hide it.
 */
export function intervalWords(
  share: number,
  { shareLow, shareHigh }: { readonly shareLow: number | null; readonly shareHigh: number | null },
  of: 'years' | 'blocks of five days',
): string {
  if (shareLow === null || shareHigh === null) return '';
  const parts = share > 0.9 + 1e-9 ? 20 : 10;
  const low = Math.floor(parts * shareLow + 1e-9);
  const high = Math.ceil(parts * shareHigh - 1e-9);
  const word = (count: number) => (parts === 10 ? numberWord(count) : String(count));
  const range = low === high ? word(low) : `${word(low)} to ${word(high)}`;
  const counted = Math.abs(share - 0.9) < 1e-9 ? '' : ` in ${word(parts)}`;
  return `${range}${counted} with the ${of === 'years' ? 'years' : 'days'} at hand`;
}
