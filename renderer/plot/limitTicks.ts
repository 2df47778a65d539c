import { px, type Px } from './frame.ts';

/** Between two strokes, and the length of one, in pixels at the usual text size. */
const spacingPx = 7;
const strokePx = 6;

/**
 * Short slanted strokes along a line, on its forbidden side, as one path.
 * @param points on the figure, in the order of travel
 * @param side   1: to the right of the direction of travel as seen on the screen; -1: to the left
 * @param r      the text scale
 */
export function limitTicks(points: readonly Px[], side: 1 | -1, r: number): string {
  let path = '';
  for (const [index, to] of points.entries()) {
    const from = points[index - 1];
    if (from === undefined) continue;
    const length = Math.hypot(to.x - from.x, to.y - from.y);
    if (length === 0) continue;
    const along = { x: (to.x - from.x) / length, y: (to.y - from.y) / length };
    const across = { x: -along.y * side, y: along.x * side };
    // Leaning back against the direction of travel, as ground is hatched in drawings.
    const stroke = {
      x: (across.x * 0.8 - along.x * 0.6) * strokePx * r,
      y: (across.y * 0.8 - along.y * 0.6) * strokePx * r,
    };
    for (let at = (spacingPx * r) / 2; at < length; at += spacingPx * r)
      path += `M${px(from.x + along.x * at)},${px(from.y + along.y * at)}l${px(stroke.x)},${px(stroke.y)}`;
  }
  return path;
}
