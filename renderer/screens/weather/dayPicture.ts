import { scaleLinear } from 'd3';

const HOURS = 24;

/** A day's figures as a line from midnight to midnight: the first hour again at its end. Cut where there is none. */
export function dayPieces(byHour: readonly (number | null)[]): [number, number][][] {
  const pieces: [number, number][][] = [[]];
  [...byHour.slice(0, HOURS), byHour[HOURS] ?? byHour[0] ?? null].forEach((value, hour) => {
    if (value === null) pieces.push([]);
    else pieces.at(-1)?.push([hour, value]);
  });
  return pieces.filter((piece) => piece.length > 1);
}

/** Between two lines of figures, where both are there. */
export function bandPieces(
  low: readonly (number | null)[],
  high: readonly (number | null)[],
): { x: number; low: number; high: number }[][] {
  const both = low.map((value, hour) => (value === null || high[hour] === null ? null : value));
  return dayPieces(both).map((piece) =>
    piece.map(([x, value]) => ({ x, low: value, high: high[x % HOURS] ?? value })),
  );
}

/** Hours without a figure, as stretches half an hour to either side of the full hour. */
export function emptyStretches(byHour: readonly (number | null)[]): { from: number; to: number }[] {
  const stretches: { from: number; to: number }[] = [];
  for (let hour = 0; hour <= HOURS; hour++) {
    if ((byHour[hour % HOURS] ?? null) !== null) continue;
    const from = Math.max(0, hour - 0.5);
    const to = Math.min(HOURS, hour + 0.5);
    const last = stretches.at(-1);
    if (last?.to === from) last.to = to;
    else stretches.push({ from, to });
  }
  return stretches;
}

/** Round ends of an axis that holds all figures, with a little room. */
export function roundDomain(values: readonly number[]): [number, number] {
  if (values.length === 0) return [0, 1];
  const least = Math.min(...values);
  const most = Math.max(...values);
  const room = Math.max(1e-6, (most - least) * 0.04);
  const [low = least, high = most] = scaleLinear([least - room, most + room], [0, 1])
    .nice(6)
    .domain();
  // What cannot be negative has no axis below nothing.
  return [least >= 0 ? Math.max(0, low) : low, high];
}
