import { requireRange } from '../../problem.ts';
import { solarElevationDeg } from '../../sun/solar-elevation.ts';
import { CIVIL_TWILIGHT_ELEVATION_DEG, SUNRISE_ELEVATION_DEG } from '../../sun/sun-day.ts';
import { daylightOf } from '../sun-lines.ts';
import { offsetAtMinutes, type ZoneOffsets } from '../zone-offsets.ts';
import type { Stretch } from './departure-windows.ts';

/** Which daylight the whole flight has to keep to. */
export type DaylightRule =
  | { readonly rule: 'sunset' }
  | { readonly rule: 'civil twilight' }
  /** A local rule of the kind "from 30 min before sunrise to 30 min after sunset". */
  | { readonly rule: 'local'; readonly beforeSunriseS: number; readonly afterSunsetS: number };

/** One day of daylight by the rule, in hours of the local clock since that date's midnight; an end may lie outside 0 to 24. */
export interface DaylightSpan {
  readonly fromH: number;
  readonly toH: number;
  /** Whether the sun sets that day at all; where it does not, the span is the whole date. */
  readonly isAllDay: boolean;
}

export interface Place {
  /** -90 to 90, north positive. */
  readonly latitudeDeg: number;
  /** -180 to 180, east positive. */
  readonly longitudeDeg: number;
}

/**
 * Daylight of one date at a place by the rule chosen; null where the sun does not come up to it.
 * @param localDay days of the field's clock since 1970-01-01, in the years 1902 to 2099
 * @param zone     the field's clock, over that date
 * @throws RangeProblem naming localDay, a coordinate or the local rule's seconds (0 to 3 h)
 */
export function daylightSpan(
  localDay: number,
  { latitudeDeg, longitudeDeg }: Place,
  zone: ZoneOffsets,
  rule: DaylightRule,
): DaylightSpan | null {
  const { dawnH, sunriseH, sunsetH, duskH } = daylightOf(localDay, latitudeDeg, longitudeDeg, zone);
  let beforeS = 0;
  let afterS = 0;
  if (rule.rule === 'local') {
    requireRange('beforeSunriseS', rule.beforeSunriseS, 0, LONGEST_RULE_S, 's');
    requireRange('afterSunsetS', rule.afterSunsetS, 0, LONGEST_RULE_S, 's');
    beforeS = rule.beforeSunriseS;
    afterS = rule.afterSunsetS;
  }
  const upH = rule.rule === 'civil twilight' ? dawnH : sunriseH;
  const downH = rule.rule === 'civil twilight' ? duskH : sunsetH;
  if (upH === null && downH === null) {
    const noon = localDay * DAY_MINUTES + DAY_MINUTES / 2;
    const noonDeg = solarElevationDeg(60 * (noon - offsetAtMinutes(zone, noon)), latitudeDeg, longitudeDeg);
    // It stays on one side all day, also at noon by the clock.
    if (noonDeg < (rule.rule === 'civil twilight' ? CIVIL_TWILIGHT_ELEVATION_DEG : SUNRISE_ELEVATION_DEG))
      return null;
    return { fromH: 0, toH: 24, isAllDay: true };
  }
  return {
    fromH: upH === null ? 0 : upH - beforeS / 3600,
    toH: downH === null ? 24 : downH + afterS / 3600,
    isAllDay: false,
  };
}

/** A flight that has to lie in daylight together with its reserve: its take-off is asked, or its landing. */
export interface AskedFlight {
  readonly phase: 'take-off' | 'landing';
  /** 0 to 24 h each. */
  readonly flightS: number;
  readonly reserveS: number;
}

/**
 * The times of one day that a flight leaves: take-offs from which it and its reserve end inside the daylight, or landings
 * whose flight began inside it and that leave the reserve before its end.
 * @returns hours of the local clock; the end lies before the beginning where the flight is too long for the day
 * @throws RangeProblem naming flightS or reserveS
 */
export function timesInDaylight(
  { fromH, toH }: DaylightSpan,
  { phase, flightS, reserveS }: AskedFlight,
): Stretch {
  requireRange('flightS', flightS, 0, DAY_S, 's');
  requireRange('reserveS', reserveS, 0, DAY_S, 's');
  return phase === 'landing'
    ? { fromH: fromH + flightS / 3600, toH: toH - reserveS / 3600 }
    : { fromH, toH: toH - (flightS + reserveS) / 3600 };
}

const DAY_S = 86_400;
const DAY_MINUTES = 1440;
const LONGEST_RULE_S = 3 * 3600;
