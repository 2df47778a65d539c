import { InputProblem, requireRange } from '../problem.ts';
import type { Envelope, MeanChord, Phase } from './aeroplane.ts';
import { crossingEdges } from './crossing-edges.ts';
import { armAtMacPercentM, requireChord } from './mac.ts';
import { MASS_MOST_KG, requireArm } from './require-arm.ts';

/**
 * One side of an envelope as the limiting moment over mass: moment(m) = l0 + l1 m + l2 m^2, kg m.
 *
 * An edge straight in arm and mass gives l1 and l2, one straight in moment and mass l0 and l1. So a margin in arm is
 * always (limiting moment - moment) / mass, and both kinds of envelope are followed by the same sums.
 */
export interface Side {
  readonly l0: number;
  readonly l1: number;
  readonly l2: number;
}

/** Between two neighbouring vertex masses: pairs of a forward and an aft side (more than one where the polygon is notched). */
export interface Band {
  readonly lowestKg: number;
  readonly highestKg: number;
  readonly spans: readonly { readonly forward: Side; readonly aft: Side }[];
}

/** An envelope ready for following a flight: bands by rising mass, the first and last holding the limits at its ends as constant arms. */
export interface EnvelopeBands {
  readonly id: string;
  readonly name: string;
  readonly phase: Phase;
  readonly category: string;
  readonly lowestKg: number;
  /** Whether that is a least mass of the manual. */
  readonly lowestIsLimit: boolean;
  readonly highestKg: number;
  /** Widest distance from forward to aft limit, m of arm. */
  readonly widthM: number;
  readonly bands: readonly Band[];
  /** Limits at the lowest and highest mass as constant arms: what a mass below or above is compared with. */
  readonly below: Band;
  readonly above: Band;
}

interface Point {
  x: number;
  m: number;
}

/**
 * Check an envelope as typed and cut it into bands of mass.
 * @param envelope 3 to 100 vertices in order round the polygon, either way; masses 1 to 50,000 kg; arms within 100 m,
 *                 moments within 5,000,000 kg m, percent of MAC -100 to 200
 * @param mac      needed where the envelope is in percent of MAC
 * @throws RangeProblem; InputProblem for fewer than three vertices, repeated ones, no MAC, no height, or edges that
 *         cross, both named by their vertices
 */
export function envelopeBands(envelope: Envelope, mac: MeanChord | null): EnvelopeBands {
  const field = `envelopes.${envelope.id}`;
  const points = checkedPoints(envelope, mac, field);
  const inMoment = envelope.across === 'moment';
  const levels = [...new Set(points.map((p) => p.m))].sort((a, b) => a - b);
  const bands: Band[] = [];
  levels.forEach((lowestKg, i) => {
    const highestKg = levels[i + 1];
    if (highestKg !== undefined) bands.push(bandBetween(points, lowestKg, highestKg, inMoment));
  });
  const first = bands[0];
  const last = bands.at(-1);
  if (first === undefined || last === undefined)
    throw new InputProblem(field, 'the envelope has no height in mass');
  let widthM = 0;
  for (const band of bands) {
    for (const { forward, aft } of band.spans) {
      for (const m of [band.lowestKg, band.highestKg]) {
        widthM = Math.max(widthM, (limitingMomentKgM(aft, m) - limitingMomentKgM(forward, m)) / m);
      }
    }
  }
  return {
    id: envelope.id,
    name: envelope.name,
    phase: envelope.phase,
    category: envelope.category,
    lowestKg: first.lowestKg,
    lowestIsLimit: envelope.lowestIsLimit ?? false,
    highestKg: last.highestKg,
    widthM,
    bands,
    below: heldAt(first, first.lowestKg),
    above: heldAt(last, last.highestKg),
  };
}

/** Moment at which a side is met, kg m, for a mass in its band. */
export function limitingMomentKgM(side: Side, massKg: number): number {
  return side.l0 + massKg * (side.l1 + massKg * side.l2);
}

/** The band in which a mass lies; above or below the envelope, the limits at its highest or lowest mass. */
export function bandAt(envelope: EnvelopeBands, massKg: number): Band {
  if (massKg > envelope.highestKg) return envelope.above;
  return envelope.bands.findLast((band) => massKg >= band.lowestKg) ?? envelope.below;
}

/** Forward and aft limit as arms at a mass, m: beyond the envelope those at its lightest or heaviest vertex. */
export function armLimitsAt(envelope: EnvelopeBands, massKg: number): { forwardM: number; aftM: number } {
  const { spans } = bandAt(envelope, massKg);
  const armM = (side: Side | undefined) =>
    side === undefined ? NaN : limitingMomentKgM(side, massKg) / massKg;
  return { forwardM: armM(spans[0]?.forward), aftM: armM(spans.at(-1)?.aft) };
}

function checkedPoints(envelope: Envelope, mac: MeanChord | null, field: string): Point[] {
  if (envelope.vertices.length < 3)
    throw new InputProblem(field, 'an envelope needs at least three vertices');
  if (envelope.vertices.length > 100) throw new InputProblem(field, 'an envelope has at most 100 vertices');
  if (envelope.across === 'mac') {
    if (mac === null)
      throw new InputProblem(field, 'percent of MAC needs the chord: its leading edge and length');
    requireChord(mac);
  }
  const points = envelope.vertices.map(({ across, massKg }, i) => {
    const at = `${field}.vertices[${String(i)}]`;
    requireRange(`${at}.massKg`, massKg, 1, MASS_MOST_KG, 'kg');
    if (envelope.across === 'moment') requireRange(`${at}.across`, across, -5e6, 5e6, 'kg m');
    else if (envelope.across === 'arm') requireArm(`${at}.across`, across);
    else requireRange(`${at}.across`, across, -100, 200, '% MAC');
    const x = envelope.across === 'mac' && mac !== null ? armAtMacPercentM(across, mac) : across;
    return { x, m: massKg };
  });
  // A polygon closed by repeating its first vertex is taken as meant.
  const first = points[0];
  const last = points.at(-1);
  if (
    points.length > 3 &&
    first !== undefined &&
    last !== undefined &&
    first.x === last.x &&
    first.m === last.m
  )
    points.pop();
  const crossing = crossingEdges(points.map((p) => ({ x: p.x, y: p.m })));
  if (crossing !== null) {
    const name = (i: number) =>
      `the edge from vertex ${String(i + 1)} to ${String(((i + 1) % points.length) + 1)}`;
    throw new InputProblem(field, `${name(crossing[0])} and ${name(crossing[1])} cross or lie on each other`);
  }
  if (signedArea(points) === 0) throw new InputProblem(field, 'the vertices lie on one line');
  return points;
}

function signedArea(points: readonly Point[]): number {
  const origin = points[0] ?? { x: 0, m: 0 };
  let twice = 0;
  points.forEach((p, i) => {
    const q = points[(i + 1) % points.length] ?? p;
    twice += (p.x - origin.x) * (q.m - origin.m) - (q.x - origin.x) * (p.m - origin.m);
  });
  return twice / 2;
}

function bandBetween(points: readonly Point[], lowestKg: number, highestKg: number, inMoment: boolean): Band {
  const middle = (lowestKg + highestKg) / 2;
  const sides: { x: number; side: Side }[] = [];
  points.forEach((p, i) => {
    const q = points[(i + 1) % points.length] ?? p;
    const goesUp = q.m > p.m;
    if (goesUp ? p.m <= lowestKg && q.m >= highestKg : q.m <= lowestKg && p.m >= highestKg) {
      const slope = (q.x - p.x) / (q.m - p.m);
      const a = p.x - slope * p.m;
      const side = inMoment ? { l0: a, l1: slope, l2: 0 } : { l0: 0, l1: a, l2: slope };
      sides.push({ x: p.x + slope * (middle - p.m), side });
    }
  });
  sides.sort((a, b) => a.x - b.x);
  const spans: { forward: Side; aft: Side }[] = [];
  for (let i = 0; i + 1 < sides.length; i += 2) {
    const forward = sides[i];
    const aft = sides[i + 1];
    if (forward !== undefined && aft !== undefined) spans.push({ forward: forward.side, aft: aft.side });
  }
  return { lowestKg, highestKg, spans };
}

function heldAt(band: Band, massKg: number): Band {
  const held = (side: Side): Side => ({ l0: 0, l1: limitingMomentKgM(side, massKg) / massKg, l2: 0 });
  const spans = band.spans.map(({ forward, aft }) => ({ forward: held(forward), aft: held(aft) }));
  return { lowestKg: massKg, highestKg: massKg, spans };
}
