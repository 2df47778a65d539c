import { Temporal } from 'temporal-polyfill/implementation';
import type { ZoneOffsets } from '../../shared-calc/climate/zone-offsets.ts';

const known = new Map<string, ZoneOffsets>();

/**
 * What a zone's clock adds to UTC over a span of years. Kept for the next asking: finding a change takes some 3 ms.
 * @param timeZone  IANA name
 * @param firstYear the table is right from the first of January of this year (UTC) ...
 * @param lastYear  ... to the last of December of this one
 */
export function zoneOffsets(timeZone: string, firstYear: number, lastYear: number): ZoneOffsets {
  const key = `${timeZone} ${String(firstYear)} ${String(lastYear)}`;
  const before = known.get(key);
  if (before !== undefined) return before;
  // A day more at either end, because the local year begins up to 14 hours before or after UTC's.
  const end = Date.UTC(lastYear + 1, 0, 2);
  const startMinutes: number[] = [];
  const offsetMinutes: number[] = [];
  let at: Temporal.ZonedDateTime | null = Temporal.Instant.fromEpochMilliseconds(
    Date.UTC(firstYear, 0, 1) - 86_400_000,
  ).toZonedDateTimeISO(timeZone);
  while (at !== null && at.epochMilliseconds < end) {
    startMinutes.push(at.epochMilliseconds / 60_000);
    // Rounded: before about 1900 some clocks ran by seconds of their own.
    offsetMinutes.push(Math.round(at.offsetNanoseconds / 60e9));
    at = at.getTimeZoneTransition('next');
  }
  const zone = { startMinutes, offsetMinutes };
  known.set(key, zone);
  return zone;
}
