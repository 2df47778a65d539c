import { requireRange } from '../../problem.ts';
import { daysNeeded } from '../days-needed.ts';
import { airAt, type AirRows, type HourColumns } from './air-rows.ts';
import { rowsOfLimits, type DepartureLimits } from './departure-limits.ts';
import { judge } from './judge.ts';
import type { RowsAround } from './rows-around.ts';

/** The days of a question at one hour: who stands behind a count, and what another load would make of it. */
export interface DaysOfHour {
  /** Places in the record's columns. */
  readonly place: Int32Array;
  readonly air: AirRows;
}

/**
 * The days of one hour of the day within some days of the date.
 * @param hour     0 to 23
 * @param halfDays as the plan gave it
 * @throws RangeProblem naming hour
 */
export function daysOfHour(hours: HourColumns, rows: RowsAround, hour: number, halfDays: number): DaysOfHour {
  requireRange('hour', hour, 0, 23, '');
  const place = rows.place.filter(
    (_, row) => rows.hour[row] === hour && Math.abs(rows.daysOff[row] ?? 0) <= halfDays,
  );
  return { place, air: airAt(hours, place) };
}

/** The share of rows that meet every limit; null where too few have an observation for the share asked. */
export function shareMeeting(
  air: AirRows,
  headingsDeg: readonly number[],
  limits: DepartureLimits,
  share: number,
): number | null {
  const { observed, failed } = judge(rowsOfLimits(air, headingsDeg, limits));
  let days = 0;
  let met = 0;
  for (let row = 0; row < observed.length; row++) {
    if (observed[row] !== 1) continue;
    days++;
    if (failed[row] === 0) met++;
  }
  return days < daysNeeded(share) ? null : met / days;
}

/** Masses are told to a tenth of a kilogram. */
const MASS_STEP_KG = 0.1;

/**
 * The heaviest mass with which a departure still meets every limit on a share of the days, rounded down to 0.1 kg. A
 * heavier aeroplane is taken to meet no limit that a lighter one fails; the answer itself is always checked.
 * @param limitsAt the limits at a mass
 * @param leastKg, mostKg between which it is looked for, 50 to 5,000 kg
 * @returns null where not even the least mass meets them so often, or there are too few days
 * @throws RangeProblem naming leastKg or mostKg
 */
export function heaviestKg(
  air: AirRows,
  headingsDeg: readonly number[],
  limitsAt: (massKg: number) => DepartureLimits,
  share: number,
  leastKg: number,
  mostKg: number,
): number | null {
  requireRange('leastKg', leastKg, 50, 5000, 'kg');
  requireRange('mostKg', mostKg, leastKg, 5000, 'kg');
  const meets = (massKg: number) =>
    (shareMeeting(air, headingsDeg, limitsAt(massKg), share) ?? -1) >= share - 1e-9;
  if (!meets(leastKg)) return null;
  if (meets(mostKg)) return mostKg;
  let low = 0;
  let high = Math.ceil((mostKg - leastKg) / MASS_STEP_KG);
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (meets(leastKg + middle * MASS_STEP_KG)) low = middle;
    else high = middle;
  }
  // On whole tenths: leastKg need not be one.
  const found = Math.floor((leastKg + low * MASS_STEP_KG) / MASS_STEP_KG + 1e-6) * MASS_STEP_KG;
  return found >= leastKg ? found : leastKg;
}
