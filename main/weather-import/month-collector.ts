import { columnNames, missing, type ColumnName, type MonthBlock } from '../store/observation-columns.ts';
import { monthStartEpochS } from './calendar.ts';
import { flagImplausible } from './plausibility.ts';
import type { ProblemList } from './problems.ts';
import type { RowColumns } from './report-rows.ts';

/** Only so many months stay open: a file in order needs one, and memory stays bounded for one that is not. */
const openMonthsMost = 36;
/** So many rows are room enough for most months. */
const roomAtFirst = 1024;
/** Shorter runs are copied value by value: that is quicker than to set up a copy of each column. */
const shortRun = 8;

interface OpenMonth {
  monthIndex: number;
  count: number;
  inOrder: boolean;
  lastMinute: number;
  minute: Uint16Array;
  line: Uint32Array;
  columns: Record<ColumnName, Int16Array>;
}

/** Sorts reports into months and hands each month over as a block when it is done with. */
export class MonthCollector {
  readonly #open = new Map<number, OpenMonth>();
  readonly #parts = new Map<number, number>();
  readonly #done: MonthBlock[] = [];
  readonly #problems: ProblemList;
  #current: OpenMonth | null = null;

  /** @param problems takes what stands out within a month: spikes and stuck values */
  constructor(problems: ProblemList) {
    this.#problems = problems;
  }

  /** @param linesBefore lines of the file before those that the rows count */
  add(rows: RowColumns, linesBefore: number): void {
    const { runStarts, runMonths } = rows;
    for (let run = 0; run < runMonths.length; run++) {
      const monthIndex = runMonths[run] ?? 0;
      const from = runStarts[run] ?? 0;
      const to = runStarts[run + 1] ?? rows.count;
      let month = this.#current;
      if (month?.monthIndex !== monthIndex)
        month = this.#openMonth(monthIndex, linesBefore + (rows.line[from] ?? 0));
      append(month, rows, from, to, linesBefore);
    }
  }

  /** Blocks that are done with. Call it now and then; with `last`, all that are left. */
  take(last: boolean): MonthBlock[] {
    if (last) {
      for (const month of this.#open.values()) this.#close(month, Infinity);
      this.#open.clear();
      this.#current = null;
    }
    return this.#done.splice(0);
  }

  #openMonth(monthIndex: number, line: number): OpenMonth {
    let month = this.#open.get(monthIndex);
    if (month === undefined) {
      if (this.#open.size >= openMonthsMost) this.#closeLongestUnused(line);
      month = {
        monthIndex,
        count: 0,
        inOrder: true,
        lastMinute: -1,
        minute: new Uint16Array(roomAtFirst),
        line: new Uint32Array(roomAtFirst),
        columns: Object.fromEntries(
          columnNames.map((name) => [name, new Int16Array(roomAtFirst)]),
        ) as OpenMonth['columns'],
      };
    } else this.#open.delete(monthIndex);
    // Put in anew, so that the map's order is the order of use.
    this.#open.set(monthIndex, month);
    this.#current = month;
    return month;
  }

  #closeLongestUnused(line: number): void {
    for (const [monthIndex, month] of this.#open) {
      this.#close(month, line);
      this.#open.delete(monthIndex);
      return;
    }
  }

  /** @param line at which the month is done with */
  #close(month: OpenMonth, line: number): void {
    const part = this.#parts.get(month.monthIndex) ?? 0;
    this.#parts.set(month.monthIndex, part + 1);
    const order = month.inOrder ? null : timeOrder(month);
    flagImplausible(month, order, this.#problems, line);
    const { count } = month;
    // One piece of memory for the whole month, so that it goes to the writing thread in one piece too.
    const memory = new ArrayBuffer(2 * count * (1 + columnNames.length));
    const minuteOfMonth = new Uint16Array(memory, 0, count);
    putInOrder(month.minute, order, minuteOfMonth);
    this.#done.push({
      monthStartEpochS: monthStartEpochS(month.monthIndex),
      part,
      observationCount: count,
      minuteOfMonth,
      columns: Object.fromEntries(
        columnNames.map((name, at) => {
          const packed = new Int16Array(memory, 2 * count * (1 + at), count);
          putInOrder(month.columns[name], order, packed);
          return [name, holdsMoreThan(name === 'flags' ? 0 : missing, packed) ? packed : null];
        }),
      ) as MonthBlock['columns'],
    });
  }
}

function append(month: OpenMonth, rows: RowColumns, from: number, to: number, linesBefore: number): void {
  while (month.count + to - from > month.minute.length) grow(month);
  const { count, minute, line, columns } = month;
  const shift = count - from;
  for (let i = from; i < to; i++) {
    const of = rows.minute[i] ?? 0;
    if (of < month.lastMinute) month.inOrder = false;
    month.lastMinute = of;
    minute[shift + i] = of;
    line[shift + i] = linesBefore + (rows.line[i] ?? 0);
  }
  for (const name of columnNames) {
    const source = rows.columns[name];
    const column = columns[name];
    if (to - from > shortRun) column.set(source.subarray(from, to), count);
    else for (let i = from; i < to; i++) column[shift + i] = source[i] ?? missing;
  }
  month.count = shift + to;
}

function grow(month: OpenMonth): void {
  const length = month.minute.length * 2;
  const minute = new Uint16Array(length);
  minute.set(month.minute);
  month.minute = minute;
  const line = new Uint32Array(length);
  line.set(month.line);
  month.line = line;
  for (const name of columnNames) {
    const column = new Int16Array(length);
    column.set(month.columns[name]);
    month.columns[name] = column;
  }
}

/** Places in order of time; of one minute, the first read stays first. */
function timeOrder(month: OpenMonth): Uint32Array {
  const order = Uint32Array.from({ length: month.count }, (_, i) => i);
  const { minute } = month;
  return order.sort((a, b) => (minute[a] ?? 0) - (minute[b] ?? 0) || a - b);
}

/** A column in order of time, as far as there is room for it. */
function putInOrder<Column extends Int16Array | Uint16Array>(
  column: Column,
  order: Uint32Array | null,
  into: Column,
): void {
  if (order === null) into.set(column.subarray(0, into.length));
  else for (let i = 0; i < into.length; i++) into[i] = column[order[i] ?? 0] ?? 0;
}

function holdsMoreThan(absent: number, column: Int16Array): boolean {
  for (const value of column) if (value !== absent) return true;
  return false;
}
