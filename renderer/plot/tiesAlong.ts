import { px, type Px } from './frame.ts';

/**
 * Short strokes across a line at even distances, as one path.
 * @param spacingPx between two strokes
 * @param halfPx    how far each reaches to either side
 */
export function tiesAlong(points: readonly Px[], spacingPx: number, halfPx: number): string {
  let path = '';
  let walked = spacingPx / 2;
  for (const [index, to] of points.entries()) {
    const from = points[index - 1];
    if (from === undefined) continue;
    const length = Math.hypot(to.x - from.x, to.y - from.y);
    if (length === 0) continue;
    const along = { x: (to.x - from.x) / length, y: (to.y - from.y) / length };
    for (; walked < length; walked += spacingPx) {
      const at = { x: from.x + along.x * walked, y: from.y + along.y * walked };
      path += `M${px(at.x + along.y * halfPx)},${px(at.y - along.x * halfPx)}L${px(at.x - along.y * halfPx)},${px(at.y + along.x * halfPx)}`;
    }
    walked -= length;
  }
  return path;
}
