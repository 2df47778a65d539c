import { bandShapeOf, endKnots } from '../curve-shape.ts';
import type { BandedCurve } from '../gauge-curve.ts';
import type { FitRows } from './fill-data.ts';
import { NewtonFit } from './newton.ts';
import { weightedModes, type WeightedMode } from './refits.ts';
import { fillGrid, GRID_CELLS, volumeOnGridL } from './slope-curve.ts';

/** Settings with less of the posterior than this move the curve by less than a line is wide. */
const WORTH_FOLLOWING = 0.01;

/** What a whole fit leaves behind for quick ones near it. */
export interface QuickStart {
  /** The curve of the whole fit. */
  readonly curve: BandedCurve;
  readonly modes: readonly WeightedMode[];
}

/** The modes that a quick curve follows. */
export function modesToFollow(modes: readonly WeightedMode[]): WeightedMode[] {
  return modes.filter(({ weightRatio }) => weightRatio >= WORTH_FOLLOWING);
}

/** Usable litres on the grid's lines: the modes' curves, each by its weight. */
export function meanOfModesL(modes: readonly WeightedMode[]): Float64Array {
  const total = modes.reduce((sum, { weightRatio }) => sum + weightRatio, 0);
  const meanL = new Float64Array(GRID_CELLS + 1);
  const volumesL = new Float64Array(GRID_CELLS + 1);
  const slopesL = new Float64Array(GRID_CELLS);
  for (const { state, weightRatio } of modes) {
    fillGrid(state.curve, volumesL, slopesL);
    for (let i = 0; i <= GRID_CELLS; i++)
      meanL[i] = (meanL[i] as number) + (weightRatio / total) * (volumesL[i] as number);
  }
  return meanL;
}

/**
 * The best estimate while a point or a pin is dragged, before the band follows: the whole fit's own curve, moved by what
 * its modes move. Each mode starts from where it lay, so a few steps do.
 * It is for drawing alone: the figure to plan on is the band's, and waits for it.
 * @param rows  of the test as it is now
 * @param start a whole fit of rows that differ a little
 * @returns pairs of position and usable litres, from the first to the last reading between the stops
 */
export function quickCurve(rows: FitRows, { curve, modes }: QuickStart): (readonly [number, number])[] {
  const { first, last } = endKnots(curve);
  const at = bandShapeOf(curve);
  const beforeL = meanOfModesL(modes);
  const nowL = meanOfModesL(weightedModes(new NewtonFit(rows), modes));
  const span = rows.lastPosition - rows.firstPosition;
  return Array.from({ length: GRID_CELLS + 1 }, (_, index) => {
    const position = rows.firstPosition + (span * index) / GRID_CELLS;
    // Past the readings of the whole fit its end stands for what lies beyond.
    const known = Math.min(last.positionRatio, Math.max(first.positionRatio, position));
    const offL = at(known).bestL - volumeOnGridL(beforeL, known);
    return [position, Math.max(0, volumeOnGridL(nowL, position) + offL)] as const;
  });
}
