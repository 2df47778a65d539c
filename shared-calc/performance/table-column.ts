import { InputProblem } from '../problem.ts';
import { AXIS_RANGES, isSamePlace } from './performance-table.ts';
import type { PerformanceTable, TableAxis, TableNode } from './performance-table.ts';

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
    return column;
  });
  const root = flattened(table.root, table.axes);
  const place = Float64Array.from(given, (column) => (typeof column === 'number' ? column : NaN));
  for (let row = 0; row < out.length; row += 1) {
    let isMissing = false;
    for (let axis = 0; axis < given.length; axis += 1) {
      const column = given[axis];
      if (typeof column === 'object') place[axis] = column[row] ?? NaN;
      if (Number.isNaN(place[axis])) isMissing = true;
    }
    const value = isMissing ? NaN : valueAt(root, place, 0);
    out[row] = isMissing ? NaN : Number.isNaN(value) ? beyond : value;
  }
}

/** A node with its steps in typed arrays; a leaf has a value, NaN where the manual leaves it blank. */
interface FlatNode {
  readonly value: number;
  readonly ats: Float64Array;
  readonly thens: readonly FlatNode[];
  readonly moreIsWorse: boolean;
}

function flattened(node: TableNode, axes: readonly TableAxis[]): FlatNode {
  if ('value' in node) {
    return { value: node.value ?? NaN, ats: new Float64Array(0), thens: [], moreIsWorse: true };
  }
  const [axis = 'massKg', ...rest] = axes;
  return {
    value: NaN,
    ats: Float64Array.from(node.steps, (step) => step.at),
    thens: node.steps.map((step) => flattened(step.then, rest)),
    moreIsWorse: AXIS_RANGES[axis].worse === 'more',
  };
}

/** NaN where the table answers nothing. No objects are made: this runs a million times. */
function valueAt(node: FlatNode, place: Float64Array, depth: number): number {
  const { ats, thens, moreIsWorse } = node;
  const last = ats.length - 1;
  if (last < 0) return node.value;
  const asked = place[depth] ?? NaN;
  // The first step that is not below what is asked.
  let upper = 0;
  while (upper <= last && (ats[upper] ?? NaN) < asked) upper += 1;
  if (upper <= last && isSamePlace(ats[upper] ?? NaN, asked)) return at(thens, upper, place, depth);
  if (upper > 0 && isSamePlace(ats[upper - 1] ?? NaN, asked)) return at(thens, upper - 1, place, depth);
  if (upper === 0) return moreIsWorse ? at(thens, 0, place, depth) : NaN;
  if (upper > last) return moreIsWorse ? NaN : at(thens, last, place, depth);
  const below = ats[upper - 1] ?? NaN;
  const share = (asked - below) / ((ats[upper] ?? NaN) - below);
  const belowValue = at(thens, upper - 1, place, depth);
  return belowValue + share * (at(thens, upper, place, depth) - belowValue);
}

function at(thens: readonly FlatNode[], step: number, place: Float64Array, depth: number): number {
  const then = thens[step];
  return then === undefined ? NaN : valueAt(then, place, depth + 1);
}
