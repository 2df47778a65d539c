import { InputProblem } from '../problem.ts';
import { flattened, readFlat, tableReading } from './flat-table.ts';
import type { PerformanceTable, TableAxis } from './performance-table.ts';

/** One value for all rows, or one a row. */
export type TableColumn = number | Float64Array;

/**
 * The same as `readTable` for many rows at once, the value alone: for a record of a million observations.
 * Where the table answers with its favourable edge, so does this. Where it answers nothing (hotter, higher, heavier, more
 * tailwind, a blank cell) `beyond` is written, so that the row counts as a limit not met and is never dropped. A missing
 * input (NaN) stays missing. Places are not held against the ranges of `readTable`: outside them lies outside the table.
 * @param out     one a row; overwritten
 * @param columns one for each axis of the table, as long as `out`
 * @param beyond  Infinity for a distance, −Infinity for a climb rate
 * @throws InputProblem when a column is missing or has another length
 */
export function readTableInto(
  out: Float64Array,
  table: PerformanceTable,
  columns: Readonly<Partial<Record<TableAxis, TableColumn>>>,
  beyond: number,
): void {
  const given = table.axes.map((axis) => {
    const column = columns[axis];
    if (column === undefined) throw new InputProblem(axis, 'is missing');
    if (typeof column !== 'number' && column.length !== out.length) {
      throw new InputProblem(axis, `has ${String(column.length)} rows; ${String(out.length)} were expected`);
    }
    return { axis, column };
  });
  const root = flattened(table);
  const reading = tableReading();
  for (let row = 0; row < out.length; row += 1) {
    let isMissing = false;
    for (const { axis, column } of given) {
      const at = typeof column === 'number' ? column : (column[row] ?? NaN);
      reading[axis] = at;
      if (Number.isNaN(at)) isMissing = true;
    }
    const value = isMissing ? NaN : readFlat(root, reading);
    out[row] = isMissing ? NaN : Number.isNaN(value) ? beyond : value;
  }
}
