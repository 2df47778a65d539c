/**
 * The first two edges of a closed polygon that cross, touch or lie on each other without being neighbours; also
 * neighbours that fold back, and an edge of no length (given twice). null where the polygon is simple.
 *
 * Edge i runs from vertex i to the next. Every pair is compared: polygons of a manual have a dozen edges.
 */
export function crossingEdges(points: readonly { x: number; y: number }[]): [number, number] | null {
  const count = points.length;
  const at = (i: number) => points[i % count] ?? { x: 0, y: 0 };
  for (let i = 0; i < count; i++) {
    const a = at(i);
    const b = at(i + 1);
    if (a.x === b.x && a.y === b.y) return [i, (i + 1) % count];
    const c = at(i + 2);
    const folds = side(a, b, c) === 0 && (c.x - b.x) * (a.x - b.x) + (c.y - b.y) * (a.y - b.y) > 0;
    if (folds) return [i, (i + 1) % count];
    for (let j = i + 2; j < count; j++) {
      if (i === 0 && j === count - 1) continue;
      if (meet(a, b, at(j), at(j + 1))) return [i, j];
    }
  }
  return null;
}

interface Point {
  x: number;
  y: number;
}

function meet(a: Point, b: Point, c: Point, d: Point): boolean {
  const ac = side(c, d, a);
  const bc = side(c, d, b);
  const ca = side(a, b, c);
  const da = side(a, b, d);
  if (((ac > 0 && bc < 0) || (ac < 0 && bc > 0)) && ((ca > 0 && da < 0) || (ca < 0 && da > 0))) return true;
  return (
    (ac === 0 && within(c, d, a)) ||
    (bc === 0 && within(c, d, b)) ||
    (ca === 0 && within(a, b, c)) ||
    (da === 0 && within(a, b, d))
  );
}

/** Twice the area of the triangle; its sign says on which side of a-b the point lies. */
function side(a: Point, b: Point, p: Point): number {
  return (b.x - a.x) * (p.y - a.y) - (b.y - a.y) * (p.x - a.x);
}

function within(a: Point, b: Point, p: Point): boolean {
  return (
    Math.min(a.x, b.x) <= p.x &&
    p.x <= Math.max(a.x, b.x) &&
    Math.min(a.y, b.y) <= p.y &&
    p.y <= Math.max(a.y, b.y)
  );
}
