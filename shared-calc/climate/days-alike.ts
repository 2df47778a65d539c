import { InputProblem, requireRange } from '../problem.ts';
import { cholesky, solveLower, solveLowerTransposed } from '../numeric/cholesky.ts';
import { quantileReordering } from './quantile.ts';

/** The air at one hour: today's, or that of a day of the record. */
export interface MomentAir {
  readonly temperatureC: number;
  readonly dewPointC: number;
  readonly settingHpa: number;
}

/** A day of the record that has a report at the hour in question. */
export interface CourseOfDay {
  readonly year: number;
  /** From the date in question; negative before it. */
  readonly daysOff: number;
  readonly air: MomentAir;
  /** The figure at that hour and at each later one of the same day; NaN where there is none. */
  readonly figure: Float64Array;
}

/** How the rest of today may go, hour by hour from the hour of its observation: eight days in ten lie between low and high. */
export interface RestOfDay {
  readonly candidateCount: number;
  readonly alikeCount: number;
  /** Nine in ten of the days that began alike are within these of today. */
  readonly within: MomentAir;
  /** One for each hour of the courses; null where too few of the days have it. */
  readonly hours: readonly ({
    readonly low: number;
    readonly median: number;
    readonly high: number;
  } | null)[];
}

/** How the same procedure does on days that it has not seen: each year in turn left out of the record. */
export interface Hindcast {
  /** Days of left-out years that were asked. */
  readonly testCount: number;
  /** Share of their later hours that lay between low and high. */
  readonly heldShare: number;
  /** Mean width against that of the plain season's band, for the same hours. */
  readonly widthRatio: number;
  /** Held 75 to 85 % and narrower than the season's: worth showing. */
  readonly isTrusted: boolean;
}

/** The band's ends have ten days beyond them. */
export const ALIKE_DAYS = 100;
/** A hundred of two hundred days are no choice at all: from here on the likest half. */
export const CANDIDATES_NEEDED = 200;
const LOW = 0.1;
const HIGH = 0.9;
const HELD_LEAST = 0.75;
const HELD_MOST = 0.85;
const MOST_TESTS = 400;
const TESTED_DAYS_OFF = 7;

/**
 * The rest of the day from days of the record that began alike.
 *
 * Alike is a small distance in temperature, dew point and altimeter setting at the hour, each counted in its own spread
 * among the days; the likest quarter is taken, at least 100. What they did from that hour on is added to today's figure:
 * not where they got to, but how far they went, less what goes with the small differences of their beginning and of
 * their date (a linear fit among them).
 * @param candidates days around the date, of every year
 * @param todayFigure of the same kind as the courses
 * @returns null with fewer than 200 candidates
 * @source analogue forecasting: E. N. Lorenz 1969, "Atmospheric predictability as revealed by naturally occurring
 *   analogues", J. Atmos. Sci. 26; the linear fit among the neighbours: W. S. Cleveland 1979, J. Am. Stat. Assoc. 74; the distance
 *   and the share taken: common practice, no source, held by `hindcast`
 * @throws InputProblem where the courses differ in length; RangeProblem where the air or the figure is no number
 */
export function restOfDay(
  candidates: readonly CourseOfDay[],
  today: MomentAir,
  todayFigure: number,
): RestOfDay | null {
  requireCourses(candidates);
  for (const [field, value] of Object.entries({ ...today, todayFigure }))
    requireRange(field, value as number, -10_000, 10_000, '');
  if (candidates.length < CANDIDATES_NEEDED) return null;
  const alike = likest(candidates, today, spreads(candidates));
  const off = (of: (air: MomentAir) => number) =>
    quantileReordering(
      Float64Array.from(alike, ({ air }) => Math.abs(of(air) - of(today))),
      HIGH,
    );
  return {
    candidateCount: candidates.length,
    alikeCount: alike.length,
    within: {
      temperatureC: off((air) => air.temperatureC),
      dewPointC: off((air) => air.dewPointC),
      settingHpa: off((air) => air.settingHpa),
    },
    hours: bandsFrom(alike, today, todayFigure, spreads(candidates)),
  };
}

/**
 * Hold `restOfDay` against days that it has not seen: each tested day is answered from the other years alone, and so is
 * the plain season's band beside it. The days tested are those within a week of the date, because that is where today
 * is; of long records every so many-th.
 * @returns null where the other years of some day are too few
 */
export function hindcast(candidates: readonly CourseOfDay[]): Hindcast | null {
  requireCourses(candidates);
  const near = candidates.filter(({ daysOff }) => Math.abs(daysOff) <= TESTED_DAYS_OFF);
  const every = Math.max(1, Math.ceil(near.length / MOST_TESTS));
  const tested = near.filter((_, i) => i % every === 0);
  const othersOf = new Map<number, OtherYears>();
  let asked = 0;
  let held = 0;
  let width = 0;
  let seasonWidth = 0;
  for (const day of tested) {
    let others = othersOf.get(day.year);
    if (others === undefined) {
      const days = candidates.filter(({ year }) => year !== day.year);
      if (days.length < CANDIDATES_NEEDED) return null;
      others = { days, spread: spreads(days), season: seasonBands(days) };
      othersOf.set(day.year, others);
    }
    const alike = likest(others.days, day.air, others.spread);
    bandsFrom(alike, day.air, day.figure[0] ?? NaN, others.spread, day.daysOff).forEach((band, hour) => {
      const truth = day.figure[hour] ?? NaN;
      const season = others.season[hour] ?? null;
      // The hour of the observation itself is no forecast.
      if (hour === 0 || band === null || season === null || Number.isNaN(truth)) return;
      asked++;
      if (truth >= band.low && truth <= band.high) held++;
      width += band.high - band.low;
      seasonWidth += season.high - season.low;
    });
  }
  if (asked === 0) return null;
  const heldShare = held / asked;
  const widthRatio = width / seasonWidth;
  return {
    testCount: tested.length,
    heldShare,
    widthRatio,
    isTrusted: heldShare >= HELD_LEAST && heldShare <= HELD_MOST && widthRatio < 1,
  };
}

interface OtherYears {
  days: readonly CourseOfDay[];
  spread: MomentAir;
  season: RestOfDay['hours'];
}

function requireCourses(candidates: readonly CourseOfDay[]): void {
  const length = candidates[0]?.figure.length ?? 0;
  if (candidates.some(({ figure }) => figure.length !== length))
    throw new InputProblem('candidates', 'every course needs the same hours');
}

/** Standard deviations among the days; never 0, so that a value that never varies does not decide. */
function spreads(days: readonly CourseOfDay[]): MomentAir {
  const sd = (of: (air: MomentAir) => number) => {
    const mean = days.reduce((sum, { air }) => sum + of(air), 0) / days.length;
    const square = days.reduce((sum, { air }) => sum + (of(air) - mean) ** 2, 0);
    return Math.max(1e-6, Math.sqrt(square / Math.max(1, days.length - 1)));
  };
  return {
    temperatureC: sd((air) => air.temperatureC),
    dewPointC: sd((air) => air.dewPointC),
    settingHpa: sd((air) => air.settingHpa),
  };
}

function likest(days: readonly CourseOfDay[], today: MomentAir, spread: MomentAir): CourseOfDay[] {
  const away = Float64Array.from(
    days,
    ({ air }) =>
      ((air.temperatureC - today.temperatureC) / spread.temperatureC) ** 2 +
      ((air.dewPointC - today.dewPointC) / spread.dewPointC) ** 2 +
      ((air.settingHpa - today.settingHpa) / spread.settingHpa) ** 2,
  );
  const count = Math.min(days.length, Math.max(ALIKE_DAYS, Math.round(days.length / 4)));
  const farthest = away.slice().sort()[count - 1] ?? Infinity;
  return days.filter((_, i) => (away[i] ?? Infinity) <= farthest).slice(0, count);
}

/** Where the days would take a figure from its first hour on. */
function bandsFrom(
  days: readonly CourseOfDay[],
  today: MomentAir,
  start: number,
  spread: MomentAir,
  daysOff = 0,
): RestOfDay['hours'] {
  const differences = days.map(({ air, daysOff: off }) => [
    (air.temperatureC - today.temperatureC) / spread.temperatureC,
    (air.dewPointC - today.dewPointC) / spread.dewPointC,
    (air.settingHpa - today.settingHpa) / spread.settingHpa,
    (off - daysOff) / 10,
  ]);
  return Array.from({ length: days[0]?.figure.length ?? 0 }, (_, hour) => {
    const gone = days.map(({ figure }) => (figure[hour] ?? NaN) - (figure[0] ?? NaN));
    const slope = slopes(differences, gone);
    return band(Float64Array.from(gone, (each, i) => start + (each - dot(slope, differences[i] ?? []))));
  });
}

function seasonBands(days: readonly CourseOfDay[]): RestOfDay['hours'] {
  return Array.from({ length: days[0]?.figure.length ?? 0 }, (_, hour) =>
    band(Float64Array.from(days, ({ figure }) => figure[hour] ?? NaN)),
  );
}

function band(all: Float64Array): RestOfDay['hours'][number] {
  const values = all.filter((value) => !Number.isNaN(value));
  // A few days of the hundred may lack an hour; half of them may not.
  if (values.length < ALIKE_DAYS / 2) return null;
  return {
    low: quantileReordering(values, LOW),
    median: quantileReordering(values, 0.5),
    high: quantileReordering(values, HIGH),
  };
}

/** So little that it only keeps a column that never varies from being divided by. */
const RIDGE = 1e-6;

/** Slopes of y along each column, with a constant; rows without y are left out. */
function slopes(rows: readonly (readonly number[])[], y: readonly number[]): number[] {
  const size = rows[0]?.length ?? 0;
  const means = new Float64Array(size + 1);
  let count = 0;
  rows.forEach((row, i) => {
    const value = y[i] ?? NaN;
    if (Number.isNaN(value)) return;
    count++;
    row.forEach((x, j) => (means[j] = (means[j] ?? 0) + x));
    means[size] = (means[size] ?? 0) + value;
  });
  for (let j = 0; j <= size; j++) means[j] = (means[j] ?? 0) / Math.max(1, count);
  const products = Array.from({ length: size }, (_, j) =>
    Array.from({ length: size }, (_, k) => Number(j === k) * RIDGE),
  );
  const target = Array.from({ length: size }, () => 0);
  rows.forEach((row, i) => {
    const value = (y[i] ?? NaN) - (means[size] ?? 0);
    if (Number.isNaN(value)) return;
    for (let j = 0; j < size; j++) {
      const x = (row[j] ?? 0) - (means[j] ?? 0);
      target[j] = (target[j] ?? 0) + x * value;
      const line = products[j] ?? [];
      for (let k = 0; k < size; k++) line[k] = (line[k] ?? 0) + x * ((row[k] ?? 0) - (means[k] ?? 0));
    }
  });
  const lower = cholesky(products);
  return solveLowerTransposed(lower, solveLower(lower, target));
}

function dot(a: readonly number[], b: readonly number[]): number {
  return a.reduce((sum, each, i) => sum + each * (b[i] ?? 0), 0);
}
