import { civilDate } from './civil-date.ts';
import { DAYS_FOR_WORST, daysNeeded } from './days-needed.ts';
import { quantilesOf } from './quantile.ts';
import { beyondFrom, finiteOrNull, probBelow, worstOf, type SafeSide } from './safe-side.ts';

export const MONTHS = 12;
export const HOURS = 24;
/** Cells of a season picture: month x 24 + hour, both from 0. */
export const CELLS = MONTHS * HOURS;

/** Values sorted into the cells of a season picture, each cell's values side by side. */
export interface SeasonCells {
  /** In cell order. */
  values: Float64Array;
  /** Where each cell begins; one more than there are cells, the last is the end. */
  starts: Int32Array;
  /** Calendar years of the local clock that have at least one value, rising. */
  years: number[];
  /** How many different years stand behind each cell. */
  yearCount: Int16Array;
}

/** Which hours of a record belong to which cell: made once, used for every figure. */
export interface SeasonOrder {
  /** Places of the hours in the record, in cell order and rising inside each cell. */
  place: Int32Array;
  /** The calendar year of each, in the same order. */
  year: Int16Array;
  starts: Int32Array;
}

/**
 * Sort the hours of a record into the cells of their local month and hour.
 * @param localHour hours since 1970-01-01 00:00 on the local clock, as hourReports gives them: rising, each at most once
 */
export function seasonOrder(localHour: Int32Array): SeasonOrder {
  const count = localHour.length;
  const cellOf = new Int16Array(count);
  const yearOf = new Int16Array(count);
  const starts = new Int32Array(CELLS + 1);
  let day = NaN;
  let month = 0;
  let year = 0;
  for (let i = 0; i < count; i++) {
    const hour = localHour[i] ?? 0;
    const thisDay = Math.floor(hour / 24);
    if (thisDay !== day) {
      day = thisDay;
      ({ year, month } = civilDate(day));
    }
    const cell = month * HOURS + (hour - day * 24);
    cellOf[i] = cell;
    yearOf[i] = year;
    starts[cell + 1] = (starts[cell + 1] ?? 0) + 1;
  }
  for (let cell = 0; cell < CELLS; cell++) starts[cell + 1] = (starts[cell + 1] ?? 0) + (starts[cell] ?? 0);
  const next = starts.slice();
  const place = new Int32Array(count);
  const yearInOrder = new Int16Array(count);
  for (let i = 0; i < count; i++) {
    const cell = cellOf[i] ?? 0;
    const at = next[cell] ?? 0;
    next[cell] = at + 1;
    place[at] = i;
    yearInOrder[at] = yearOf[i] ?? 0;
  }
  return { place, year: yearInOrder, starts };
}

/**
 * Sort values into the cells of their local month and hour, keeping their order inside each.
 * @param order of the record's hours
 * @param value one for each hour of the record; NaN where there is none, which leaves the hour out
 */
export function seasonCells({ place, year, starts: from }: SeasonOrder, value: Float64Array): SeasonCells {
  const count = place.length;
  const starts = new Int32Array(CELLS + 1);
  const years = new Set<number>();
  const yearCount = new Int16Array(CELLS);
  const values = new Float64Array(count);
  let at = 0;
  for (let cell = 0; cell < CELLS; cell++) {
    starts[cell] = at;
    const end = from[cell + 1] ?? 0;
    // Hours come in order of time, so a year that differs from the one before is a new one.
    let lastYear = -32_768;
    let yearsHere = 0;
    for (let i = from[cell] ?? 0; i < end; i++) {
      const each = value[place[i] as number] as number;
      if (Number.isNaN(each)) continue;
      values[at++] = each;
      const itsYear = year[i] as number;
      if (itsYear !== lastYear) {
        lastYear = itsYear;
        yearsHere++;
        years.add(itsYear);
      }
    }
    yearCount[cell] = yearsHere;
  }
  starts[CELLS] = at;
  return { values: values.subarray(0, at), starts, years: [...years].sort((a, b) => a - b), yearCount };
}

/**
 * A quantile in a cell; null where the cell has too few days for it, or where it has enough and the figure is beyond what
 * is known (a take-off hotter than the manual's table is infinitely long). The count beside it tells the two apart.
 */
export interface SeasonQuantiles {
  /** One a cell. */
  quantile: (number | null)[];
  /** Days behind each cell. */
  dayCount: number[];
  daysNeeded: number;
}

/**
 * The same quantiles in every cell.
 * @param shares of days that are no worse, each 0.5 to 0.99
 * @param worse  which way is worse: for a density altitude up, for a headwind down
 * @throws RangeProblem naming prob
 */
export function seasonQuantiles(
  cells: SeasonCells,
  shares: readonly number[],
  worse: SafeSide = 'up',
): SeasonQuantiles[] {
  const needed = shares.map(daysNeeded);
  const probs = shares.map((share) => probBelow(share, worse));
  const dayCount: number[] = [];
  const found = shares.map((_, of) => ({
    quantile: [] as (number | null)[],
    dayCount,
    daysNeeded: needed[of] ?? 0,
  }));
  for (let cell = 0; cell < CELLS; cell++) {
    const values = cells.values.subarray(cells.starts[cell], cells.starts[cell + 1]);
    const { length } = values;
    dayCount.push(length);
    const quantiles = length === 0 ? [] : quantilesOf(values, probs);
    found.forEach(({ quantile, daysNeeded: least }, of) => {
      quantile.push(length < least ? null : finiteOrNull(quantiles[of] ?? NaN));
    });
  }
  return found;
}

/** The worst figure of each cell; null where there are fewer than 20 days to have it from, or it is beyond what is known. */
export function seasonWorst(cells: SeasonCells, worse: SafeSide): (number | null)[] {
  return Array.from({ length: CELLS }, (_, cell) => {
    const from = cells.starts[cell] ?? 0;
    const to = cells.starts[cell + 1] ?? 0;
    return to - from < DAYS_FOR_WORST ? null : finiteOrNull(worstOf(cells.values.subarray(from, to), worse));
  });
}

/** How many days of each cell are beyond a limit. */
export function seasonBeyond(cells: SeasonCells, limit: number, worse: SafeSide): number[] {
  const atMost = beyondFrom(limit, worse);
  const { values, starts } = cells;
  const counts: number[] = [];
  for (let cell = 0; cell < CELLS; cell++) {
    const to = starts[cell + 1] ?? 0;
    let count = 0;
    if (worse === 'up') {
      for (let i = starts[cell] ?? 0; i < to; i++) if ((values[i] as number) > atMost) count++;
    } else {
      for (let i = starts[cell] ?? 0; i < to; i++) if ((values[i] as number) < atMost) count++;
    }
    counts.push(count);
  }
  return counts;
}
