import { quadraticRootsBetween } from '../numeric/quadratic.ts';
import { limitingMomentKgM, type EnvelopeBands, type Side } from './envelope.ts';
import type { Path } from './path.ts';

/**
 * What several envelopes leave together: for each band of mass the aftmost of the forward sides and the foremost of
 * the aft sides. Bands by falling mass, as a flight passes them; six coefficients a band (l0, l1, l2 of each side).
 */
export interface Corridor {
  readonly count: number;
  readonly lowestKg: Float64Array;
  readonly sides: Float64Array;
}

/** Moments that the fixed part of a loading may add to a path and still keep it in a corridor, kg m. */
export interface MomentRoom {
  leastKgM: number;
  mostKgM: number;
}

/**
 * Join envelopes that hold in the same part of a flight; null where one of them is notched (several ranges of arm at
 * one mass), where they have no mass in common, or where there is none.
 */
export function corridorOf(envelopes: readonly EnvelopeBands[]): Corridor | null {
  if (envelopes.some((envelope) => envelope.bands.some((band) => band.spans.length !== 1))) return null;
  const lowestKg = Math.max(...envelopes.map((envelope) => envelope.lowestKg));
  const highestKg = Math.min(...envelopes.map((envelope) => envelope.highestKg));
  if (!(lowestKg < highestKg)) return null;
  const vertices = envelopes.flatMap((envelope) =>
    envelope.bands.flatMap((band) => [band.lowestKg, band.highestKg]),
  );
  const levels = distinct([lowestKg, highestKg, ...vertices.filter((m) => m > lowestKg && m < highestKg)]);
  // Where two sides cross inside a band, the tighter one changes: cut there.
  const cuts = levels.flatMap((top, i) => {
    const bottom = levels[i + 1];
    return bottom === undefined ? [] : crossings(envelopes, bottom, top);
  });
  const edges = distinct([...levels, ...cuts]);
  const count = edges.length - 1;
  const lowest = new Float64Array(count);
  const sides = new Float64Array(count * 6);
  for (let b = 0; b < count; b++) {
    const top = edges[b] ?? highestKg;
    const bottom = edges[b + 1] ?? lowestKg;
    const { forward, aft } = tightestAt(envelopes, (top + bottom) / 2);
    lowest[b] = bottom;
    sides.set([forward.l0, forward.l1, forward.l2, aft.l0, aft.l1, aft.l2], b * 6);
  }
  return { count, lowestKg: lowest, sides };
}

/**
 * Narrow `room` to the moments that keep a path from node `from` to node `to` in a corridor, in closed form.
 *
 * At every instant the moment has to lie between the two sides at that mass, so the room is the least of
 * side - moment along the path: quadratic on each piece. Masses beyond the corridor are compared with its end.
 * @param shiftKg added to every mass of the path
 */
export function narrowRoom(
  path: Path,
  from: number,
  to: number,
  corridor: Corridor,
  shiftKg: number,
  room: MomentRoom,
): void {
  const { count, lowestKg, sides } = corridor;
  let least = room.leastKgM;
  let most = room.mostKgM;
  let b = 0;
  for (let node = from; node <= to; node++) {
    const single = node === to;
    // The last node ends the last piece; it is looked at by itself only where it is the whole part.
    if (single && from !== to) break;
    const m0 = (path.massKg[node] ?? 0) + shiftKg;
    const m1 = single ? 0 : (path.massPerL[node] ?? 0);
    const q0 = path.momentKgM[node] ?? 0;
    const q1 = single ? 0 : (path.momentPerL[node] ?? 0);
    const q2 = single ? 0 : (path.momentCurve[node] ?? 0);
    const lengthL = single ? 0 : (path.burnedL[node + 1] ?? 0) - (path.burnedL[node] ?? 0);
    const endKg = m0 + m1 * lengthL;
    let u = 0;
    for (;;) {
      while (b + 1 < count && m0 + m1 * u <= (lowestKg[b] ?? 0)) b++;
      const bottom = lowestKg[b] ?? 0;
      const leaves = m1 < 0 && b + 1 < count && endKg < bottom;
      const end = leaves ? (bottom - m0) / m1 : lengthL;
      const at = b * 6;
      const f1 = sides[at + 1] ?? 0;
      const f2 = sides[at + 2] ?? 0;
      let c0 = (sides[at] ?? 0) + m0 * (f1 + m0 * f2) - q0;
      let c1 = m1 * (f1 + 2 * m0 * f2) - q1;
      let c2 = f2 * m1 * m1 - q2;
      let here = c0 + u * (c1 + u * c2);
      let there = c0 + end * (c1 + end * c2);
      if (here > least) least = here;
      if (there > least) least = there;
      if (c2 < 0) {
        const top = -c1 / (2 * c2);
        if (top > u && top < end) least = Math.max(least, c0 + top * (c1 + top * c2));
      }
      const a1 = sides[at + 4] ?? 0;
      const a2 = sides[at + 5] ?? 0;
      c0 = (sides[at + 3] ?? 0) + m0 * (a1 + m0 * a2) - q0;
      c1 = m1 * (a1 + 2 * m0 * a2) - q1;
      c2 = a2 * m1 * m1 - q2;
      here = c0 + u * (c1 + u * c2);
      there = c0 + end * (c1 + end * c2);
      if (here < most) most = here;
      if (there < most) most = there;
      if (c2 > 0) {
        const bottomAt = -c1 / (2 * c2);
        if (bottomAt > u && bottomAt < end) most = Math.min(most, c0 + bottomAt * (c1 + bottomAt * c2));
      }
      if (!leaves) break;
      u = end;
      b++;
    }
    if (least > most) break;
  }
  room.leastKgM = least;
  room.mostKgM = most;
}

function distinct(falling: readonly number[]): number[] {
  return [...new Set(falling)].sort((a, b) => b - a);
}

function spanAt(envelope: EnvelopeBands, massKg: number): { forward: Side; aft: Side } {
  const band = envelope.bands.findLast((one) => massKg >= one.lowestKg) ?? envelope.below;
  const none = { l0: 0, l1: 0, l2: 0 };
  return band.spans[0] ?? { forward: none, aft: none };
}

function tightestAt(envelopes: readonly EnvelopeBands[], massKg: number): { forward: Side; aft: Side } {
  const spans = envelopes.map((envelope) => spanAt(envelope, massKg));
  const most = (sides: readonly Side[], sense: 1 | -1) =>
    sides.reduce((a, b) =>
      sense * limitingMomentKgM(b, massKg) > sense * limitingMomentKgM(a, massKg) ? b : a,
    );
  return {
    forward: most(
      spans.map((span) => span.forward),
      1,
    ),
    aft: most(
      spans.map((span) => span.aft),
      -1,
    ),
  };
}

/** Masses between two levels at which the forward sides, or the aft sides, of two envelopes cross. */
function crossings(envelopes: readonly EnvelopeBands[], bottomKg: number, topKg: number): number[] {
  const spans = envelopes.map((envelope) => spanAt(envelope, (bottomKg + topKg) / 2));
  const found: number[] = [];
  spans.forEach((one, i) => {
    for (const other of spans.slice(i + 1)) {
      for (const [a, b] of [
        [one.forward, other.forward],
        [one.aft, other.aft],
      ] as const) {
        found.push(...quadraticRootsBetween(a.l0 - b.l0, a.l1 - b.l1, a.l2 - b.l2, bottomKg, topKg));
      }
    }
  });
  return found;
}
