import type { PlotPoint } from './coordinates.ts';

export interface PlotDomain {
  x: [number, number];
  y: [number, number];
}

/** The stretch of both axes that shows all of these points, with a little air around. */
export function domainOf(points: readonly PlotPoint[], airShare: number): PlotDomain {
  if (points.length === 0) return { x: [0, 1], y: [0, 1] };
  return {
    x: widened(
      points.map(([across]) => across),
      airShare,
    ),
    y: widened(
      points.map(([, massKg]) => massKg),
      airShare,
    ),
  };
}

function widened(values: readonly number[], airShare: number): [number, number] {
  const least = Math.min(...values);
  const most = Math.max(...values);
  // All in one place: as much to either side as a hundredth of it.
  const air = (most - least) * airShare || Math.max(Math.abs(most) * 0.01, 0.001);
  return [least - air, most + air];
}
