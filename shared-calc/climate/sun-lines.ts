import { requireRange } from '../problem.ts';
import { sunDay } from '../sun/sun-day.ts';
import { offsetAtMinutes, type ZoneOffsets } from './zone-offsets.ts';

/** The edges of daylight on one date, in hours of the local clock since that date's midnight; null where there is none. */
export interface Daylight {
  dawnH: number | null;
  sunriseH: number | null;
  sunsetH: number | null;
  duskH: number | null;
}

export interface SunLine extends Daylight {
  /** Months since the beginning of the year: 6.5 is the middle of July. */
  monthOfYear: number;
}

const DAY_MINUTES = 1440;

/**
 * Dawn, sunrise, sunset and dusk for each day of a year, by the clock with its changes. A dusk after midnight is more
 * than 24.
 * @param year         1902 to 2099
 * @param latitudeDeg  -90 to 90, north positive
 * @param longitudeDeg -180 to 180, east positive
 * @param zone         the clock, over the year
 * @throws RangeProblem naming the argument, InputProblem where the zone's table is not in order
 */
export function sunLines(
  year: number,
  latitudeDeg: number,
  longitudeDeg: number,
  zone: ZoneOffsets,
): SunLine[] {
  requireRange('year', year, 1902, 2099, '');
  const lines: SunLine[] = [];
  for (let month = 0; month < 12; month++) {
    const days = new Date(Date.UTC(year, month + 1, 0)).getUTCDate();
    for (let day = 1; day <= days; day++) {
      lines.push({
        monthOfYear: month + (day - 0.5) / days,
        ...daylightOf(Date.UTC(year, month, day) / (60_000 * DAY_MINUTES), latitudeDeg, longitudeDeg, zone),
      });
    }
  }
  return lines;
}

/**
 * Dawn, sunrise, sunset and dusk on one date of the local clock. A dusk after midnight is more than 24.
 * @param localDay     days of the clock since 1970-01-01, in the years 1902 to 2099 (-24,837 to 47,481)
 * @param latitudeDeg  -90 to 90, north positive
 * @param longitudeDeg -180 to 180, east positive
 * @param zone         the clock, over that day
 * @throws RangeProblem naming the argument, InputProblem where the zone's table is not in order
 */
export function daylightOf(
  localDay: number,
  latitudeDeg: number,
  longitudeDeg: number,
  zone: ZoneOffsets,
): Daylight {
  requireRange('localDay', localDay, -24_837, 47_481, '');
  const midnight = localDay * DAY_MINUTES;
  const noon = midnight + DAY_MINUTES / 2;
  const sun = sunDay(60 * (noon - offsetAtMinutes(zone, noon)), latitudeDeg, longitudeDeg);
  const clockH = (epochS: number | null) =>
    epochS === null ? null : (epochS / 60 + offsetAtMinutes(zone, epochS / 60) - midnight) / 60;
  return {
    dawnH: clockH(sun.civilTwilight.upEpochS),
    sunriseH: clockH(sun.sun.upEpochS),
    sunsetH: clockH(sun.sun.downEpochS),
    duskH: clockH(sun.civilTwilight.downEpochS),
  };
}
