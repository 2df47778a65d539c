import { L_PER_US_GAL } from '../units/constants.ts';
import { shapeOf, endKnots } from './curve-shape.ts';
import { requireTank, usableAfterRows } from './fill-run.ts';
import type { FillRun, FuelTank, PlacedReading } from './fill-run.ts';
import type { GaugeCurve } from './gauge-curve.ts';
import { positionOf } from './position-of.ts';

/** Something about a row that a person should look at again. Nothing is left out on account of a flag. */
export type RowFlag = { readonly runIndex: number; readonly rowIndex: number } & (
  | { readonly kind: 'fellWhileFilling' | 'roseWhileDraining'; readonly byRatio: number }
  | {
      readonly kind: 'aboveCapacity';
      readonly usableL: number;
      readonly excessL: number;
      readonly likely: LikelyCause;
    }
  | { readonly kind: 'belowEmptySump'; readonly usableL: number }
  | { readonly kind: 'fullFarBelowCapacity'; readonly usableL: number; readonly likely: LikelyCause }
  | { readonly kind: 'outsideScale'; readonly positionRatio: number }
);

/**
 * What would explain a total that does not fit the tank. A pour typed in gallons that was litres, or typed
 * twice, makes it too large; a forgotten pour, or gallons typed as litres, too small. A few percent too much are
 * within what containers and a capacity from the manual are good for.
 */
export type LikelyCause =
  | 'containersOrStatedCapacity'
  | 'litresTypedAsGallons'
  | 'pourTypedTwiceOrStartTooHigh'
  | 'gallonsTypedAsLitres'
  | 'pourForgotten';

/** A reading that fell by less than this while filling is within how a needle settles. */
const SETTLING_RATIO = 0.005;
/** Common practice, no source: household containers and printed capacities agree within about this. */
const CONTAINER_ERROR_RATIO = 0.03;
/** A needle on the full stop with less than this share of the capacity poured is worth a second look. */
const FULL_WITH_LITTLE_RATIO = 0.5;

/**
 * Rows to look at again, in the order of the runs.
 * @param runs readings may lie outside the scale here: that is one of the flags
 * @throws RangeProblem when a volume, a start or the tank lies outside its range
 */
export function flagRows(runs: readonly FillRun[], tank: FuelTank): RowFlag[] {
  requireTank(tank);
  return runs.flatMap((run, runIndex) => {
    const placed = usableAfterRows(run, tank, runIndex);
    const tooMuch = causeOfTooMuch(placed, run, tank);
    return placed.flatMap((row, i) => [
      ...offScale(row),
      // What is set aside was told once; it says nothing about its neighbours.
      ...wrongWay(
        row,
        placed.slice(0, i).findLast((before) => !before.setAside),
      ),
      ...wrongTotal(row, tank, tooMuch),
    ]);
  });
}

/** How far a reading lies from the curve: positive when more was in the tank than the curve says. */
export interface CurveResidual {
  readonly runIndex: number;
  readonly rowIndex: number;
  readonly usableL: number;
  /** At a mark where pours passed with no movement: 0 inside its interval, else to the nearer end. */
  readonly residualL: number;
}

/**
 * Residuals of all readings on the scale between the first and the last that moved, those set aside too.
 * @throws RangeProblem as `usableAfterRows`
 */
export function curveResiduals(curve: GaugeCurve, runs: readonly FillRun[], tank: FuelTank): CurveResidual[] {
  const { first, last } = endKnots(curve);
  const shape = shapeOf(curve);
  return runs
    .flatMap((run, runIndex) => usableAfterRows(run, tank, runIndex))
    .flatMap(({ runIndex, rowIndex, usableL, reading }) => {
      if (reading.at !== 'scale') return [];
      if (reading.positionRatio < first.positionRatio || reading.positionRatio > last.positionRatio)
        return [];
      const { lowL, highL } = shape(reading.positionRatio);
      return [
        {
          runIndex,
          rowIndex,
          usableL,
          residualL: Math.max(0, usableL - highL) + Math.min(0, usableL - lowL),
        },
      ];
    });
}

function offScale({ runIndex, rowIndex, reading }: PlacedReading): RowFlag[] {
  if (reading.at !== 'scale' || (reading.positionRatio >= 0 && reading.positionRatio <= 1)) return [];
  return [{ runIndex, rowIndex, kind: 'outsideScale', positionRatio: reading.positionRatio }];
}

function wrongWay(row: PlacedReading, before: PlacedReading | undefined): RowFlag[] {
  if (before === undefined || row.setAside) return [];
  const moveRatio = positionOf(row.reading) - positionOf(before.reading);
  const { runIndex, rowIndex } = row;
  if (row.direction === 'filling' && moveRatio < -SETTLING_RATIO) {
    return [{ runIndex, rowIndex, kind: 'fellWhileFilling', byRatio: -moveRatio }];
  }
  if (row.direction === 'draining' && moveRatio > SETTLING_RATIO) {
    return [{ runIndex, rowIndex, kind: 'roseWhileDraining', byRatio: moveRatio }];
  }
  return [];
}

function wrongTotal(row: PlacedReading, tank: FuelTank, tooMuch: LikelyCause): RowFlag[] {
  const { runIndex, rowIndex, usableL, reading } = row;
  const capacityL = tank.usableCapacityL;
  // A limit met exactly is met; the sum of typed volumes carries rounding.
  const roundingL = 1e-9 * capacityL;
  if (usableL > capacityL + roundingL) {
    return [
      { runIndex, rowIndex, kind: 'aboveCapacity', usableL, excessL: usableL - capacityL, likely: tooMuch },
    ];
  }
  if (usableL < -tank.unusableL - roundingL) return [{ runIndex, rowIndex, kind: 'belowEmptySump', usableL }];
  if (reading.at === 'fullStop' && usableL < FULL_WITH_LITTLE_RATIO * capacityL) {
    const asGallonsL = usableL * L_PER_US_GAL;
    const couldBeGallons = asGallonsL >= FULL_WITH_LITTLE_RATIO * capacityL && asGallonsL <= 1.1 * capacityL;
    const likely = couldBeGallons ? 'gallonsTypedAsLitres' : 'pourForgotten';
    return [{ runIndex, rowIndex, kind: 'fullFarBelowCapacity', usableL, likely }];
  }
  return [];
}

/** Judged by the whole run: at the first row above the capacity the excess is still small whatever the cause. */
function causeOfTooMuch(placed: readonly PlacedReading[], run: FillRun, tank: FuelTank): LikelyCause {
  const capacityL = tank.usableCapacityL;
  const highestL = Math.max(0, ...placed.map((row) => row.usableL));
  if (highestL <= capacityL * (1 + CONTAINER_ERROR_RATIO)) return 'containersOrStatedCapacity';
  const poursL = run.rows.map((row) => row.volumeL).filter((volumeL) => volumeL > 0);
  const largestL = Math.max(0, ...poursL);
  const othersL = poursL.toSpliced(poursL.indexOf(largestL), 1).sort((a, b) => a - b);
  const usualL = othersL[Math.floor(othersL.length / 2)] ?? largestL;
  // Three times the usual pour is no longer a larger can, but close to the 3.8 L of a gallon.
  const oneStandsOut = largestL >= 3 * usualL && highestL - largestL + largestL / L_PER_US_GAL <= capacityL;
  const allStandOut = highestL >= 2 * capacityL && highestL / L_PER_US_GAL <= capacityL;
  return oneStandsOut || allStandOut ? 'litresTypedAsGallons' : 'pourTypedTwiceOrStartTooHigh';
}
