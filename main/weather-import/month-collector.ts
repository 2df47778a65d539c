import { columnNames, missing, type ColumnName, type MonthBlock } from '../store/observation-columns.ts';
import { monthStartEpochS } from './calendar.ts';
import { flagImplausible } from './plausibility.ts';
import type { ProblemList } from './problems.ts';

/** One report as a reader hands it over: integers in the block's units; `missing` where not reported. */
export interface Report {
  /** Months since year 0, UTC: 12 x year + month - 1. */
  monthIndex: number;
  minuteOfMonth: number;
  values: Record<ColumnName, number>;
  /** Line of the file, for examples. */
  line: number;
}

/** A report object that a reader fills again for each row. */
export function emptyReport(): Report {
  return {
    monthIndex: 0,
    minuteOfMonth: 0,
    line: 0,
    values: Object.fromEntries(columnNames.map((name) => [name, missing])) as Record<ColumnName, number>,
  };
}

/** Only so many months stay open: a file in order needs one, and memory stays bounded for one that is not. */
const openMonthsMost = 36;

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

  add(report: Report): void {
    let month = this.#current;
    if (month?.monthIndex !== report.monthIndex) month = this.#openMonth(report.monthIndex);
    if (month.count === month.minute.length) grow(month);
    const at = month.count++;
    if (report.minuteOfMonth < month.lastMinute) month.inOrder = false;
    month.lastMinute = report.minuteOfMonth;
    month.minute[at] = report.minuteOfMonth;
    month.line[at] = report.line;
    const { columns } = month;
    const { values } = report;
    // Written out, not looped: this is the innermost step of an import.
    columns.temperatureC100[at] = values.temperatureC100;
    columns.dewPointC100[at] = values.dewPointC100;
    columns.altimeterSettingHpa100[at] = values.altimeterSettingHpa100;
    columns.seaLevelPressureHpa100[at] = values.seaLevelPressureHpa100;
    columns.stationPressureHpa100[at] = values.stationPressureHpa100;
    columns.windFromDeg[at] = values.windFromDeg;
    columns.windSpeedMs100[at] = values.windSpeedMs100;
    columns.gustMs100[at] = values.gustMs100;
    columns.flags[at] = values.flags;
  }

  /** Blocks that are done with. Call it now and then; with `last`, all that are left. */
  take(last: boolean): MonthBlock[] {
    if (last) {
      for (const month of this.#open.values()) this.#close(month);
      this.#open.clear();
      this.#current = null;
    }
    return this.#done.splice(0);
  }

  #openMonth(monthIndex: number): OpenMonth {
    let month = this.#open.get(monthIndex);
    if (month === undefined) {
      if (this.#open.size >= openMonthsMost) this.#closeLongestUnused();
      month = {
        monthIndex,
        count: 0,
        inOrder: true,
        lastMinute: -1,
        minute: new Uint16Array(1024),
        line: new Uint32Array(1024),
        columns: Object.fromEntries(
          columnNames.map((name) => [name, new Int16Array(1024)]),
        ) as OpenMonth['columns'],
      };
    } else this.#open.delete(monthIndex);
    // Put in anew, so that the map's order is the order of use.
    this.#open.set(monthIndex, month);
    this.#current = month;
    return month;
  }

  #closeLongestUnused(): void {
    for (const [monthIndex, month] of this.#open) {
      this.#close(month);
      this.#open.delete(monthIndex);
      return;
    }
  }

  #close(month: OpenMonth): void {
    const part = this.#parts.get(month.monthIndex) ?? 0;
    this.#parts.set(month.monthIndex, part + 1);
    const order = month.inOrder ? null : timeOrder(month);
    flagImplausible(month, order, this.#problems);
    const columns = Object.fromEntries(
      columnNames.map((name) => [
        name,
        packed(month.columns[name], month.count, order, name === 'flags' ? 0 : missing),
      ]),
    ) as MonthBlock['columns'];
    const minutes = new Uint16Array(month.count);
    for (let i = 0; i < month.count; i++) minutes[i] = month.minute[order?.[i] ?? i] ?? 0;
    this.#done.push({
      monthStartEpochS: monthStartEpochS(month.monthIndex),
      part,
      observationCount: month.count,
      minuteOfMonth: minutes,
      columns,
    });
  }
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

function packed(
  column: Int16Array,
  count: number,
  order: Uint32Array | null,
  absent: number,
): Int16Array | null {
  const out = new Int16Array(count);
  let any = false;
  for (let i = 0; i < count; i++) {
    const value = column[order?.[i] ?? i] ?? missing;
    out[i] = value;
    if (value !== absent) any = true;
  }
  return any ? out : null;
}
