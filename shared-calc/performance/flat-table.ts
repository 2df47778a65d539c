import { AXIS_RANGES, isSamePlace } from './performance-table.ts';
import type { PerformanceTable, TableAxis, TableNode } from './performance-table.ts';

/** A table prepared for reading many times: a node with its steps in typed arrays; a leaf has a value. */
export interface FlatNode {
  /** NaN where the manual leaves the cell blank, and on all nodes but leaves. */
  readonly value: number;
  readonly axis: TableAxis;
  readonly ats: Float64Array;
  readonly thens: readonly FlatNode[];
  readonly moreIsWorse: boolean;
}

/** Where a table is read, and what happened there. Used again for each reading, so that none makes an object. */
export interface TableReading extends Record<TableAxis, number> {
  /** The favourable edge of an axis stood for the place asked: no better than. */
  isHeld: boolean;
  /** The axis on which the place lies beyond the table; null for a blank cell. Only set where the reading is NaN. */
  beyond: TableAxis | null;
}

export function flattened(table: PerformanceTable): FlatNode {
  return flatNode(table.root, table.axes);
}

export function tableReading(): TableReading {
  return {
    massKg: NaN,
    pressureAltitudeM: NaN,
    temperatureC: NaN,
    headwindMs: NaN,
    isHeld: false,
    beyond: null,
  };
}

function flatNode(node: TableNode, axes: readonly TableAxis[]): FlatNode {
  const [axis = 'massKg', ...rest] = axes;
  if ('value' in node) {
    return { value: node.value ?? NaN, axis, ats: new Float64Array(0), thens: [], moreIsWorse: true };
  }
  return {
    value: NaN,
    axis,
    ats: Float64Array.from(node.steps, (step) => step.at),
    thens: node.steps.map((step) => flatNode(step.then, rest)),
    moreIsWorse: AXIS_RANGES[axis].worse === 'more',
  };
}

/**
 * The same answer as `readTable`, the value alone; NaN where the table answers nothing, and then `reading.beyond` says why.
 * Sets `isHeld` where an edge stood in and never clears it. Makes no objects: this runs a million times.
 */
export function readFlat(node: FlatNode, reading: TableReading): number {
  const { ats, thens, axis, moreIsWorse } = node;
  const last = ats.length - 1;
  if (last < 0) {
    if (Number.isNaN(node.value)) reading.beyond = null;
    return node.value;
  }
  const asked = reading[axis];
  // The first step that is not below what is asked.
  let upper = 0;
  while (upper <= last && (ats[upper] ?? NaN) < asked) upper += 1;
  if (upper <= last && isSamePlace(ats[upper] ?? NaN, asked)) return under(thens, upper, reading);
  if (upper > 0 && isSamePlace(ats[upper - 1] ?? NaN, asked)) return under(thens, upper - 1, reading);
  if (upper === 0 || upper > last) {
    if ((upper === 0) !== moreIsWorse) {
      reading.beyond = axis;
      return NaN;
    }
    reading.isHeld = true;
    return under(thens, upper === 0 ? 0 : last, reading);
  }
  const below = ats[upper - 1] ?? NaN;
  const belowValue = under(thens, upper - 1, reading);
  if (Number.isNaN(belowValue)) return NaN;
  return (
    belowValue +
    ((asked - below) / ((ats[upper] ?? NaN) - below)) * (under(thens, upper, reading) - belowValue)
  );
}

function under(thens: readonly FlatNode[], step: number, reading: TableReading): number {
  const then = thens[step];
  return then === undefined ? NaN : readFlat(then, reading);
}
