import { tableOddities, type TableAxis, type TableCell } from './performance-table.ts';
import { axesOf } from './records.ts';
import type { ClimbRow, DistanceRow, PrintedPlace } from './records.ts';

export type FigureColumn = 'groundRollM' | 'overObstacleM' | 'climbRateMs';

/** A figure that is more likely a slip than a truth: to be compared with the manual, never refused. */
export type TableSuspicion =
  /** It gets better where the air or the load gets worse; "no better than" at the edges rests on the order. */
  | {
      readonly kind: 'order';
      readonly row: number;
      readonly easierRow: number;
      readonly axis: TableAxis;
      readonly column: FigureColumn;
    }
  /** Some three times its neighbours, or a third: feet typed as metres, or the other way round. */
  | { readonly kind: 'feetOrMetres'; readonly row: number; readonly column: FigureColumn }
  /** The whole column is so long, short, flat or hot that another unit is more likely. */
  | { readonly kind: 'unit'; readonly row: number; readonly column: FigureColumn | TableAxis };

/**
 * Suspicions about a take-off or landing table, by row. Rows that a person has answered for (`asPrinted`) are left alone.
 * Bounds of the class (600 kg, invented margins on both sides): common practice, no source.
 */
export function distanceSuspicions(rows: readonly DistanceRow[]): TableSuspicion[] {
  return answeredLeftOut(rows, [
    ...columnSuspicions(rows, 'groundRollM', (row) => row.groundRollM, 'less'),
    ...columnSuspicions(rows, 'overObstacleM', (row) => row.overObstacleM, 'less'),
    ...middleOutside(rows, 'groundRollM', (row) => row.groundRollM, 70, 650),
    ...middleOutside(rows, 'overObstacleM', (row) => row.overObstacleM, 150, 1100),
    ...placeSuspicions(rows),
  ]);
}

/** The same for a climb table. */
export function climbSuspicions(rows: readonly ClimbRow[]): TableSuspicion[] {
  const most = extremeRow(rows, (row) => row.climbRateMs, 1);
  const isFlat = most !== null && (rows[most]?.climbRateMs ?? 0) < FLATTEST_MOST_MS;
  return answeredLeftOut(rows, [
    ...columnSuspicions(rows, 'climbRateMs', (row) => row.climbRateMs, 'more'),
    ...(isFlat ? [{ kind: 'unit', row: most, column: 'climbRateMs' } as const] : []),
    ...placeSuspicions(rows),
  ]);
}

/** 100 ft/min: no aeroplane's best. */
const FLATTEST_MOST_MS = 0.5;
/** Hotter than any air that a manual prints: degrees Fahrenheit, more likely. */
const HOTTEST_PRINTED_C = 52;
/** Higher than an aeroplane of the class takes off or lands: feet, more likely. */
const HIGHEST_PRINTED_M = 4500;
/** Feet in a metre, with room for the step from one cell to the next. */
const FEET_RATIO = { least: 2.5, most: 4.3 };

function columnSuspicions<R extends PrintedPlace>(
  rows: readonly R[],
  column: FigureColumn,
  valueOf: (row: R) => number | null,
  better: 'more' | 'less',
): TableSuspicion[] {
  const axes = axesOf(rows);
  const cells: TableCell[] = rows.map((row) => ({
    at: Object.fromEntries(axes.map((axis) => [axis, row[axis] ?? 0])),
    value: valueOf(row),
  }));
  const rowOf = (at: TableCell['at']) => cells.findIndex((cell) => cell.at === at);
  const scale = cells.flatMap((_, row): TableSuspicion[] =>
    isScaled(cells, axes, row) ? [{ kind: 'feetOrMetres', row, column }] : [],
  );
  const scaled = new Set(scale.map(({ row }) => row));
  const order = tableOddities(cells, axes, better).flatMap(({ axis, easier, harder }): TableSuspicion[] => {
    const [row, easierRow] = [rowOf(harder.at), rowOf(easier.at)];
    // A slip of the unit is out of order as well: said once.
    return scaled.has(row) || scaled.has(easierRow) ? [] : [{ kind: 'order', row, easierRow, axis, column }];
  });
  return [...scale, ...order];
}

/** Against the median of its neighbours along all axes; one neighbour alone could be the slip itself. */
function isScaled(cells: readonly TableCell[], axes: readonly TableAxis[], row: number): boolean {
  const cell = cells[row];
  if (cell === undefined || cell.value === null) return false;
  const near = axes.flatMap((axis) => neighbours(cells, axes, cell, axis)).sort((a, b) => a - b);
  if (near.length < 2) return false;
  const median = ((near[(near.length - 1) >> 1] ?? 0) + (near[near.length >> 1] ?? 0)) / 2;
  const ratio = cell.value / median;
  const isIn = (value: number) => value > FEET_RATIO.least && value < FEET_RATIO.most;
  return isIn(ratio) || isIn(1 / ratio);
}

function neighbours(
  cells: readonly TableCell[],
  axes: readonly TableAxis[],
  cell: TableCell,
  axis: TableAxis,
): number[] {
  const here = cell.at[axis] ?? 0;
  const line = cells
    .filter((other) => axes.every((each) => each === axis || other.at[each] === cell.at[each]))
    .flatMap(({ at, value }) => (value === null ? [] : [{ at: at[axis] ?? 0, value }]))
    .sort((a, b) => a.at - b.at);
  const below = line.findLast(({ at }) => at < here);
  const above = line.find(({ at }) => at > here);
  return [below, above].flatMap((one) => (one === undefined ? [] : [one.value]));
}

/** By the middle figure of a column, so that one slip does not stand for all; said of the column's least. */
function middleOutside(
  rows: readonly DistanceRow[],
  column: FigureColumn,
  valueOf: (row: DistanceRow) => number | null,
  leastM: number,
  mostM: number,
): TableSuspicion[] {
  const row = extremeRow(rows, valueOf, -1);
  const sorted = rows.flatMap((each) => valueOf(each) ?? []).sort((a, b) => a - b);
  const middleM = sorted[sorted.length >> 1];
  return row !== null && middleM !== undefined && (middleM < leastM || middleM > mostM)
    ? [{ kind: 'unit', row, column }]
    : [];
}

function placeSuspicions(rows: readonly PrintedPlace[]): TableSuspicion[] {
  const hottest = extremeRow(rows, (row) => row.temperatureC, 1);
  const highest = extremeRow(rows, (row) => row.pressureAltitudeM, 1);
  const isHot = hottest !== null && (rows[hottest]?.temperatureC ?? 0) > HOTTEST_PRINTED_C;
  const isHigh = highest !== null && (rows[highest]?.pressureAltitudeM ?? 0) > HIGHEST_PRINTED_M;
  return [
    ...(isHot ? [{ kind: 'unit', row: hottest, column: 'temperatureC' } as const] : []),
    ...(isHigh ? [{ kind: 'unit', row: highest, column: 'pressureAltitudeM' } as const] : []),
  ];
}

function extremeRow<R>(rows: readonly R[], valueOf: (row: R) => number | null, sign: 1 | -1): number | null {
  let found: number | null = null;
  let best = -Infinity;
  rows.forEach((row, i) => {
    const value = valueOf(row);
    if (value === null || sign * value <= best) return;
    found = i;
    best = sign * value;
  });
  return found;
}

function answeredLeftOut(
  rows: readonly { readonly asPrinted: boolean }[],
  suspicions: readonly TableSuspicion[],
): TableSuspicion[] {
  return suspicions.filter(({ row }) => rows[row]?.asPrinted !== true);
}
