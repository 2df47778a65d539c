import { civilDate } from './civil-date.ts';
import { DAYS_FOR_WORST, daysNeeded } from './days-needed.ts';
import { quantileReordering } from './quantile.ts';
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

/**
 * Sort values into the cells of their local month and hour, keeping their order inside each.
 * @param localHour hours since 1970-01-01 00:00 on the local clock, as hourReports gives them: rising, each at most once
 * @param value     one for each hour; NaN where there is none, which leaves the hour out
 */
export function seasonCells(localHour: Int32Array, value: Float64Array): SeasonCells {
  const count = localHour.length;
  const cellOf = new Int16Array(count);
  const sizes = new Int32Array(CELLS);
  const years = new Set<number>();
  const yearCount = new Int16Array(CELLS);
  // Hours come in order of time, so a year that differs from the cell's last one is a new one.
  const lastYear = new Int32Array(CELLS).fill(-2_147_483_648);
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
    if (Number.isNaN(value[i])) {
      cellOf[i] = -1;
      continue;
    }
    const cell = month * HOURS + (hour - day * 24);
    cellOf[i] = cell;
    sizes[cell] = (sizes[cell] ?? 0) + 1;
    years.add(year);
    if (lastYear[cell] !== year) {
      lastYear[cell] = year;
      yearCount[cell] = (yearCount[cell] ?? 0) + 1;
    }
  }
  const starts = new Int32Array(CELLS + 1);
  for (let cell = 0; cell < CELLS; cell++) starts[cell + 1] = (starts[cell] ?? 0) + (sizes[cell] ?? 0);
  const next = starts.slice();
  const values = new Float64Array(starts[CELLS] ?? 0);
  for (let i = 0; i < count; i++) {
    const cell = cellOf[i] ?? -1;
    if (cell < 0) continue;
    const at = next[cell] ?? 0;
    next[cell] = at + 1;
    values[at] = value[i] ?? NaN;
  }
  return { values, starts, years: [...years].sort((a, b) => a - b), yearCount };
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
 * The same quantile in every cell.
 * @param share of days that are no worse, 0.5 to 0.99
 * @param worse which way is worse: for a density altitude up, for a headwind down
 * @throws RangeProblem naming prob
 */
export function seasonQuantiles(cells: SeasonCells, share: number, worse: SafeSide = 'up'): SeasonQuantiles {
  const needed = daysNeeded(share);
  const prob = probBelow(share, worse);
  const work = cells.values.slice();
  const quantile: (number | null)[] = [];
  const dayCount: number[] = [];
  for (let cell = 0; cell < CELLS; cell++) {
    const from = cells.starts[cell] ?? 0;
    const to = cells.starts[cell + 1] ?? 0;
    dayCount.push(to - from);
    quantile.push(
      to - from < needed ? null : finiteOrNull(quantileReordering(work.subarray(from, to), prob)),
    );
  }
  return { quantile, dayCount, daysNeeded: needed };
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
