import { InputProblem } from '../problem.ts';

/** A zone's clock over a span of time, as data: what the clock adds to UTC from each change on. */
export interface ZoneOffsets {
  /** Minutes since 1970-01-01 00:00 UTC at which each offset begins, rising; the first reaches back without end. */
  startMinutes: readonly number[];
  /** Local time less UTC in minutes, one for each start: -420 for UTC-7. */
  offsetMinutes: readonly number[];
}

/**
 * Minutes that the clock adds to UTC at an instant.
 * @param epochMinute minutes since 1970-01-01 00:00 UTC
 * @throws InputProblem where the table is empty or its columns differ in length
 */
export function offsetAtMinutes(zone: ZoneOffsets, epochMinute: number): number {
  requireZone(zone);
  let at = zone.startMinutes.length - 1;
  while (at > 0 && (zone.startMinutes[at] ?? 0) > epochMinute) at--;
  return zone.offsetMinutes[at] ?? 0;
}

/** @throws InputProblem where the table is empty, its columns differ in length, or its starts do not rise */
export function requireZone({ startMinutes, offsetMinutes }: ZoneOffsets): void {
  if (startMinutes.length === 0 || startMinutes.length !== offsetMinutes.length)
    throw new InputProblem('zone', 'one start and one offset are needed for each stretch of the clock');
  for (let i = 1; i < startMinutes.length; i++)
    if (!((startMinutes[i] ?? 0) > (startMinutes[i - 1] ?? 0)))
      throw new InputProblem('zone.startMinutes', 'each start must be later than the one before it');
}
