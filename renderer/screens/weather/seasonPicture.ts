import type { OutputOf } from '../../../main/requests/table.ts';
import { DAYS_FOR_WORST } from '../../../shared-calc/climate/days-needed.ts';
import type { FigureUnits, WeatherFigure } from '../../../shared-calc/wording/weather-figure.ts';
import type { PaddedGrid } from '../../plot/contourLines.ts';

const MONTHS = 12;
const HOURS = 24;
/** Tints of the season scale, pale to deep. */
const TINTS = 11;
/**
 * How far apart the isolines of a figure are in each unit, and where the palest tint ends: fixed, so that two fields
 * compare. Altitudes are counted from two steps below the field's own elevation: cool mornings lie below it.
 */
const SCALES = {
  altitude: { ft: { step: 500 }, m: { step: 150 } },
  temperature: {
    degC: { step: 5, origin: -10 },
    degF: { step: 10, origin: 10 },
    K: { step: 5, origin: 265 },
  },
  humidity: { ft: { step: 50, origin: 50 }, m: { step: 15, origin: 15 } },
  // Tailwinds are the deep end.
  headwind: {
    kt: { step: 3, origin: -9 },
    'km/h': { step: 5, origin: -15 },
    mph: { step: 3, origin: -9 },
    'm/s': { step: 1.5, origin: -4.5 },
  },
  crosswind: {
    kt: { step: 3, origin: 3 },
    'km/h': { step: 5, origin: 5 },
    mph: { step: 3, origin: 3 },
    'm/s': { step: 1.5, origin: 1.5 },
  },
  distance: { m: { step: 25, origin: 300 }, ft: { step: 100, origin: 1000 } },
  // Counted the way they get worse: below nothing.
  margin: { m: { step: 100, origin: -900 }, ft: { step: 300, origin: -2700 } },
  climb: { 'ft/min': { step: 100, origin: -900 }, 'm/s': { step: 0.5, origin: -4.5 } },
} as const;

export interface PictureScale {
  /** In the unit shown. */
  step: number;
  /** Where the second tint begins, counted the way the figure gets worse. */
  origin: number;
}

/** @param elevation of the field, in the unit shown */
export function scaleOf(figure: WeatherFigure, units: FigureUnits, elevation: number): PictureScale {
  switch (figure) {
    case 'densityAltitude': {
      const { step } = SCALES.altitude[units.altitude];
      return { step, origin: (Math.floor(elevation / step) - STEPS_BELOW_FIELD + 1) * step };
    }
    case 'temperature':
      return SCALES.temperature[units.temperature];
    case 'humidityShare':
      return SCALES.humidity[units.altitude];
    case 'headwind':
    case 'crosswind':
      return SCALES[figure][units.speed];
    case 'takeOffDistance':
      return SCALES.distance[units.distance];
    case 'runwayMargin':
      return SCALES.margin[units.distance];
    case 'climbRate':
      return SCALES.climb[units.climbRate];
  }
}

/** Of days beyond a limit, in per cent. */
export const SHARE_SCALE: PictureScale = { step: 10, origin: 10 };
const STEPS_BELOW_FIELD = 2;

/** What is drawn of a season, cell by cell: in the unit kept inside, or per cent of the days beyond the limit. */
export function pictureValues(
  season: Pick<OutputOf<'weather.season'>, 'quantiles' | 'worst' | 'beyondCount' | 'dayCount'>,
  view: 'share' | 'worst' | 'beyond',
  share: number,
): readonly (number | null)[] {
  if (view === 'worst') return season.worst;
  if (view === 'share') return season.quantiles.find((each) => each.share === share)?.value ?? [];
  return season.dayCount.map((days, cell) =>
    days < DAYS_FOR_WORST || season.beyondCount === null
      ? null
      : (100 * (season.beyondCount[cell] ?? 0)) / days,
  );
}

/** Cells without a figure that stand side by side in one month. */
export interface TooFewRun {
  month: number;
  fromHour: number;
  /** Not included. */
  toHour: number;
}

/**
 * The cells as a grid with padding for contours: the day and the year come round, so what stands beyond the last hour is
 * the first, and beyond December January. Cells without a figure borrow their nearest neighbour's, because a contour
 * needs one everywhere; what is drawn there is covered again (tooFewRuns).
 * @param values 12 x 24, month after month
 */
export function paddedSeason(values: readonly (number | null)[]): PaddedGrid {
  const columns = HOURS + 2;
  const rows = MONTHS + 2;
  const full = filled(values);
  return {
    columns,
    rows,
    values: Array.from({ length: columns * rows }, (_, i) => {
      const month = (Math.floor(i / columns) - 1 + MONTHS) % MONTHS;
      const hour = ((i % columns) - 1 + HOURS) % HOURS;
      return full[month * HOURS + hour] ?? 0;
    }),
  };
}

function filled(values: readonly (number | null)[]): number[] {
  const known = values.flatMap((value, cell) => (value === null ? [] : [{ cell, value }]));
  return values.map((value, cell) => {
    if (value !== null) return value;
    let nearest = 0;
    let least = Infinity;
    for (const each of known) {
      const away = distance(cell, each.cell);
      if (away < least) {
        least = away;
        nearest = each.value;
      }
    }
    return nearest;
  });
}

function distance(a: number, b: number): number {
  const around = (size: number, from: number, to: number) =>
    Math.min(Math.abs(from - to), size - Math.abs(from - to));
  return Math.hypot(
    around(HOURS, a % HOURS, b % HOURS),
    // A month away is another season, an hour away the same afternoon.
    2 * around(MONTHS, Math.floor(a / HOURS), Math.floor(b / HOURS)),
  );
}

export function tooFewRuns(values: readonly (number | null)[]): TooFewRun[] {
  const runs: TooFewRun[] = [];
  for (let month = 0; month < MONTHS; month++)
    for (let hour = 0; hour < HOURS; hour++) {
      if (values[month * HOURS + hour] !== null) continue;
      const last = runs.at(-1);
      if (last?.month === month && last.toHour === hour) last.toHour = hour + 1;
      else runs.push({ month, fromHour: hour, toHour: hour + 1 });
    }
  return runs;
}

/** Multiples of the step that the values pass, in the unit shown. */
export function isolines(values: readonly (number | null)[], step: number): number[] {
  const known = values.filter((value) => value !== null);
  if (known.length === 0) return [];
  const first = Math.ceil(Math.min(...known) / step + 1e-9);
  const last = Math.floor(Math.max(...known) / step);
  return Array.from({ length: Math.max(0, last - first + 1) }, (_, i) => (first + i) * step);
}

/**
 * Which tint of the scale stands from a figure to the next step, the way the figure gets worse: never stretched to the
 * data.
 * @param value a multiple of the step, or anything below the first one; negative of what is shown where less is worse
 * @returns 0 (pale) to 10 (deep)
 */
export function tintOf(value: number, { step, origin }: PictureScale): number {
  return Math.min(TINTS - 1, Math.max(0, Math.floor((value - origin) / step + 1e-9) + 1));
}

/** A line of daylight cut where the sun does not cross, with hours past midnight brought back onto the clock. */
export function sunPieces(
  line: readonly { monthOfYear: number; hour: number | null }[],
): [number, number][][] {
  const pieces: [number, number][][] = [[]];
  let before: number | null = null;
  for (const { monthOfYear, hour } of line) {
    const onClock = hour === null ? null : ((hour % HOURS) + HOURS) % HOURS;
    // A step over midnight would draw a line across the whole day.
    if (onClock === null || (before !== null && Math.abs(onClock - before) > HOURS / 2)) pieces.push([]);
    if (onClock !== null) pieces.at(-1)?.push([onClock, monthOfYear]);
    before = onClock;
  }
  return pieces.filter((piece) => piece.length > 1);
}
