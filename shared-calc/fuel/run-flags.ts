import { requireRange } from '../problem.ts';
import { usableAfterRows, type FillRun, type FuelTank, type PlacedReading } from './fill-run.ts';
import { positionOf } from './position-of.ts';

/** Something about a whole run, told at one of its rows. Nothing is left out on account of a flag. */
export type RunFlag = { readonly rowIndex: number } & (
  | { readonly kind: 'runsBackwards'; readonly direction: FillRun['direction'] }
  /** The needle went much farther for this row than for the others. */
  | { readonly kind: 'leapt'; readonly movedRatio: number; readonly usualRatio: number }
  | {
      readonly kind: 'brimBelowCapacity';
      readonly usableL: number;
      readonly missingL: number;
      /** What would explain it. */
      readonly likely: 'pourForgotten' | 'startOrContainers';
    }
);

/** Common practice, no source: printed capacities and household cans agree within about this share. */
const AGREES_RATIO = 0.03;
/** A needle that goes this many times as far as for the other pours, and by two divisions more, is looked at again. */
const LEAP_FACTOR = 2.5;
const LEAP_DIVISIONS = 2;
/** Fewer readings that moved say nothing about what is usual. */
const LEAST_MOVES = 4;

/**
 * What is odd about a run as a whole: a gauge that runs the other way, a needle that leapt, a brim that came early.
 * @param resolutionRatio smallest division read, 0.001 to 0.5
 * @throws RangeProblem for a volume, a start, the tank or the resolution outside its range
 */
export function flagRun(
  run: FillRun,
  tank: FuelTank,
  { resolutionRatio, endsAt }: { resolutionRatio: number; endsAt: 'brim' | 'gaugeStopped' | null },
): RunFlag[] {
  requireRange('resolutionRatio', resolutionRatio, 0.001, 0.5, '');
  const placed = usableAfterRows(run, tank);
  const backwards = backwardsAt(run, placed);
  return [
    ...(backwards === null ? leaps(run, placed, resolutionRatio) : [backwards]),
    ...(endsAt === 'brim' ? brim(run, placed, tank) : []),
  ];
}

interface Move {
  readonly rowIndex: number;
  readonly byRatio: number;
  readonly volumeL: number;
  /** From one reading between the stops to another: how far the needle went is known. */
  readonly isWhole: boolean;
}

/** Movements of the needle from each used reading to the next, up while filling counted positive. */
function movesOf(run: FillRun, placed: readonly PlacedReading[]): Move[] {
  const used = placed.filter(({ setAside }) => !setAside);
  const sign = run.direction === 'filling' ? 1 : -1;
  return used.slice(1).map((row, index) => {
    const before = used[index] ?? row;
    return {
      rowIndex: row.rowIndex,
      byRatio: sign * (positionOf(row.reading) - positionOf(before.reading)),
      volumeL: Math.abs(row.usableL - before.usableL),
      isWhole: row.reading.at === 'scale' && before.reading.at === 'scale',
    };
  });
}

function backwardsAt(run: FillRun, placed: readonly PlacedReading[]): RunFlag | null {
  const moves = movesOf(run, placed).filter(({ byRatio }) => byRatio !== 0);
  const [first] = moves;
  if (first === undefined || moves.length < 3 || moves.some(({ byRatio }) => byRatio > 0)) return null;
  return { rowIndex: first.rowIndex, kind: 'runsBackwards', direction: run.direction };
}

function leaps(run: FillRun, placed: readonly PlacedReading[], resolutionRatio: number): RunFlag[] {
  const moves = movesOf(run, placed).filter(({ isWhole, volumeL }) => isWhole && volumeL > 0);
  if (moves.length < LEAST_MOVES) return [];
  return moves.flatMap(({ rowIndex, byRatio, volumeL }, index): RunFlag[] => {
    const others = moves.filter((_, at) => at !== index).map((move) => move.byRatio / move.volumeL);
    // The steepest stretch nearby is what a sound gauge may do; the median of all where that is more.
    const near = [moves[index - 1], moves[index + 1]].map((move) =>
      move === undefined ? 0 : move.byRatio / move.volumeL,
    );
    const usualRatio = Math.max(median(others), ...near) * volumeL;
    // Where the others went the other way nothing is usual.
    if (usualRatio <= 0) return [];
    const isFar = byRatio > LEAP_FACTOR * usualRatio;
    return isFar && byRatio > usualRatio + LEAP_DIVISIONS * resolutionRatio
      ? [{ rowIndex, kind: 'leapt', movedRatio: byRatio, usualRatio }]
      : [];
  });
}

function brim(run: FillRun, placed: readonly PlacedReading[], tank: FuelTank): RunFlag[] {
  const last = placed.at(-1);
  if (last === undefined || run.direction !== 'filling') return [];
  const missingL = tank.usableCapacityL - last.usableL;
  if (missingL <= AGREES_RATIO * tank.usableCapacityL) return [];
  const usualL = median(run.rows.map(({ volumeL }) => volumeL).filter((volumeL) => volumeL > 0));
  // Within a fifth of one or more whole pours; half of that is what the capacity may be wrong by.
  const poursMissing = usualL > 0 ? missingL / usualL : 0;
  const isWhole = Math.round(poursMissing) >= 1 && Math.abs(poursMissing - Math.round(poursMissing)) <= 0.2;
  const likely = isWhole ? 'pourForgotten' : 'startOrContainers';
  return [{ rowIndex: last.rowIndex, kind: 'brimBelowCapacity', usableL: last.usableL, missingL, likely }];
}

function median(values: readonly number[]): number {
  const sorted = values.toSorted((a, b) => a - b);
  return sorted[Math.floor(sorted.length / 2)] ?? 0;
}
