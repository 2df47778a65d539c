import tzLookup from '@photostructure/tz-lookup';
import { Temporal } from 'temporal-polyfill/implementation';

/**
 * Minutes that a place's standard time is ahead of UTC, whatever summer time it keeps: the lesser of its winter's and
 * summer's.
 * @param year in which; zones have changed over the years
 */
export function standardOffsetMinutes(latitudeDeg: number, longitudeDeg: number, year: number): number {
  const timeZone = tzLookup(latitudeDeg, longitudeDeg);
  const offsets = [1, 7].map((month) =>
    Math.round(Temporal.ZonedDateTime.from({ year, month, day: 1, timeZone }).offsetNanoseconds / 60e9),
  );
  return Math.min(...offsets);
}
