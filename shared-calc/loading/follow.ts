import { quadraticRootsBetween } from '../numeric/quadratic.ts';
import type { Band, EnvelopeBands, Side } from './envelope.ts';
import { limitingMomentKgM } from './envelope.ts';
import type { Path } from './path.ts';

/** The least margin met so far to one limit, where, and the stretches of burned litres in which it is broken. */
export interface Tally {
  /** m of arm or kg; negative is outside; Infinity where the limit was never compared. */
  least: number;
  /** Piece and litres since its node. */
  node: number;
  sinceL: number;
  /** Below this a margin counts as broken. */
  readonly tolerance: number;
  /** From, to, from, to ... in burned litres, rising. */
  readonly outsideL: number[];
}

/**
 * A tally before anything was compared.
 * @param tolerance margins down to minus this still meet the limit: 1e-9 of the largest mass or the envelope's width
 */
export function newTally(tolerance: number): Tally {
  return { least: Infinity, node: 0, sinceL: 0, tolerance, outsideL: [] };
}

/** Coefficients of mass and moment over the litres since a node: moment = q0 + q1 u + q2 u^2, mass = m0 + m1 u. */
interface Piece {
  node: number;
  m0: number;
  m1: number;
  q0: number;
  q1: number;
  q2: number;
}

/**
 * Follow a path from one node to another against an envelope's forward and aft limits, in closed form.
 *
 * Where the mass is above or below the whole envelope, the arms allowed at its highest or lowest mass are compared.
 * Where a notched envelope allows several ranges of arm at one mass, the range that holds the point counts, or the
 * nearest one. A path of no length (from = to) compares that point.
 * @param from, to nodes of the path, from <= to
 */
export function followEnvelope(
  path: Path,
  from: number,
  to: number,
  envelope: EnvelopeBands,
  forward: Tally,
  aft: Tally,
): void {
  if (from === to) {
    const point = pieceAt(path, from, true);
    followBands(point, 0, 0, envelope, forward, aft, path.burnedL[from] ?? 0);
    return;
  }
  for (let node = from; node < to; node++) {
    const burnedL = path.burnedL[node] ?? 0;
    const lengthL = (path.burnedL[node + 1] ?? 0) - burnedL;
    followBands(pieceAt(path, node, false), 0, lengthL, envelope, forward, aft, burnedL);
  }
}

/**
 * Follow the mass of a path against a most or a least mass. The mass falls all the way, so that only the ends and
 * one crossing a piece matter.
 * @param sense 1 where the limit is a most, -1 where it is a least
 */
export function followMass(
  path: Path,
  from: number,
  to: number,
  limitKg: number,
  sense: 1 | -1,
  tally: Tally,
): void {
  for (let node = from; node <= to; node++) {
    const margin = sense * (limitKg - (path.massKg[node] ?? 0));
    note(tally, margin, node, 0);
    const startL = path.burnedL[node] ?? 0;
    if (node === to && from !== to) break;
    const lengthL = from === to ? 0 : (path.burnedL[node + 1] ?? 0) - startL;
    const perL = -sense * (path.massPerL[node] ?? 0);
    if (Math.min(margin, margin + perL * lengthL) < -tally.tolerance) {
      addOutside(tally, margin, perL, 0, 0, lengthL, startL);
    }
  }
}

/**
 * Follow the difference of fuel between two sides against its most, either way.
 * @param densities kg/L of each tank, positive on one side, negative on the other, 0 for one that does not count
 */
export function followDifference(
  path: Path,
  densities: readonly number[],
  mostKg: number,
  tally: Tally,
): void {
  const count = densities.length;
  const differenceKg = (node: number) =>
    densities.reduce((sum, density, i) => sum + density * (path.contentsL[node * count + i] ?? 0), 0);
  for (let node = 0; node < path.nodes; node++) {
    const fromKg = differenceKg(node);
    note(tally, mostKg - Math.abs(fromKg), node, 0);
    if (node + 1 === path.nodes) break;
    const startL = path.burnedL[node] ?? 0;
    const lengthL = (path.burnedL[node + 1] ?? 0) - startL;
    const perL = lengthL > 0 ? (differenceKg(node + 1) - fromKg) / lengthL : 0;
    for (const sense of [1, -1]) {
      const margin = mostKg - sense * fromKg;
      if (Math.min(margin, margin - sense * perL * lengthL) < -tally.tolerance) {
        addOutside(tally, margin, -sense * perL, 0, 0, lengthL, startL);
      }
    }
  }
}

/**
 * Follow the lateral CG of a path from one node to another against its left (sense -1) or right (sense 1) limit: its
 * moment is straight between nodes.
 */
export function followLateral(
  path: Path,
  from: number,
  to: number,
  side: Side,
  sense: 1 | -1,
  tally: Tally,
): void {
  for (let node = from; node < to || node === from; node++) {
    const startL = path.burnedL[node] ?? 0;
    const lengthL = from === to ? 0 : (path.burnedL[node + 1] ?? 0) - startL;
    const q0 = path.lateralKgM[node] ?? 0;
    const q1 = lengthL > 0 ? ((path.lateralKgM[node + 1] ?? 0) - q0) / lengthL : 0;
    const m1 = lengthL > 0 ? (path.massPerL[node] ?? 0) : 0;
    const piece = { node, m0: path.massKg[node] ?? 0, m1, q0, q1, q2: 0 };
    followSide(piece, 0, lengthL, side, sense, tally, startL);
  }
}

function pieceAt(path: Path, node: number, alone: boolean): Piece {
  return {
    node,
    m0: path.massKg[node] ?? 0,
    m1: alone ? 0 : (path.massPerL[node] ?? 0),
    q0: path.momentKgM[node] ?? 0,
    q1: alone ? 0 : (path.momentPerL[node] ?? 0),
    q2: alone ? 0 : (path.momentCurve[node] ?? 0),
  };
}

/** Cut a piece at the vertex masses that it passes and compare each part in its band. */
function followBands(
  piece: Piece,
  fromL: number,
  toL: number,
  envelope: EnvelopeBands,
  forward: Tally,
  aft: Tally,
  startL: number,
): void {
  const { bands } = envelope;
  const endKg = piece.m0 + piece.m1 * toL;
  // A mass at the very top or bottom is in the band beside it.
  const same = 1e-12 * envelope.highestKg;
  let startKg = piece.m0;
  let u = fromL;
  if (startKg > envelope.highestKg + same) {
    const untilL = endKg >= envelope.highestKg ? toL : (envelope.highestKg - piece.m0) / piece.m1;
    followBand(piece, u, untilL, envelope.above, forward, aft, startL);
    if (endKg >= envelope.highestKg) return;
    u = untilL;
    startKg = envelope.highestKg;
  }
  for (let b = bands.length - 1; b >= 0; b--) {
    const band = bands[b];
    if (band === undefined || startKg < band.lowestKg - same) continue;
    // A path of no length at a vertex's mass has both bands; it is inside if it is inside either.
    if (piece.m1 === 0) {
      const below = b > 0 && startKg <= band.lowestKg + same ? bands[b - 1] : undefined;
      followBand(
        piece,
        u,
        toL,
        below === undefined ? band : either(band, below, startKg),
        forward,
        aft,
        startL,
      );
      return;
    }
    if (startKg <= band.lowestKg) continue;
    const untilL = endKg >= band.lowestKg ? toL : Math.max(u, (band.lowestKg - piece.m0) / piece.m1);
    followBand(piece, u, untilL, band, forward, aft, startL);
    if (endKg >= band.lowestKg) return;
    u = untilL;
    startKg = band.lowestKg;
  }
  followBand(piece, u, toL, envelope.below, forward, aft, startL);
}

/** Ranges of arm of two bands that meet at a mass, as constant arms. */
function either(above: Band, below: Band, massKg: number): Band {
  const held = (side: Side): Side => ({ l0: 0, l1: limitingMomentKgM(side, massKg) / massKg, l2: 0 });
  const spans = [...above.spans, ...below.spans].map((s) => ({ forward: held(s.forward), aft: held(s.aft) }));
  return { lowestKg: massKg, highestKg: massKg, spans };
}

function followBand(
  piece: Piece,
  fromL: number,
  toL: number,
  band: Band,
  forward: Tally,
  aft: Tally,
  startL: number,
): void {
  const only = band.spans[0];
  if (only === undefined) return;
  if (band.spans.length === 1) {
    followSide(piece, fromL, toL, only.forward, -1, forward, startL);
    followSide(piece, fromL, toL, only.aft, 1, aft, startL);
    return;
  }
  const cuts = [fromL, toL];
  for (const span of band.spans) {
    for (const side of [span.forward, span.aft]) {
      const n = numerator(piece, side, 1);
      cuts.push(...quadraticRootsBetween(n[0], n[1], n[2], fromL, toL));
    }
  }
  cuts.sort((a, b) => a - b);
  for (let i = 0; i + 1 < cuts.length; i++) {
    const a = cuts[i] ?? fromL;
    const b = cuts[i + 1] ?? toL;
    if (b === a && toL > fromL) continue;
    const span = nearestSpan(piece, (a + b) / 2, band);
    followSide(piece, a, b, span.forward, -1, forward, startL);
    followSide(piece, a, b, span.aft, 1, aft, startL);
  }
}

function nearestSpan(piece: Piece, u: number, band: Band): { forward: Side; aft: Side } {
  const m = piece.m0 + piece.m1 * u;
  const moment = piece.q0 + u * (piece.q1 + u * piece.q2);
  let best = band.spans[0];
  let bestDepth = -Infinity;
  for (const span of band.spans) {
    const depth = Math.min(
      moment - limitingMomentKgM(span.forward, m),
      limitingMomentKgM(span.aft, m) - moment,
    );
    if (depth > bestDepth) {
      bestDepth = depth;
      best = span;
    }
  }
  return best ?? { forward: { l0: 0, l1: 0, l2: 0 }, aft: { l0: 0, l1: 0, l2: 0 } };
}

/** Margin times mass along a piece, as a quadratic in u. */
function numerator(piece: Piece, side: Side, sense: 1 | -1): [number, number, number] {
  const { m0, m1 } = piece;
  const n0 = side.l0 + m0 * (side.l1 + m0 * side.l2) - piece.q0;
  const n1 = m1 * (side.l1 + 2 * m0 * side.l2) - piece.q1;
  const n2 = side.l2 * m1 * m1 - piece.q2;
  return [sense * n0, sense * n1, sense * n2];
}

/**
 * The margin to one side is n(u) / m(u) with n quadratic and m linear: its least lies at an end or where
 * n' m = n m', again a quadratic.
 */
function followSide(
  piece: Piece,
  fromL: number,
  toL: number,
  side: Side,
  sense: 1 | -1,
  tally: Tally,
  startL: number,
): void {
  // As `numerator`, without its array: a table of scenarios comes by here a million times.
  const { m0, m1 } = piece;
  const n0 = sense * (side.l0 + m0 * (side.l1 + m0 * side.l2) - piece.q0);
  const n1 = sense * (m1 * (side.l1 + 2 * m0 * side.l2) - piece.q1);
  const n2 = sense * (side.l2 * m1 * m1 - piece.q2);
  let least = (n0 + fromL * (n1 + fromL * n2)) / (m0 + m1 * fromL);
  note(tally, least, piece.node, fromL);
  if (toL > fromL) {
    const atEnd = (n0 + toL * (n1 + toL * n2)) / (m0 + m1 * toL);
    note(tally, atEnd, piece.node, toL);
    least = Math.min(least, atEnd);
    if (n2 !== 0) {
      for (const u of quadraticRootsBetween(n1 * m0 - m1 * n0, 2 * n2 * m0, n2 * m1, fromL, toL)) {
        const inside = (n0 + u * (n1 + u * n2)) / (m0 + m1 * u);
        note(tally, inside, piece.node, u);
        least = Math.min(least, inside);
      }
    }
  }
  if (least < -tally.tolerance) addOutside(tally, n0, n1, n2, fromL, toL, startL);
}

function note(tally: Tally, margin: number, node: number, sinceL: number): void {
  // Equal margins within rounding: the first place stands, so that a node keeps its name.
  if (margin < tally.least - 1e-12 || tally.least === Infinity) {
    tally.least = margin;
    tally.node = node;
    tally.sinceL = sinceL;
  }
}

/** Add the parts of a stretch in which n0 + n1 u + n2 u^2 is negative. */
function addOutside(
  tally: Tally,
  n0: number,
  n1: number,
  n2: number,
  fromL: number,
  toL: number,
  startL: number,
): void {
  const cuts = [fromL, ...quadraticRootsBetween(n0, n1, n2, fromL, toL), toL];
  for (let i = 0; i + 1 < cuts.length; i++) {
    const a = cuts[i] ?? fromL;
    const b = cuts[i + 1] ?? toL;
    const middle = (a + b) / 2;
    if (n0 + middle * (n1 + middle * n2) < 0) addSpan(tally, startL + a, startL + b);
  }
}

function addSpan(tally: Tally, fromL: number, toL: number): void {
  const spans = tally.outsideL;
  const last = spans.at(-1);
  if (last !== undefined && fromL - last < 1e-9) spans[spans.length - 1] = toL;
  else spans.push(fromL, toL);
}
