import { requireRange } from '../../problem.ts';
import type { DaylightSpan } from './daylight-span.ts';

/** A stretch of the day, in hours of the local clock. */
export interface Stretch {
  readonly fromH: number;
  readonly toH: number;
}

/** Times are rounded inward to this. */
export const WINDOW_STEP_MIN = 10;

/** The share of days by the clock, from its hourly values; null where an hour has too few days. */
export type HourlyShares = readonly (number | null)[];

/**
 * The share at any time of day: linear between the two full hours around it, null beside an hour without one.
 * @param shares one for each hour from 0 to 23; the day comes round
 * @param atH    hours of the local clock; may lie outside 0 to 24
 */
export function shareAt(shares: HourlyShares, atH: number): number | null {
  const before = Math.floor(atH);
  const left = valueAt(shares, before);
  if (left === null || atH === before) return left;
  const right = valueAt(shares, before + 1);
  return right === null ? null : left + (atH - before) * (right - left);
}

/**
 * Stretches of the daylight in which at least a share of the days meets every limit: from crossing to crossing, where
 * the share runs in a straight line between full hours. An hour with too few days ends a stretch at the full hour before it
 * and lets the next begin at the full hour after it; nothing is assumed across it. Not rounded yet.
 * @param share 0 to 1
 * @throws RangeProblem naming share
 */
export function stretchesAbove(shares: HourlyShares, share: number, within: Stretch): Stretch[] {
  requireRange('share', share, 0, 1, '');
  const found: { fromH: number; toH: number }[] = [];
  const add = (fromH: number, toH: number) => {
    const from = Math.max(fromH, within.fromH);
    const to = Math.min(toH, within.toH);
    if (to < from) return;
    const last = found.at(-1);
    // The next piece begins where this one ended: one stretch.
    if (last !== undefined && from <= last.toH + 1e-9) last.toH = Math.max(last.toH, to);
    else found.push({ fromH: from, toH: to });
  };
  // A share counted as 90 of 100 meets nine in ten.
  const enough = share - 1e-9;
  for (let hour = Math.floor(within.fromH); hour <= Math.ceil(within.toH); hour++) {
    const left = valueAt(shares, hour);
    if (left === null) continue;
    const right = valueAt(shares, hour + 1);
    if (right === null) {
      if (left >= enough) add(hour, hour);
      continue;
    }
    if (left >= enough && right >= enough) add(hour, hour + 1);
    else if (left >= enough) add(hour, hour + Math.max(0, left - share) / (left - right));
    else if (right >= enough) add(hour + Math.min(1, (share - left) / (right - left)), hour + 1);
  }
  return found;
}

/**
 * The same stretch with both ends rounded inward to ten minutes; null where less than ten minutes are left.
 * A billionth of an hour is rounding: 9.5 computed as 9.499999999 is 09:30.
 */
export function roundedInward({ fromH, toH }: Stretch): Stretch | null {
  const steps = 60 / WINDOW_STEP_MIN;
  const from = Math.ceil(fromH * steps - 1e-7) / steps;
  const to = Math.floor(toH * steps + 1e-7) / steps;
  return to > from ? { fromH: from, toH: to } : null;
}

/** A stretch of good weather with what the daylight leaves of it. */
export interface DepartureWindow {
  /** The weather alone, from crossing to crossing inside the daylight; not rounded. */
  readonly weather: Stretch;
  /** What the flight leaves of it (see timesInDaylight), rounded inward; null where there is none. */
  readonly takeOff: Stretch | null;
}

/**
 * Windows of a day: where the weather is good enough, cut to the times that the flight leaves in daylight.
 * @param times as timesInDaylight gives them
 */
export function departureWindows(
  shares: HourlyShares,
  share: number,
  daylight: DaylightSpan,
  times: Stretch,
): DepartureWindow[] {
  return stretchesAbove(shares, share, daylight).map((weather) => ({
    weather,
    takeOff: roundedInward({
      fromH: Math.max(weather.fromH, times.fromH),
      toH: Math.min(weather.toH, times.toH),
    }),
  }));
}

/**
 * When, after a time, the share first falls to a lower one; null where it does not before the end, or the hours in
 * between have too few days.
 */
export function fallsTo(shares: HourlyShares, share: number, afterH: number, untilH: number): number | null {
  requireRange('share', share, 0, 1, '');
  for (let hour = Math.floor(afterH); hour < untilH; hour++) {
    const left = shareAt(shares, Math.max(hour, afterH));
    const right = valueAt(shares, hour + 1);
    if (left === null || right === null) return null;
    if (left <= share) return Math.max(hour, afterH);
    if (right <= share) {
      const from = Math.max(hour, afterH);
      const at = from + ((left - share) / (left - right)) * (hour + 1 - from);
      return at <= untilH ? at : null;
    }
  }
  return null;
}

function valueAt(shares: HourlyShares, hour: number): number | null {
  return shares[((hour % 24) + 24) % 24] ?? null;
}
