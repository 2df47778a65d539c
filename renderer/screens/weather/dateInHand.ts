import { dateNear } from './dateInYear.ts';

const HOURS = 24;

/**
 * The date in hand: the one chosen; else today, unless the record has nothing in this month: then the middle of the
 * nearest month that it has.
 * @param chosen   '2026-07-19', or null
 * @param dayCount of the season picture, month after month
 */
export function dateInHand(chosen: string | null, dayCount: readonly number[], today: string): string {
  if (chosen !== null) return chosen;
  const [year = 0, month = 1] = today.split('-').map(Number);
  const countOf = (of: number) =>
    dayCount.slice(of * HOURS, (of + 1) * HOURS).reduce((sum, count) => sum + count, 0);
  if (countOf(month - 1) > 0 || dayCount.every((count) => count === 0)) return today;
  const away = (of: number) => Math.min(Math.abs(of - month + 1), 12 - Math.abs(of - month + 1));
  const nearest = Array.from({ length: 12 }, (_, of) => of)
    .filter((of) => countOf(of) > 0)
    .reduce((best, of) => (away(of) < away(best) ? of : best));
  return dateNear(year, nearest + 0.5);
}
