import { quantileReordering } from '../climate/quantile.ts';
import { InputProblem } from '../problem.ts';
import type { GaugeReading } from './fill-run.ts';
import { endKnots } from './curve-shape.ts';
import type { GaugeCurve } from './gauge-curve.ts';
import { pairedRefits, refitVolumesAtL, type KeptRefits } from './kept-refits.ts';
import { fuelAtReading, type ReadingPrecision } from './readout.ts';

/** One tank with what its gauge shows. */
export interface ReadTank {
  readonly curve: GaugeCurve;
  /** null for a curve that was adopted before the curves behind a band were kept. */
  readonly refits: KeptRefits | null;
  readonly reading: GaugeReading;
}

export interface FuelTotal {
  /** Plan on this many usable litres in all tanks together. */
  readonly planningL: number;
  /** null where a tank is known only by an interval. */
  readonly bestL: number | null;
  /** As much as may be there. */
  readonly mostL: number;
  /** Whether the doubts of the tanks were taken together; else each tank's own figure was added, which is less. */
  readonly isJoint: boolean;
}

/** A reading's own error as parts of its division: the middles of equal slices. */
const SLICES = 8;

/**
 * Usable fuel in two or more tanks by their gauges. Both are seldom at their lowest at once, so the total to plan on
 * is more than the sum of the figures to plan on; only the error of a can that both tanks were filled from goes
 * together. Without kept curves the figures are added: the safe side.
 * @throws InputProblem for no tank, RangeProblem for a reading outside the scale
 */
export function totalFuel(tanks: readonly ReadTank[], precision: ReadingPrecision): FuelTotal {
  if (tanks.length === 0) throw new InputProblem('tanks', 'a total needs at least one tank');
  const readouts = tanks.map(({ curve, reading }) => fuelAtReading(curve, reading, precision));
  const best = readouts.map(({ bestL }) => bestL);
  const bestL = best.every((each) => each !== null) ? best.reduce((sum, each) => sum + each, 0) : null;
  const added = {
    planningL: readouts.reduce((sum, { planningL }) => sum + planningL, 0),
    mostL: readouts.reduce((sum, { mostL }) => sum + mostL, 0),
  };
  const drawn = tanks.map((tank) => drawsOf(tank, precision));
  if (tanks.length === 1 || drawn.some((each) => each === null)) return { ...added, bestL, isJoint: false };
  const joint = drawn.filter((each) => each !== null);
  return {
    bestL,
    planningL: isDoubtful(joint, 'low') ? sumQuantile(joint, 'low', 0.05) : added.planningL,
    mostL: isDoubtful(joint, 'high') ? sumQuantile(joint, 'high', 0.95) : added.mostL,
    isJoint: true,
  };
}

/**
 * What each kept curve says: one list of possible volumes a curve, the reading's own error spread over the list.
 * @internal to this room
 */
export interface Draws {
  readonly refits: KeptRefits;
  readonly low: readonly (readonly number[])[];
  readonly high: readonly (readonly number[])[];
}

/** null where no curves were kept. @internal to this room */
export function drawsOf({ curve, refits, reading }: ReadTank, precision: ReadingPrecision): Draws | null {
  if (refits === null || refits.volumesL.length === 0) return null;
  const { place, planningL, mostL } = fuelAtReading(curve, reading, precision);
  const { first, last } = endKnots(curve);
  const at = (positionRatio: number) => valuesAt(refits, positionRatio, curve.resolutionRatio, precision);
  const constant = (valueL: number) => refits.volumesL.map(() => [valueL]);
  switch (place) {
    case 'onCurve': {
      const values = at(reading.at === 'scale' ? reading.positionRatio : last.positionRatio);
      return { refits, low: values, high: values };
    }
    // Promised is what the last reading that moved promises; the rest up to the brim may be there.
    case 'aboveLastMoved':
    case 'fullStop':
      return { refits, low: at(last.positionRatio), high: constant(mostL) };
    case 'belowFirstMoved':
    case 'emptyStop':
      return { refits, low: constant(0), high: at(first.positionRatio) };
    case 'deadZone':
      return { refits, low: constant(planningL), high: constant(mostL) };
  }
}

function valuesAt(
  refits: KeptRefits,
  positionRatio: number,
  resolutionRatio: number,
  precision: ReadingPrecision,
): number[][] {
  const first = refits.positionsRatio[0] ?? 0;
  const last = refits.positionsRatio.at(-1) ?? 1;
  const offsets =
    precision === 'needleOnMark'
      ? [0]
      : Array.from({ length: SLICES }, (_, slice) => ((slice + 0.5) / SLICES - 0.5) * resolutionRatio);
  const columns = offsets.map((offset) =>
    // Past the ends nothing was measured; the end itself stands for what lies beyond it within the division.
    refitVolumesAtL(refits, Math.min(last, Math.max(first, positionRatio + offset))),
  );
  return refits.volumesL.map((_, refit) => columns.map((column) => Math.max(0, column[refit] ?? 0)));
}

/** Where at most one tank is in doubt, its own figure is the total's, to the last digit. @internal to this room */
export function isDoubtful(draws: readonly Draws[], side: 'low' | 'high'): boolean {
  const varies = (lists: readonly (readonly number[])[]) =>
    lists.some((list) => list.some((each) => each !== lists[0]?.[0]));
  return draws.filter((each) => varies(each[side])).length > 1;
}

function sumQuantile(draws: readonly Draws[], side: 'low' | 'high', prob: number): number {
  const [lead, ...others] = draws;
  if (lead === undefined) return 0;
  const pairs = others.map((other) => pairedRefits(lead.refits, other.refits));
  const count = Math.min(...draws.map((each) => each.refits.volumesL.length));
  const sums: number[] = [];
  for (let refit = 0; refit < count; refit++) {
    let together: readonly number[] = lead[side][refit] ?? [];
    others.forEach((other, index) => {
      const more = other[side][pairs[index]?.[refit] ?? refit] ?? [];
      // The errors of two readings are independent: every part of one division with every part of the other.
      const all = together.flatMap((sumL) => more.map((valueL) => sumL + valueL));
      together = all.length > SLICES * SLICES ? thinned(all) : all;
    });
    for (const sumL of together) sums.push(sumL);
  }
  return quantileReordering(Float64Array.from(sums), prob);
}

/** Evenly taken from all: three tanks and more would make hundreds of sums a curve. @internal to this room */
export function thinned(values: readonly number[]): number[] {
  const sorted = values.toSorted((a, b) => a - b);
  const stride = sorted.length / SLICES;
  return Array.from({ length: SLICES }, (_, slice) => sorted[Math.floor((slice + 0.5) * stride)] ?? 0);
}
