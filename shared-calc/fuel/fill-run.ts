import { InputProblem, requireRange } from '../problem.ts';

/**
 * What the needle showed. On the scale it stands at a position between the stops (0 at the empty stop, 1 at
 * the full stop). Resting on a stop says only on which side of the scale the fuel is.
 */
export type GaugeReading =
  | { readonly at: 'scale'; readonly positionRatio: number }
  | { readonly at: 'emptyStop' }
  | { readonly at: 'fullStop' };

/** One pour (or drain) and the reading after it. A reading before any pour is a row with a volume of 0. */
export interface FillRow {
  /** Poured in or drained out since the row before, 0 to 1000 L. */
  readonly volumeL: number;
  readonly reading: GaugeReading;
  /** The reading is not used; the volume still counts, because the fuel is in the tank. */
  readonly setAside: boolean;
}

/**
 * Where a run began. Drained until the engine's feed runs dry: nothing usable is left. Drained at the sump:
 * the manual's unusable quantity has to go in before the first usable litre. Known: a stated usable quantity.
 */
export type RunStart =
  | { readonly from: 'engineFeed' }
  | { readonly from: 'sump' }
  | { readonly from: 'known'; readonly usableL: number };

/** Pours or drains one after another, in one attitude, at one supply voltage, with one kind of fuel. */
export interface FillRun {
  readonly direction: 'filling' | 'draining';
  readonly start: RunStart;
  readonly rows: readonly FillRow[];
}

/** The tank as the manual states it. Its total capacity is the sum of the two. */
export interface FuelTank {
  /** More than 0, at most 1000 L. */
  readonly usableCapacityL: number;
  /** 0 to 100 L. */
  readonly unusableL: number;
}

/** A row with the running sum beside it. */
export interface PlacedReading {
  readonly runIndex: number;
  readonly rowIndex: number;
  readonly direction: FillRun['direction'];
  /** Usable litres in the tank when the needle was read; below 0 while unusable fuel is still being filled. */
  readonly usableL: number;
  readonly reading: GaugeReading;
  readonly setAside: boolean;
}

const LARGEST_TANK_L = 1000;
const LARGEST_UNUSABLE_L = 100;

/** @throws RangeProblem naming the quantity of the tank that lies outside its range */
export function requireTank(tank: FuelTank): void {
  requireRange('usableCapacityL', tank.usableCapacityL, 0.1, LARGEST_TANK_L, 'L');
  requireRange('unusableL', tank.unusableL, 0, LARGEST_UNUSABLE_L, 'L');
}

/**
 * Usable fuel in the tank at each reading of one run, by the running sum of its volumes.
 * A row that is set aside keeps its volume in the sum and is returned with its mark.
 * Leaves out the errors of the containers and the change of volume with temperature.
 * @param runIndex place of the run among its tank's runs; handed on to the rows and to problems
 * @returns one entry a row, usable litres; a run from the sump starts at minus the unusable quantity
 * @throws RangeProblem when a volume, the start or the tank lies outside its range
 * @throws InputProblem when a draining run starts from an empty tank
 * @example from the sump with 2 L unusable: pours of 5 and 5 L give 3 and 8 usable litres
 */
export function usableAfterRows(run: FillRun, tank: FuelTank, runIndex = 0): PlacedReading[] {
  requireTank(tank);
  const sign = run.direction === 'filling' ? 1 : -1;
  let usableL = startUsableL(run, tank, runIndex);
  return run.rows.map((row, rowIndex) => {
    requireRange(
      `runs[${String(runIndex)}].rows[${String(rowIndex)}].volumeL`,
      row.volumeL,
      0,
      LARGEST_TANK_L,
      'L',
    );
    usableL += sign * row.volumeL;
    return {
      runIndex,
      rowIndex,
      direction: run.direction,
      usableL,
      reading: row.reading,
      setAside: row.setAside,
    };
  });
}

function startUsableL(run: FillRun, tank: FuelTank, runIndex: number): number {
  const field = `runs[${String(runIndex)}].start`;
  if (run.start.from === 'known') {
    requireRange(`${field}.usableL`, run.start.usableL, -tank.unusableL, tank.usableCapacityL, 'L');
    return run.start.usableL;
  }
  if (run.direction === 'draining') {
    throw new InputProblem(
      field,
      'a draining run needs the usable quantity that was in the tank at its start',
    );
  }
  return run.start.from === 'sump' ? -tank.unusableL : 0;
}
