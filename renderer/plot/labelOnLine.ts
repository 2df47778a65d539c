import type { Box, Px } from './frame.ts';

/** Where a label lies along a line. */
export interface LineLabel {
  at: Px;
  /** Upright: between -90 and 90. */
  angleDeg: number;
}

/**
 * The straightest stretch of a line on which a label fits, well inside the bounds and away from other labels.
 * @param widthPx of the label
 * @param taken   middles of labels already placed, with the room that they keep
 * @returns null where the line is too short or too bent everywhere
 */
export function labelOnLine(
  line: readonly Px[],
  widthPx: number,
  bounds: Box,
  taken: readonly { at: Px; keepPx: number }[] = [],
): LineLabel | null {
  let best: LineLabel | null = null;
  let least = Infinity;
  for (let start = 0; start < line.length; start += 1) {
    const from = line[start];
    if (from === undefined) continue;
    let walked = 0;
    let end = start;
    while (walked < widthPx && end + 1 < line.length) {
      walked += distance(line[end], line[end + 1]);
      end += 1;
    }
    const to = line[end];
    if (to === undefined || walked < widthPx) break;
    const at = { x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 };
    const keep = widthPx / 2 + 4;
    if (at.x < bounds.left + keep || at.x > bounds.right - keep) continue;
    if (at.y < bounds.top + 10 || at.y > bounds.bottom - 10) continue;
    if (taken.some((one) => distance(one.at, at) < one.keepPx)) continue;
    // How much longer the way is than the chord, and a little for steepness: level text is read more easily.
    const chord = distance(from, to);
    const steep = Math.abs(Math.atan2(to.y - from.y, Math.abs(to.x - from.x)));
    const price = (walked / Math.max(1, chord) - 1) * 10 + steep * 0.3;
    if (price >= least) continue;
    least = price;
    let angle = (Math.atan2(to.y - from.y, to.x - from.x) * 180) / Math.PI;
    if (angle > 90) angle -= 180;
    if (angle < -90) angle += 180;
    best = { at, angleDeg: angle };
  }
  return best;
}

function distance(a: Px | undefined, b: Px | undefined): number {
  return a === undefined || b === undefined ? 0 : Math.hypot(a.x - b.x, a.y - b.y);
}
