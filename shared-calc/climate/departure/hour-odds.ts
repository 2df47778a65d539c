import { requireRange } from '../../problem.ts';
import { daysNeeded } from '../days-needed.ts';
import type { Judged } from './judge.ts';
import { MOST_DAYS_OFF } from '../near-date.ts';
import type { RowsAround } from './rows-around.ts';

export const HOURS_OF_DAY = 24;
/** A date begins with a week on either side. */
export const FIRST_DAYS_OFF = 7;

/** What the record says of one hour, all limits together. */
export interface HourOdds {
  readonly hour: number;
  /** Days that have an observation at this hour. */
  readonly dayCount: number;
  /** Of these, the days that meet every limit. */
  readonly metCount: number;
  /** Days that each limit fails, in the order of the limits; a day may fail several. */
  readonly failCounts: readonly number[];
}

/**
 * Days and days that meet every limit, hour by hour.
 * @param rows     around the date
 * @param judged   the same rows, held against the limits
 * @param limits   how many there were
 * @param halfDays only days this close to the date count, 0 to 21
 * @throws RangeProblem naming halfDays
 */
export function hourOdds(rows: RowsAround, judged: Judged, limits: number, halfDays: number): HourOdds[] {
  requireRange('halfDays', halfDays, 0, MOST_DAYS_OFF, 'days');
  const days = new Int32Array(HOURS_OF_DAY);
  const met = new Int32Array(HOURS_OF_DAY);
  const fails = Array.from({ length: HOURS_OF_DAY }, () => new Array<number>(limits).fill(0));
  for (let row = 0; row < rows.place.length; row++) {
    if (judged.observed[row] !== 1 || Math.abs(rows.daysOff[row] ?? 0) > halfDays) continue;
    const hour = rows.hour[row] ?? 0;
    const failed = judged.failed[row] ?? 0;
    days[hour] = (days[hour] ?? 0) + 1;
    if (failed === 0) met[hour] = (met[hour] ?? 0) + 1;
    else
      for (let limit = 0; limit < limits; limit++) {
        const counts = fails[hour];
        if ((failed & (1 << limit)) !== 0 && counts !== undefined) counts[limit] = (counts[limit] ?? 0) + 1;
      }
  }
  return Array.from({ length: HOURS_OF_DAY }, (_, hour) => ({
    hour,
    dayCount: days[hour] ?? 0,
    metCount: met[hour] ?? 0,
    failCounts: fails[hour] ?? [],
  }));
}

/**
 * Days on either side of the date that the question takes: a week, and more only where an hour of daylight has too few
 * days for the share asked. An hour that would have too few even with three weeks does not widen it: it stays too few.
 * @param hours the hours of daylight, 0 to 23
 * @param share 0.5 to 0.99
 * @returns 7 to 21
 * @throws RangeProblem naming share
 */
export function widenedDays(
  rows: RowsAround,
  observed: Uint8Array,
  hours: readonly number[],
  share: number,
): number {
  const needed = daysNeeded(share);
  // Days of each hour by their distance from the date, then summed outwards.
  const within = Array.from({ length: HOURS_OF_DAY }, () => new Int32Array(MOST_DAYS_OFF + 1));
  for (let row = 0; row < rows.place.length; row++) {
    const counts = within[rows.hour[row] ?? 0];
    const off = Math.abs(rows.daysOff[row] ?? 0);
    if (observed[row] === 1 && counts !== undefined) counts[off] = (counts[off] ?? 0) + 1;
  }
  for (const counts of within)
    for (let off = 1; off <= MOST_DAYS_OFF; off++) counts[off] = (counts[off] ?? 0) + (counts[off - 1] ?? 0);
  const at = (hour: number, off: number) => within[hour]?.[off] ?? 0;
  const hopeful = hours.filter((hour) => at(hour, MOST_DAYS_OFF) >= needed);
  let halfDays = FIRST_DAYS_OFF;
  while (halfDays < MOST_DAYS_OFF && hopeful.some((hour) => at(hour, halfDays) < needed)) halfDays++;
  // Where no hour can ever have its days, the widest count is the honest one to show.
  return hopeful.length === 0 && hours.length > 0 ? MOST_DAYS_OFF : halfDays;
}
