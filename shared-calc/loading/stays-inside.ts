import type { Band, EnvelopeBands } from './envelope.ts';
import { hasMargin, type EnvelopeLimit, type Limit, type MassLimit } from './limits.ts';
import { partOf, type Path } from './path.ts';

/** The limits of CG and mass that a draw of a flight has to keep, ready for many draws. */
export interface FlightLimits {
  readonly envelopes: readonly EnvelopeLimit[];
  readonly masses: readonly MassLimit[];
}

/** Limits of CG and mass; those of stations, groups and of left against right fuel are no matter of the whole flight. */
export function flightLimits(limits: readonly Limit[]): FlightLimits {
  return {
    envelopes: limits.flatMap((limit) => ('envelope' in limit && limit.kind === 'forward' ? [limit] : [])),
    masses: limits.flatMap((limit) =>
      'phase' in limit && !('envelope' in limit) && hasMargin(limit) ? [limit] : [],
    ),
  };
}

/**
 * Whether a path keeps all limits of CG and mass, stopping at the first that it breaks. The same geometry as
 * followEnvelope, without the margins: thousands of draws a drag ask only yes or no.
 * @param massTolerance kg by which a mass may pass its limit and still be on it
 */
export function staysInside(path: Path, limits: FlightLimits, massTolerance: number): boolean {
  if (!massesKept(path, limits, massTolerance, 0)) return false;
  for (const { envelope, phase } of limits.envelopes) {
    const [from, to] = partOf(path, phase);
    if (!staysInEnvelope(path, from, to, envelope)) return false;
  }
  return true;
}

/**
 * Whether a path keeps the limits of mass.
 * @param shiftKg added to every mass of the path
 */
export function massesKept(
  path: Path,
  limits: FlightLimits,
  massTolerance: number,
  shiftKg: number,
): boolean {
  for (const { kind, phase, limitKg } of limits.masses) {
    // Mass falls all the way: its most is tried where the part begins, its least where it ends.
    const node = partOf(path, phase)[kind === 'most' ? 0 : 1];
    const massKg = (path.massKg[node] ?? 0) + shiftKg;
    if (kind === 'most' ? massKg > limitKg + massTolerance : massKg < limitKg - massTolerance) return false;
  }
  return true;
}

function staysInEnvelope(path: Path, from: number, to: number, envelope: EnvelopeBands): boolean {
  const { bands } = envelope;
  const tolerance = 1e-9 * envelope.widthM;
  let b = bands.length - 1;
  for (let node = from; node <= to; node++) {
    const m0 = path.massKg[node] ?? 0;
    const last = node === to;
    const endKg = last ? m0 : (path.massKg[node + 1] ?? m0);
    while (b > 0 && m0 <= (bands[b]?.lowestKg ?? 0)) b--;
    const m1 = last ? 0 : (path.massPerL[node] ?? 0);
    let u = 0;
    // Through every band that this piece passes; masses above or below the envelope are a mass limit's matter.
    for (let at = b; at >= 0; at--) {
      const band = bands[at];
      if (band === undefined) break;
      const untilL =
        endKg >= band.lowestKg || m1 === 0 ? pieceLength(path, node, last) : (band.lowestKg - m0) / m1;
      if (!staysInBand(path, node, u, untilL, m1, band, tolerance)) return false;
      if (endKg >= band.lowestKg) break;
      u = untilL;
    }
  }
  return true;
}

function pieceLength(path: Path, node: number, last: boolean): number {
  return last ? 0 : (path.burnedL[node + 1] ?? 0) - (path.burnedL[node] ?? 0);
}

function staysInBand(
  path: Path,
  node: number,
  fromL: number,
  toL: number,
  m1: number,
  band: Band,
  toleranceM: number,
): boolean {
  const m0 = path.massKg[node] ?? 0;
  const q0 = path.momentKgM[node] ?? 0;
  const q1 = m1 === 0 ? 0 : (path.momentPerL[node] ?? 0);
  const q2 = m1 === 0 ? 0 : (path.momentCurve[node] ?? 0);
  const least = -toleranceM * m0;
  for (const { forward, aft } of band.spans) {
    const f0 = q0 - forward.l0 - m0 * (forward.l1 + m0 * forward.l2);
    const f1 = q1 - m1 * (forward.l1 + 2 * m0 * forward.l2);
    const f2 = q2 - forward.l2 * m1 * m1;
    if (!staysAbove(f0, f1, f2, fromL, toL, least)) continue;
    const a0 = aft.l0 + m0 * (aft.l1 + m0 * aft.l2) - q0;
    const a1 = m1 * (aft.l1 + 2 * m0 * aft.l2) - q1;
    const a2 = aft.l2 * m1 * m1 - q2;
    if (staysAbove(a0, a1, a2, fromL, toL, least)) return true;
  }
  return false;
}

/** Whether c0 + c1 u + c2 u^2 is nowhere below `least` between two places. */
function staysAbove(c0: number, c1: number, c2: number, fromL: number, toL: number, least: number): boolean {
  if (c0 + fromL * (c1 + fromL * c2) < least || c0 + toL * (c1 + toL * c2) < least) return false;
  if (c2 <= 0) return true;
  const bottom = -c1 / (2 * c2);
  return bottom <= fromL || bottom >= toL || c0 + bottom * (c1 + bottom * c2) >= least;
}
