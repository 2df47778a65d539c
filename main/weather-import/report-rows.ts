import { columnNames, missing, type ColumnName } from '../store/observation-columns.ts';

/** One report as a reader hands it over: integers in the block's units; `missing` where not reported. */
export interface Report {
  /** Months since year 0, UTC: 12 x year + month - 1. */
  monthIndex: number;
  minuteOfMonth: number;
  values: Record<ColumnName, number>;
}

/** A report object that a reader fills again for each row. */
export function emptyReport(): Report {
  return {
    monthIndex: 0,
    minuteOfMonth: 0,
    values: Object.fromEntries(columnNames.map((name) => [name, missing])) as Record<ColumnName, number>,
  };
}

/** Reports as columns, in the order in which their lines stand in the file. */
export interface RowColumns {
  readonly count: number;
  /** The month changes at these rows, the first included, to those of `runMonths`. */
  readonly runStarts: readonly number[];
  readonly runMonths: readonly number[];
  readonly minute: Uint16Array;
  /** Line of the stretch that was read, from 1. */
  readonly line: Uint32Array;
  readonly columns: Readonly<Record<ColumnName, Int16Array>>;
}

/** Takes the reports of a reader, row by row. */
export class ReportRows implements RowColumns {
  /** The line that is being read: it is put beside every report that is added meanwhile. */
  lineNumber = 0;
  count = 0;
  runStarts: number[] = [];
  runMonths: number[] = [];
  minute: Uint16Array;
  line: Uint32Array;
  columns: Record<ColumnName, Int16Array>;
  #lastMonth = NaN;

  constructor() {
    ({ minute: this.minute, line: this.line, columns: this.columns } = room(4096));
  }

  /** The report is copied: its reader fills the object again for the next row. */
  add({ monthIndex, minuteOfMonth, values }: Report): void {
    if (this.count === this.minute.length) this.#grow();
    if (monthIndex !== this.#lastMonth) {
      this.#lastMonth = monthIndex;
      this.runStarts.push(this.count);
      this.runMonths.push(monthIndex);
    }
    const at = this.count++;
    this.minute[at] = minuteOfMonth;
    this.line[at] = this.lineNumber;
    const { columns } = this;
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

  clear(): void {
    this.count = 0;
    this.runStarts = [];
    this.runMonths = [];
    this.#lastMonth = NaN;
  }

  #grow(): void {
    const { minute, line, columns } = room(2 * this.minute.length);
    copyRows(this, { minute, line, columns });
    this.minute = minute;
    this.line = line;
    this.columns = columns;
  }
}

/** The same rows in one piece of memory as long as they need, to be handed to another thread whole. */
export function packedRows(rows: RowColumns): RowColumns & { memory: ArrayBuffer } {
  const { count, runStarts, runMonths } = rows;
  const packed = room(count);
  copyRows(rows, packed);
  return { count, runStarts, runMonths, ...packed };
}

interface Room {
  memory: ArrayBuffer;
  minute: Uint16Array;
  line: Uint32Array;
  columns: Record<ColumnName, Int16Array>;
}

/** Columns for so many rows, side by side in one piece of memory. */
function room(rows: number): Room {
  const memory = new ArrayBuffer(rows * (4 + 2 + 2 * columnNames.length));
  // The widest first, so that each begins where its width allows it.
  return {
    memory,
    line: new Uint32Array(memory, 0, rows),
    minute: new Uint16Array(memory, 4 * rows, rows),
    columns: Object.fromEntries(
      columnNames.map((name, at) => [name, new Int16Array(memory, (6 + 2 * at) * rows, rows)]),
    ) as Room['columns'],
  };
}

function copyRows(from: RowColumns, to: Omit<Room, 'memory'>): void {
  to.minute.set(from.minute.subarray(0, from.count));
  to.line.set(from.line.subarray(0, from.count));
  for (const name of columnNames) to.columns[name].set(from.columns[name].subarray(0, from.count));
}
