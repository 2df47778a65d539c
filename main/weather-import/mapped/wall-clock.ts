import type { ZoneOffsets } from '../../../shared-calc/climate/zone-offsets.ts';

/** A zone's offsets over some years, as main/requests/zone-offsets.ts finds them. */
export type ZoneOf = (timeZone: string, firstYear: number, lastYear: number) => ZoneOffsets;

/**
 * Turns what a clock on the wall showed into UTC. Where an hour comes twice, the first run counts until the clock has
 * been seen to pass it: a row that does not come after the one before belongs to the second.
 */
export class WallClock {
  readonly #timeZone: string;
  readonly #zoneOf: ZoneOf;
  readonly #years = new Map<number, ZoneOffsets>();
  #lastEpochMinute = -Infinity;

  constructor(timeZone: string, zoneOf: ZoneOf) {
    this.#timeZone = timeZone;
    this.#zoneOf = zoneOf;
  }

  /**
   * What the clock is ahead of UTC at a local moment, minutes; null where the clock never showed it (the hour that
   * summer time leaves out).
   * @param localMinute minutes since 1970-01-01 00:00 on the wall
   */
  offsetAt(localMinute: number, year: number): number | null {
    let zone = this.#years.get(year);
    if (zone === undefined) {
      zone = this.#zoneOf(this.#timeZone, year, year);
      this.#years.set(year, zone);
    }
    const { startMinutes, offsetMinutes } = zone;
    const candidates: number[] = [];
    startMinutes.forEach((start, i) => {
      const offset = offsetMinutes[i] ?? 0;
      const utc = localMinute - offset;
      if (utc >= start && utc < (startMinutes[i + 1] ?? Infinity)) candidates.push(utc);
    });
    const [first, second] = candidates;
    if (first === undefined) return null;
    const utc = second !== undefined && first <= this.#lastEpochMinute ? second : first;
    this.#lastEpochMinute = utc;
    return localMinute - utc;
  }
}
