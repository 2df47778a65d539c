import { flattened } from './flat-table.ts';
import type { FlatNode } from './flat-table.ts';
import { performanceTable } from './performance-table.ts';
import type { PerformanceTable, TableAxis } from './performance-table.ts';
import { axesOf } from './records.ts';
import type {
  ClimbTableRecord,
  DistanceTableRecord,
  PerformanceRecord,
  PrintedPlace,
  SeaLevelRecord,
} from './records.ts';

/** Glide figures of the aeroplane, which the estimates rest on; null where not known. */
export interface Glide {
  readonly bestGlideMs: number | null;
  readonly bestGlideRatio: number | null;
}

export interface PreparedDistances {
  readonly record: DistanceTableRecord;
  readonly axes: readonly TableAxis[];
  /** null where the manual prints no such column. */
  readonly groundRoll: PreparedTable | null;
  readonly overObstacle: PreparedTable | null;
}

export interface PreparedTable {
  readonly table: PerformanceTable;
  readonly flat: FlatNode;
}

export interface PreparedClimb {
  readonly record: ClimbTableRecord;
  readonly axes: readonly TableAxis[];
  readonly rate: PreparedTable;
  /** null where the manual does not print a speed in every row. */
  readonly speed: PreparedTable | null;
}

/** An aeroplane's performance, ready to be asked. Made once, asked many times. */
export interface PerformanceBook {
  readonly takeOff: PreparedDistances | null;
  readonly landing: PreparedDistances | null;
  readonly climb: PreparedClimb | null;
  /** Only where there is no take-off table. */
  readonly seaLevel: SeaLevelRecord | null;
  /** Sinking at best glide, for what an estimate takes from the climb. */
  readonly glideSinkMs: number;
  readonly liftToDragRatio: number;
  /** The glide is not known, and figures on the safe side stand in for it. */
  readonly isGlideAssumed: boolean;
}

/**
 * Prepare what the manual prints for many readings.
 * A table without rows counts as none. The record is taken as `performanceFaults` passes it.
 * @throws InputProblem or RangeProblem as `performanceTable`, for rows that cannot be a table
 */
export function performanceBook(record: PerformanceRecord, glide: Glide): PerformanceBook {
  const takeOff = preparedDistances(record.takeOff);
  const { bestGlideMs, bestGlideRatio } = glide;
  const isGlideAssumed = bestGlideMs === null || bestGlideRatio === null;
  return {
    takeOff,
    landing: preparedDistances(record.landing),
    climb: preparedClimb(record.climb),
    seaLevel: takeOff === null ? record.seaLevel : null,
    glideSinkMs: isGlideAssumed ? ASSUMED_SINK_MS : bestGlideMs / bestGlideRatio,
    // More than the relation takes is a glider's; counting more drag is the safe side.
    liftToDragRatio: Math.min(30, TAKE_OFF_SHARE_OF_GLIDE * (bestGlideRatio ?? ASSUMED_GLIDE_RATIO)),
    isGlideAssumed,
  };
}

/** Poorer than most of the class glide: common practice, no source. */
const ASSUMED_GLIDE_RATIO = 7;
const ASSUMED_SINK_MS = 4;
/** With flaps set for take-off: common practice, no source (see sea-level-estimate.ts). */
const TAKE_OFF_SHARE_OF_GLIDE = 0.7;

function preparedDistances(record: DistanceTableRecord | null): PreparedDistances | null {
  if (record === null || record.rows.length === 0) return null;
  const axes = axesOf(record.rows);
  const groundRoll = column(axes, record.rows, (row) => row.groundRollM);
  const overObstacle = column(axes, record.rows, (row) => row.overObstacleM);
  return groundRoll === null && overObstacle === null ? null : { record, axes, groundRoll, overObstacle };
}

function preparedClimb(record: ClimbTableRecord | null): PreparedClimb | null {
  if (record === null || record.rows.length === 0) return null;
  const axes = axesOf(record.rows);
  const rate = column(axes, record.rows, (row) => row.climbRateMs);
  if (rate === null) return null;
  const hasSpeeds = record.rows.every(({ speedMs }) => speedMs !== null);
  return {
    record,
    axes,
    rate,
    speed: hasSpeeds ? column(axes, record.rows, (row) => row.speedMs) : null,
  };
}

/** null where no row has a figure in this column. */
function column<R extends PrintedPlace>(
  axes: readonly TableAxis[],
  rows: readonly R[],
  valueOf: (row: R) => number | null,
): PreparedTable | null {
  if (axes.length === 0 || rows.every((row) => valueOf(row) === null)) return null;
  const table = performanceTable(
    axes,
    rows.map((row) => ({
      at: Object.fromEntries(axes.map((axis) => [axis, row[axis] ?? undefined])),
      value: valueOf(row),
    })),
  );
  return { table, flat: flattened(table) };
}
