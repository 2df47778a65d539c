import { seededNormals } from '../../numeric/seeded-normals.ts';
import { requireRange } from '../../problem.ts';
import { HOURS_OF_DAY } from './hour-odds.ts';
import type { Judged } from './judge.ts';
import type { RowsAround } from './rows-around.ts';

/** From so many years on whole years are drawn; below, they are too few to be drawn from. */
export const YEARS_TO_RESAMPLE = 6;
/** Weather of one day is like that of the day before: what is drawn must hold such a run together. */
const BLOCK_DAYS = 5;

/** The share of days that meet every limit, hour by hour, as other years like these might have shown it. */
export interface ResampledShares {
  /** Draw after draw, 24 hours each; NaN where a draw has no day. */
  readonly share: Float64Array;
  readonly drawCount: number;
  /** What was drawn from, and how many of them there are. */
  readonly of: 'years' | 'blocks of five days';
  readonly groupCount: number;
}

/**
 * Draw the record's whole years again and again, with repetition, and count the days of each drawing: how much the share
 * depends on which years happened to be recorded. Fewer than six years are too few to draw from; then runs of five days
 * are drawn, which leaves out how years differ, and the interval is too narrow.
 * @param halfDays  as for hourOdds
 * @param drawCount 100 to 10,000
 * @param seed      a whole number from 0 to 2^32 - 1: the same figures every time
 * @throws RangeProblem naming drawCount or seed
 * @source B. Efron, R. Tibshirani, An Introduction to the Bootstrap, 1993, ch. 8 (blocks), from memory
 */
export function resampledShares(
  rows: RowsAround,
  judged: Judged,
  halfDays: number,
  drawCount = 1000,
  seed = 1,
): ResampledShares {
  requireRange('drawCount', drawCount, 100, 10_000, '');
  const draws = seededNormals(seed);
  const years = new Set<number>();
  const counted = (row: number) => judged.observed[row] === 1 && Math.abs(rows.daysOff[row] ?? 0) <= halfDays;
  for (let row = 0; row < rows.place.length; row++) if (counted(row)) years.add(rows.year[row] ?? 0);
  const byYear = years.size >= YEARS_TO_RESAMPLE;
  const groups = new Map<number, number>();
  const days: number[] = [];
  const met: number[] = [];
  for (let row = 0; row < rows.place.length; row++) {
    if (!counted(row)) continue;
    const block = byYear ? 0 : Math.floor(((rows.daysOff[row] ?? 0) + halfDays) / BLOCK_DAYS);
    const key = (rows.year[row] ?? 0) * 16 + block;
    let group = groups.get(key);
    if (group === undefined) {
      group = groups.size;
      groups.set(key, group);
      for (let hour = 0; hour < HOURS_OF_DAY; hour++) {
        days.push(0);
        met.push(0);
      }
    }
    const cell = group * HOURS_OF_DAY + (rows.hour[row] ?? 0);
    days[cell] = (days[cell] ?? 0) + 1;
    if (judged.failed[row] === 0) met[cell] = (met[cell] ?? 0) + 1;
  }
  const groupCount = groups.size;
  const share = new Float64Array(drawCount * HOURS_OF_DAY).fill(NaN);
  const sumDays = new Int32Array(HOURS_OF_DAY);
  const sumMet = new Int32Array(HOURS_OF_DAY);
  for (let draw = 0; draw < drawCount && groupCount > 0; draw++) {
    sumDays.fill(0);
    sumMet.fill(0);
    for (let drawn = 0; drawn < groupCount; drawn++) {
      const from = Math.floor(draws.uniform() * groupCount) * HOURS_OF_DAY;
      for (let hour = 0; hour < HOURS_OF_DAY; hour++) {
        sumDays[hour] = (sumDays[hour] ?? 0) + (days[from + hour] ?? 0);
        sumMet[hour] = (sumMet[hour] ?? 0) + (met[from + hour] ?? 0);
      }
    }
    for (let hour = 0; hour < HOURS_OF_DAY; hour++)
      share[draw * HOURS_OF_DAY + hour] = (sumMet[hour] ?? 0) / (sumDays[hour] ?? 0);
  }
  return { share, drawCount, of: byYear ? 'years' : 'blocks of five days', groupCount };
}
