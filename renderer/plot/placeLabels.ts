import type { Box, Px } from './frame.ts';

/** A label that looks for a place near its point. */
export interface LabelWish {
  at: Px;
  widthPx: number;
  heightPx: number;
  /** Directions to try first, in degrees from the right, clockwise on the screen (0 right, 90 below). */
  preferDeg?: readonly number[];
  /** Room between point and label. */
  offPx?: number;
}

/** What labels keep clear of. */
export interface KeepClear {
  lines: readonly (readonly Px[])[];
  boxes: readonly Box[];
}

/** Where a label was put: its box, and whether it is so far from its point that a hair must lead to it. */
export interface PlacedLabel {
  box: Box;
  needsLeader: boolean;
}

const directionsDeg = [0, 45, 315, 135, 225, 90, 270, 180];
/** Rings of places to try, as multiples of the wished distance. */
const rings = [1, 1.8, 3, 4.5, 6.5];
const cost = { label: 40, line: 14, outside: 200, ring: 2, direction: 0.35 };

/**
 * Find a place for every label so that they keep clear of each other, of lines and of boxes, inside the bounds.
 * The first labels choose first; a second round lets each move once more, knowing where the others are.
 * @returns in the order of `wishes`; where there is no free place the least bad one
 */
export function placeLabels(wishes: readonly LabelWish[], keepClear: KeepClear, bounds: Box): PlacedLabel[] {
  const placed: (PlacedLabel | undefined)[] = wishes.map(() => undefined);
  for (let round = 0; round < 2; round += 1)
    wishes.forEach((wish, index) => {
      const others = placed.flatMap((one, at) => (one === undefined || at === index ? [] : [one.box]));
      placed[index] = bestPlace(wish, { lines: keepClear.lines, boxes: keepClear.boxes }, others, bounds);
    });
  return placed.map((one, index) => one ?? fallback(wishes[index]));
}

function fallback(wish: LabelWish | undefined): PlacedLabel {
  const at = wish?.at ?? { x: 0, y: 0 };
  return { box: { left: at.x, top: at.y, right: at.x, bottom: at.y }, needsLeader: false };
}

function bestPlace(wish: LabelWish, clear: KeepClear, others: readonly Box[], bounds: Box): PlacedLabel {
  const directions = [
    ...(wish.preferDeg ?? []),
    ...directionsDeg.filter((d) => !wish.preferDeg?.includes(d)),
  ];
  let best: PlacedLabel = fallback(wish);
  let least = Infinity;
  rings.forEach((ring, ringIndex) => {
    directions.forEach((direction, order) => {
      const far = ringIndex * cost.ring + order * cost.direction;
      // Whatever else it crosses only adds to the price: most places need no looking at.
      if (far >= least) return;
      const box = boxAt(wish, direction, (wish.offPx ?? 8) * ring);
      const price =
        far +
        cost.label * [...others, ...clear.boxes].filter((other) => overlaps(box, other)).length +
        cost.line * clear.lines.filter((line) => crosses(line, box)).length +
        (isInside(box, bounds) ? 0 : cost.outside);
      if (price < least) {
        least = price;
        best = { box, needsLeader: ringIndex >= 2 };
      }
    });
  });
  return best;
}

/** The label's box when it stands in a direction from its point: its nearest edge or corner faces the point. */
function boxAt(wish: LabelWish, directionDeg: number, offPx: number): Box {
  const angle = (directionDeg * Math.PI) / 180;
  const way = { x: Math.cos(angle), y: Math.sin(angle) };
  const centre = {
    x: wish.at.x + way.x * offPx + (Math.abs(way.x) < 1e-6 ? 0 : (Math.sign(way.x) * wish.widthPx) / 2),
    y: wish.at.y + way.y * offPx + (Math.abs(way.y) < 1e-6 ? 0 : (Math.sign(way.y) * wish.heightPx) / 2),
  };
  return {
    left: centre.x - wish.widthPx / 2,
    right: centre.x + wish.widthPx / 2,
    top: centre.y - wish.heightPx / 2,
    bottom: centre.y + wish.heightPx / 2,
  };
}

export function overlaps(a: Box, b: Box): boolean {
  return a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;
}

function isInside(inner: Box, outer: Box): boolean {
  return (
    inner.left >= outer.left &&
    inner.right <= outer.right &&
    inner.top >= outer.top &&
    inner.bottom <= outer.bottom
  );
}

/** Whether a broken line touches a box. */
export function crosses(line: readonly Px[], box: Box): boolean {
  return line.some((to, index) => {
    const from = line[index - 1];
    return from !== undefined && segmentTouches(from, to, box);
  });
}

/** Liang and Barsky: the part of a segment inside a box is not empty. */
function segmentTouches(from: Px, to: Px, box: Box): boolean {
  // Nearly all lie wholly to one side.
  if (from.x < box.left && to.x < box.left) return false;
  if (from.x > box.right && to.x > box.right) return false;
  if (from.y < box.top && to.y < box.top) return false;
  if (from.y > box.bottom && to.y > box.bottom) return false;
  let enter = 0;
  let leave = 1;
  const dx = to.x - from.x;
  const dy = to.y - from.y;
  for (const [way, room] of [
    [-dx, from.x - box.left],
    [dx, box.right - from.x],
    [-dy, from.y - box.top],
    [dy, box.bottom - from.y],
  ] as const) {
    if (way === 0) {
      if (room < 0) return false;
    } else if (way < 0) enter = Math.max(enter, room / way);
    else leave = Math.min(leave, room / way);
  }
  return enter <= leave;
}
