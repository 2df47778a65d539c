import { YEARS_NEEDED } from '../days-needed.ts';
import { quantileReordering } from '../quantile.ts';
import { probBelow } from '../safe-side.ts';
import { airAt, type AirRows, type HourColumns } from './air-rows.ts';
import type { DaylightSpan } from './daylight-span.ts';
import { rowsOfLimits, type DepartureLimits } from './departure-limits.ts';
import {
  departureWindows,
  fallsTo,
  shareAt,
  type DepartureWindow,
  type HourlyShares,
  type Stretch,
} from './departure-windows.ts';
import { FIRST_DAYS_OFF, HOURS_OF_DAY, hourOdds, widenedDays, type HourOdds } from './hour-odds.ts';
import { judge, type Judged, type LimitName, type LimitRows } from './judge.ts';
import { resampledShares, type ResampledShares } from './resampled-shares.ts';
import { MOST_DAYS_OFF } from '../near-date.ts';
import { rowsAround, type CalendarDay, type RowsAround } from './rows-around.ts';
import { takeAlong, type Steps, type TakeAlong } from './take-along.ts';
import { daysNeeded } from '../days-needed.ts';

/** Everything that is asked, in numbers. */
export interface DepartureQuestion {
  readonly date: CalendarDay;
  /** How sure: 0.5 to 0.99. */
  readonly share: number;
  readonly elevationM: number;
  readonly headingsDeg: readonly number[];
  readonly limits: DepartureLimits;
  /** null where the sun does not come up to the rule chosen. */
  readonly daylight: DaylightSpan | null;
  /** What the flight leaves of the daylight: see timesInDaylight; null without any. */
  readonly times: Stretch | null;
  /** Figures as a person reads them off, for the rule to take along. */
  readonly steps: Steps;
}

/** One hour of the day, at its full hour. */
export interface PlannedHour extends HourOdds {
  /** null where there are too few days. */
  readonly share: number | null;
  /** Nine times in ten between these, with other years like the record's. */
  readonly shareLow: number | null;
  readonly shareHigh: number | null;
  /** The limit that most of the days fail; null where none fails. */
  readonly failsMost: LimitName | null;
  /** Quantiles at the share asked, on the bad side of each: at most so high, at least so steep; null where too few. */
  readonly densityAltitudeM: number | null;
  /** Of the landing where that is asked. */
  readonly takeOffM: number | null;
  readonly climbRateMs: number | null;
  readonly climbGradientRatio: number | null;
  readonly temperatureC: number | null;
}

export interface DeparturePlan {
  readonly limitNames: readonly LimitName[];
  /** All 24, from 0. */
  readonly hours: readonly PlannedHour[];
  readonly halfDays: number;
  readonly daysNeeded: number;
  /** Years with a day in the question. */
  readonly yearCount: number;
  /** Fewer years than can tell how years differ. */
  readonly isFewYears: boolean;
  /** Hours of daylight that have their days. */
  readonly answeredHours: readonly number[];
  readonly windows: readonly PlannedWindow[];
  readonly resampled: Pick<ResampledShares, 'of' | 'groupCount'>;
  readonly takeAlong: TakeAlong | null;
}

export interface PlannedWindow extends DepartureWindow {
  /** The least share of days inside all limits at any time of it; null where there is none to take off at. */
  readonly leastShare: number | null;
  /** The least share inside the take-off window, as other years might have shown it, nine times in ten. */
  readonly shareLow: number | null;
  readonly shareHigh: number | null;
  /** What most days fail at the full hour after its end, and before its beginning; null where daylight ends it. */
  readonly endsBy: LimitName | null;
  readonly beginsBy: LimitName | null;
  /** When, after it, only one day in two is left; null where it does not come to that in the daylight. */
  readonly halfAtH: number | null;
}

/** The interval is said nine times in ten, as everywhere. */
const LOW_PROB = 0.05;
const HIGH_PROB = 0.95;

/**
 * The whole answer to "when may I take off": every hour of the record around the date judged against all limits together,
 * windows, how far other years might differ, and the rule to take along.
 * @param hours a record of observations, one report an hour of the local clock; never averages or a model
 * @throws RangeProblem, InputProblem from its parts
 */
export function planDeparture(hours: HourColumns, question: DepartureQuestion): DeparturePlan {
  const { share, limits: asked, daylight, times, headingsDeg } = question;
  const lightHours = daylight === null ? [] : hoursOf(daylight);
  const around = (days: number) => {
    const rows = rowsAround(hours.localHour, question.date, days);
    const air = airAt(hours, rows.place);
    const limits = rowsOfLimits(air, headingsDeg, asked);
    const judged = judge(limits);
    return { rows, air, limits, judged, halfDays: widenedDays(rows, judged.observed, lightHours, share) };
  };
  // Most records have their days within a week, and three weeks are three times the work.
  const week = around(FIRST_DAYS_OFF);
  const inWeek = hourOdds(week.rows, week.judged, week.limits.length, FIRST_DAYS_OFF);
  const isEnough = lightHours.every((hour) => (inWeek[hour]?.dayCount ?? 0) >= daysNeeded(share));
  const { rows, air, limits, judged, halfDays } = isEnough ? week : around(MOST_DAYS_OFF);
  const odds = hourOdds(rows, judged, limits.length, halfDays);
  const needed = daysNeeded(share);
  const shares: HourlyShares = odds.map(({ dayCount, metCount }) =>
    dayCount < needed ? null : metCount / dayCount,
  );
  const resampled = resampledShares(rows, judged, halfDays);
  const failsMost = odds.map(({ failCounts }) => mostOf(failCounts, limits));
  const windows =
    daylight === null || times === null
      ? []
      : departureWindows(shares, share, daylight, times).map((opening): PlannedWindow => ({
          ...opening,
          leastShare: leastInside(opening, shares),
          ...intervalInside(opening, resampled),
          endsBy: endedBy(
            opening.weather.toH,
            daylight.toH,
            Math.ceil(opening.weather.toH + 1e-9),
            failsMost,
          ),
          beginsBy: endedBy(
            opening.weather.fromH,
            daylight.fromH,
            Math.floor(opening.weather.fromH - 1e-9),
            failsMost,
          ),
          halfAtH: fallsTo(shares, 0.5, opening.weather.toH, daylight.toH),
        }));
  const figures = quantilesByHour(rows, judged, air, limits, halfDays, share, needed);
  const years = new Set<number>();
  rows.year.forEach((year, row) => {
    if (judged.observed[row] === 1 && Math.abs(rows.daysOff[row] ?? 0) <= halfDays) years.add(year);
  });
  return {
    limitNames: limits.map(({ name }) => name),
    hours: odds.map((each, hour) => ({
      ...each,
      share: shares[hour] ?? null,
      ...intervalAt(resampled, hour, shares[hour] ?? null),
      failsMost: failsMost[hour] ?? null,
      ...(figures[hour] ?? NO_FIGURES),
    })),
    halfDays,
    daysNeeded: needed,
    yearCount: years.size,
    isFewYears: years.size < YEARS_NEEDED,
    answeredHours: lightHours.filter((hour) => shares[hour] !== null),
    windows,
    resampled: { of: resampled.of, groupCount: resampled.groupCount },
    takeAlong: ruleOf(windows, rows, judged, air, halfDays, question),
  };
}

/** Full hours of a span, as hours of the day, each once. */
export function hoursOf({ fromH, toH }: { readonly fromH: number; readonly toH: number }): number[] {
  const hours = new Set<number>();
  for (let hour = Math.ceil(fromH - 1e-9); hour <= toH + 1e-9 && hours.size < HOURS_OF_DAY; hour++)
    hours.add(((hour % HOURS_OF_DAY) + HOURS_OF_DAY) % HOURS_OF_DAY);
  return [...hours];
}

function mostOf(failCounts: readonly number[], limits: readonly LimitRows[]): LimitName | null {
  let found: LimitName | null = null;
  let most = 0;
  failCounts.forEach((count, index) => {
    if (count > most) {
      most = count;
      found = limits[index]?.name ?? null;
    }
  });
  return found;
}

/** What ends a stretch at a time: nothing where the daylight does, otherwise what fails most at the full hour beyond. */
function endedBy(
  atH: number,
  daylightH: number,
  hourBeyond: number,
  failsMost: readonly (LimitName | null)[],
): LimitName | null {
  if (Math.abs(atH - daylightH) < 1e-6) return null;
  return failsMost[((hourBeyond % HOURS_OF_DAY) + HOURS_OF_DAY) % HOURS_OF_DAY] ?? null;
}

const NO_FIGURES = {
  densityAltitudeM: null,
  takeOffM: null,
  climbRateMs: null,
  climbGradientRatio: null,
  temperatureC: null,
};
type HourFigures = {
  [name in keyof typeof NO_FIGURES]: number | null;
};

function quantilesByHour(
  rows: RowsAround,
  judged: Judged,
  air: AirRows,
  limits: readonly LimitRows[],
  halfDays: number,
  share: number,
  needed: number,
): HourFigures[] {
  const places = Array.from({ length: HOURS_OF_DAY }, (): number[] => []);
  rows.hour.forEach((hour, row) => {
    if (judged.observed[row] === 1 && Math.abs(rows.daysOff[row] ?? 0) <= halfDays) places[hour]?.push(row);
  });
  const valueOf = (name: LimitName) => limits.find((limit) => limit.name === name)?.value;
  const work = new Float64Array(Math.max(1, ...places.map(({ length }) => length)));
  return places.map((chosen) => {
    const quantile = (column: Float64Array | undefined, prob: number) => {
      if (column === undefined || chosen.length < needed) return null;
      for (let i = 0; i < chosen.length; i++) work[i] = column[chosen[i] ?? 0] ?? NaN;
      const found = quantileReordering(work.subarray(0, chosen.length), prob);
      // Beyond the manual's table there is no figure to show.
      return Number.isFinite(found) ? found : null;
    };
    return {
      densityAltitudeM: quantile(air.densityAltitudeM, share),
      takeOffM: quantile(valueOf('takeOff') ?? valueOf('landing'), share),
      climbRateMs: quantile(valueOf('climbRate'), probBelow(share, 'down')),
      climbGradientRatio: quantile(valueOf('climbGradient'), probBelow(share, 'down')),
      temperatureC: quantile(air.temperatureC, share),
    };
  });
}

function intervalAt(
  resampled: ResampledShares,
  atH: number,
  estimate: number | null,
): { shareLow: number | null; shareHigh: number | null } {
  if (estimate === null) return { shareLow: null, shareHigh: null };
  return interval(resampled, [atH]);
}

/** Linear between full hours, the share is least at an end or at a full hour. */
function timesOf({ fromH, toH }: Stretch): number[] {
  const times = [fromH, toH];
  for (let hour = Math.ceil(fromH); hour < toH; hour++) times.push(hour);
  return times;
}

function leastInside({ takeOff }: DepartureWindow, shares: HourlyShares): number | null {
  if (takeOff === null) return null;
  const found = timesOf(takeOff).flatMap((atH) => shareAt(shares, atH) ?? []);
  return found.length === 0 ? null : Math.min(...found);
}

/** Over the draws: the least share at the window's ends and at each full hour inside it. */
function intervalInside(
  { takeOff }: DepartureWindow,
  resampled: ResampledShares,
): { shareLow: number | null; shareHigh: number | null } {
  if (takeOff === null) return { shareLow: null, shareHigh: null };
  return interval(resampled, timesOf(takeOff));
}

function interval(
  { share, drawCount }: ResampledShares,
  timesH: readonly number[],
): { shareLow: number | null; shareHigh: number | null } {
  const drawn = (draw: number, hour: number) =>
    share[draw * HOURS_OF_DAY + (((hour % HOURS_OF_DAY) + HOURS_OF_DAY) % HOURS_OF_DAY)] ?? NaN;
  const found: number[] = [];
  for (let draw = 0; draw < drawCount; draw++) {
    let least = Infinity;
    for (const timeH of timesH) {
      // As shareAt, without making anything: this runs thousands of times.
      const before = Math.floor(timeH);
      const left = drawn(draw, before);
      const value = timeH === before ? left : left + (timeH - before) * (drawn(draw, before + 1) - left);
      if (value < least) least = value;
    }
    if (least < Infinity) found.push(least);
  }
  if (found.length === 0) return { shareLow: null, shareHigh: null };
  const values = Float64Array.from(found);
  return {
    shareLow: quantileReordering(values, LOW_PROB),
    shareHigh: quantileReordering(values, HIGH_PROB),
  };
}

function ruleOf(
  windows: readonly DepartureWindow[],
  rows: RowsAround,
  judged: Judged,
  air: AirRows,
  halfDays: number,
  { steps, elevationM, headingsDeg, limits }: DepartureQuestion,
): TakeAlong | null {
  const hours = new Set(
    windows.flatMap(({ takeOff }) =>
      takeOff === null ? [] : hoursOf({ fromH: Math.floor(takeOff.fromH), toH: Math.ceil(takeOff.toH) }),
    ),
  );
  const chosen: number[] = [];
  rows.hour.forEach((hour, row) => {
    if (hours.has(hour) && judged.observed[row] === 1 && Math.abs(rows.daysOff[row] ?? 0) <= halfDays)
      chosen.push(row);
  });
  if (chosen.length === 0) return null;
  return takeAlong(airAt(air, Int32Array.from(chosen)), steps, { elevationM, headingsDeg }, limits);
}
