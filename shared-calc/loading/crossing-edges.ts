/** Two edges of a polygon, each named by the number (from 1) of the vertex where it starts. */
export interface CrossingEdges {
  firstFrom: number;
  secondFrom: number;
}

/**
 * The first two edges of a closed polygon that meet anywhere but at a shared corner, or null.
 *
 * Overlapping edges and a corner that lies on another edge count as meeting: neither bounds an area. Two
 * vertices in the same place count too.
 * @param vertices in order around the polygon; the last is joined to the first
 * @source orientation test: Preparata and Shamos, Computational Geometry, 1985, section 2.2
 */
export function crossingEdges(vertices: readonly { across: number; massKg: number }[]): CrossingEdges | null {
  const count = vertices.length;
  for (let i = 0; i < count; i++) {
    for (let j = i + 1; j < count; j++) {
      const [a, b] = edge(vertices, i);
      const [c, d] = edge(vertices, j);
      const meeting =
        j === i + 1 ? foldsBack(a, b, d) : (j + 1) % count === i ? foldsBack(c, a, b) : meet(a, b, c, d);
      if (meeting) return { firstFrom: i + 1, secondFrom: j + 1 };
    }
  }
  return null;
}

interface Point {
  across: number;
  massKg: number;
}

function edge(vertices: readonly Point[], from: number): [Point, Point] {
  const start = vertices[from];
  const end = vertices[(from + 1) % vertices.length];
  if (start === undefined || end === undefined) throw new RangeError(`no vertex ${String(from)}`);
  return [start, end];
}

/** Twice the signed area of a triangle: its sign tells on which side of a to b the point c lies. */
function side(a: Point, b: Point, c: Point): number {
  return (b.across - a.across) * (c.massKg - a.massKg) - (b.massKg - a.massKg) * (c.across - a.across);
}

function meet(a: Point, b: Point, c: Point, d: Point): boolean {
  const abc = Math.sign(side(a, b, c));
  const abd = Math.sign(side(a, b, d));
  const cda = Math.sign(side(c, d, a));
  const cdb = Math.sign(side(c, d, b));
  if (abc !== abd && cda !== cdb && abc * abd <= 0 && cda * cdb <= 0) return true;
  return (
    (abc === 0 && between(a, b, c)) ||
    (abd === 0 && between(a, b, d)) ||
    (cda === 0 && between(c, d, a)) ||
    (cdb === 0 && between(c, d, b))
  );
}

function between(a: Point, b: Point, c: Point): boolean {
  return (
    Math.min(a.across, b.across) <= c.across &&
    c.across <= Math.max(a.across, b.across) &&
    Math.min(a.massKg, b.massKg) <= c.massKg &&
    c.massKg <= Math.max(a.massKg, b.massKg)
  );
}

/** Neighbouring edges share their corner anyway; they meet beyond it when the second runs back along the first. */
function foldsBack(before: Point, corner: Point, after: Point): boolean {
  const along =
    (before.across - corner.across) * (after.across - corner.across) +
    (before.massKg - corner.massKg) * (after.massKg - corner.massKg);
  return side(before, corner, after) === 0 && along >= 0;
}
