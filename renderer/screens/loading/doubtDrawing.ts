import type { LoadingResult } from '../../../shared-calc/loading/assess.ts';
import { ellipseOf, spreadAfterL } from '../../../shared-calc/loading/spread.ts';
import type { PlotPoint } from './coordinates.ts';

const nineInTen = 0.9;
const outlineCount = 60;

/**
 * Outlines that hold the loaded point nine times in ten, at take-off and where the margin is least; one where both are
 * the same, none where nothing is in doubt. In moment the ellipse is bent a little: every point of it is placed.
 */
export function doubtOutlines(
  result: LoadingResult,
  place: (massKg: number, momentKgM: number) => number,
): PlotPoint[][] {
  const { model, path, takeOff, exhausted, least } = result;
  const worstL = Math.min(least?.worst?.burnedL ?? takeOff.burnedL, exhausted.burnedL);
  const places = Math.abs(worstL - takeOff.burnedL) < 1e-6 ? [worstL] : [takeOff.burnedL, worstL];
  return places.flatMap((burnedL) => {
    const spread = spreadAfterL(model, path, burnedL);
    if (spread.armSdM === 0 && spread.massSdKg === 0) return [];
    return [
      ellipseOf(spread, nineInTen, outlineCount).map(({ armM, massKg }): PlotPoint => [
        place(massKg, armM * massKg),
        massKg,
      ]),
    ];
  });
}
