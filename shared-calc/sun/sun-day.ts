import { bracketedRoot } from '../numeric/bracketed-root.ts';
import { requireRange } from '../problem.ts';
import { elevationDeg, FIRST_EPOCH_S, hourAngleRad, LAST_EPOCH_S, requirePlace } from './solar-elevation.ts';

/** Rising through an elevation before the solar noon of a date and falling through it after. */
export interface Crossings {
  /** UTC; null where the sun does not rise through the elevation that morning. */
  readonly upEpochS: number | null;
  /** UTC; null where it does not fall through it that evening. */
  readonly downEpochS: number | null;
  /** When both are null: which side it stays on. */
  readonly state: 'crosses' | 'aboveAllDay' | 'belowAllDay';
}

export interface SunDay {
  /** The sun's highest point of the date, UTC. It may fall before or after 12:00 on the clock. */
  readonly transitEpochS: number;
  /** Sunrise and sunset: the upper edge on a level horizon at sea level, refraction 34 arcminutes. */
  readonly sun: Crossings;
  /** Dawn and dusk: the centre 6 degrees below the horizon. Night lies outside them (14 CFR 1.1). */
  readonly civilTwilight: Crossings;
}

/** Mean refraction of 34 arcminutes and the sun's mean half diameter of 16, as the almanacs use them. */
export const SUNRISE_ELEVATION_DEG = -50 / 60;
/** Centre of the sun, without refraction. */
export const CIVIL_TWILIGHT_ELEVATION_DEG = -6;

/**
 * Sunrise, sunset, dawn and dusk that belong to one local date: those around its solar noon. Near midsummer in
 * high latitudes, or far from the zone's own meridian, dusk may fall after midnight by the clock; it still
 * belongs to the date whose evening it ends.
 * Within a minute of the published tables between 65 degrees south and north. Nearer the poles the sun grazes
 * the horizon and minutes depend on the refraction of the day. Mountains, and a field above its horizon, are
 * left out.
 * @param clockNoonEpochS 12:00 on the place's clock on that date, UTC, 1901 to 2100. It names the date also
 *   where the clock runs a day ahead of the sun (east of the date line by zone, west of it by longitude)
 * @param latitudeDeg  −90 to 90, north positive
 * @param longitudeDeg −180 to 180, east positive
 * @throws RangeProblem naming the argument that lies outside its range
 * @source The Astronomical Almanac, explanation of rising and setting (50 arcminutes) and of civil twilight (6 degrees)
 * @example Kiritimati (2 N, 157.4 W, zone UTC+14) on 1 January: clock noon is 22:00 UTC of 31 December
 */
export function sunDay(clockNoonEpochS: number, latitudeDeg: number, longitudeDeg: number): SunDay {
  requireRange('clockNoonEpochS', clockNoonEpochS, FIRST_EPOCH_S + DAY_S, LAST_EPOCH_S - DAY_S, 's');
  requirePlace(latitudeDeg, longitudeDeg);
  const transitEpochS = nearestTransitEpochS(clockNoonEpochS, longitudeDeg);
  const crossings = (thresholdDeg: number) =>
    crossingsOf(transitEpochS, (epochS) => elevationDeg(epochS, latitudeDeg, longitudeDeg) - thresholdDeg);
  return {
    transitEpochS,
    sun: crossings(SUNRISE_ELEVATION_DEG),
    civilTwilight: crossings(CIVIL_TWILIGHT_ELEVATION_DEG),
  };
}

const DAY_S = 86400;
const HALF_DAY_S = DAY_S / 2;

function nearestTransitEpochS(clockNoonEpochS: number, longitudeDeg: number): number {
  let epochS = clockNoonEpochS;
  // The hour angle grows by 2 pi a day to within a few parts in ten thousand: each step gains four digits.
  for (let i = 0; i < 3; i++) epochS -= (hourAngleRad(epochS, longitudeDeg) / (2 * Math.PI)) * DAY_S;
  return epochS;
}

function crossingsOf(transitEpochS: number, aboveDeg: (epochS: number) => number): Crossings {
  const highest = highestPoint(transitEpochS, aboveDeg);
  if (highest.value < 0) return { upEpochS: null, downEpochS: null, state: 'belowAllDay' };
  const crossing = (midnightEpochS: number): number | null => {
    const lowest = lowestPoint(midnightEpochS, aboveDeg);
    return lowest.value > 0 ? null : bracketedRoot(aboveDeg, lowest.epochS, highest.epochS);
  };
  const upEpochS = crossing(transitEpochS - HALF_DAY_S);
  const downEpochS = crossing(transitEpochS + HALF_DAY_S);
  return {
    upEpochS,
    downEpochS,
    state: upEpochS === null && downEpochS === null ? 'aboveAllDay' : 'crosses',
  };
}

interface Extreme {
  epochS: number;
  value: number;
}

/** The sun stands highest near its transit, but beside it as its declination changes: minutes, near the poles hours. */
function highestPoint(nearEpochS: number, aboveDeg: (epochS: number) => number): Extreme {
  const value = aboveDeg(nearEpochS);
  if (value >= 0) return { epochS: nearEpochS, value };
  const extreme = lowestPoint(nearEpochS, (epochS) => -aboveDeg(epochS));
  return { epochS: extreme.epochS, value: -extreme.value };
}

function lowestPoint(nearEpochS: number, aboveDeg: (epochS: number) => number): Extreme {
  const value = aboveDeg(nearEpochS);
  // Below the threshold already is all that a bracket needs.
  if (value <= 0) return { epochS: nearEpochS, value };
  let from = nearEpochS - HALF_DAY_S / 2;
  let to = nearEpochS + HALF_DAY_S / 2;
  while (to - from > 1) {
    const third = (to - from) / 3;
    if (aboveDeg(from + third) < aboveDeg(to - third)) to -= third;
    else from += third;
  }
  const epochS = (from + to) / 2;
  return { epochS, value: aboveDeg(epochS) };
}
