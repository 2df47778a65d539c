import type { Px } from './frame.ts';

/** Where the pieces of a measured line lie. */
export interface MeasureLayout {
  lines: readonly (readonly [Px, Px])[];
  label: Px;
  anchor: '' | 'mid' | 'end';
}

/** Room kept between the figure and the two pieces of its line. */
const airPx = 5;

/**
 * Break a measured line for its figure, or set the figure beside it where the line is too short to be broken.
 * @param textPx   width of the figure
 * @param linePx   height of its line
 * @param hasNoText draws the line whole
 */
export function measureLayout(
  from: Px,
  to: Px,
  textPx: number,
  linePx: number,
  hasNoText = false,
): MeasureLayout {
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  const along = length === 0 ? { x: 1, y: 0 } : { x: (to.x - from.x) / length, y: (to.y - from.y) / length };
  const middle = { x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 };
  const isSteep = Math.abs(along.y) > 0.5;
  const gap = isSteep ? linePx / 2 + 2 : textPx / 2 + airPx;
  // Each remaining piece must still be seen behind its arrowhead.
  const isTooShort = length / 2 - gap < 14;
  const baseline = linePx * 0.28;
  if (hasNoText || isTooShort) {
    const label = isSteep
      ? { x: middle.x - airPx - 2, y: middle.y + baseline }
      : { x: middle.x, y: middle.y - airPx - 2 };
    return { lines: [[from, to]], label, anchor: isSteep ? 'end' : 'mid' };
  }
  return {
    lines: [
      [from, { x: middle.x - along.x * gap, y: middle.y - along.y * gap }],
      [{ x: middle.x + along.x * gap, y: middle.y + along.y * gap }, to],
    ],
    label: { x: middle.x, y: middle.y + baseline },
    anchor: 'mid',
  };
}

/** The three corners of an arrowhead at `to`, for a line that comes from `from`. */
export function arrowHead(from: Px, to: Px, lengthPx: number): readonly [Px, Px, Px] {
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  const along = length === 0 ? { x: 1, y: 0 } : { x: (to.x - from.x) / length, y: (to.y - from.y) / length };
  const half = lengthPx * 0.28;
  const back = { x: to.x - along.x * lengthPx, y: to.y - along.y * lengthPx };
  return [
    to,
    { x: back.x + along.y * half, y: back.y - along.x * half },
    { x: back.x - along.y * half, y: back.y + along.x * half },
  ];
}
