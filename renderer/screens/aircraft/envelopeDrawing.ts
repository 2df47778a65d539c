import { crossingEdges } from '../../../shared-calc/loading/crossing-edges.ts';

export interface Vertex {
  across: number;
  massKg: number;
}

/** An edge of an envelope as it is drawn. */
export interface DrawnEdge {
  from: Vertex;
  to: Vertex;
  /** Lower edges bound the drawing, not the aeroplane: no ticks. */
  isLimit: boolean;
  /** One of two that meet where they must not. */
  isCrossing: boolean;
}

/** The edges of a polygon in order; the two that cross are marked. */
export function drawnEdges(vertices: readonly Vertex[]): DrawnEdge[] {
  const count = vertices.length;
  if (count < 2) return [];
  const crossing =
    count < 3 ? null : crossingEdges(vertices.map(({ across, massKg }) => ({ x: across, y: massKg })));
  const lowestKg = Math.min(...vertices.map(({ massKg }) => massKg));
  return vertices.flatMap((from, index) => {
    const to = vertices[(index + 1) % count];
    if (to === undefined || (count === 2 && index === 1)) return [];
    return [
      {
        from,
        to,
        isLimit: !(from.massKg === lowestKg && to.massKg === lowestKg),
        isCrossing: crossing?.includes(index) ?? false,
      },
    ];
  });
}

/** 1 where the vertices run with the clock as seen with mass upward, -1 against it: on which side the outside lies. */
export function turnOf(vertices: readonly Vertex[]): 1 | -1 {
  const twice = vertices.reduce((sum, from, index) => {
    const to = vertices[(index + 1) % vertices.length] ?? from;
    return sum + (to.across - from.across) * (to.massKg + from.massKg);
  }, 0);
  return twice >= 0 ? 1 : -1;
}

/** How many of an envelope's `across` make one of what fields and axes keep: percent are kept as ratios there. */
export function acrossPerKept(across: 'arm' | 'moment' | 'mac'): number {
  return across === 'mac' ? 100 : 1;
}
