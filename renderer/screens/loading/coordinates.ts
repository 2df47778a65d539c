import { armAtMacPercentM } from '../../../shared-calc/loading/mac.ts';
import type { AircraftRecord, EnvelopeRecord } from '../../../shared-calc/loading/records.ts';

/** What a loading plot's other axis is, beside mass. In data: m, kg m, or the chord's share as a ratio. */
export type PlotAcross = 'arm' | 'moment' | 'mac';

/** A place on the plot: across, mass. */
export type PlotPoint = readonly [across: number, massKg: number];

/** How mass and moment become a place across. `mac` is asked for only where the aeroplane has a chord. */
export function acrossFrom(across: PlotAcross, mac: AircraftRecord['mac']) {
  return (massKg: number, momentKgM: number): number => {
    if (across === 'moment') return momentKgM;
    const armM = momentKgM / massKg;
    if (across === 'arm' || mac === null) return armM;
    return (armM - mac.leadingEdgeArmM) / mac.lengthM;
  };
}

/** An edge of an envelope as drawn; curved where the manual's coordinates are not the plot's. */
export interface OutlineEdge {
  points: PlotPoint[];
  /** The lower edge ends the manual's figures; it is no limit that ticks would mark, unless the manual states a least mass. */
  isLimit: boolean;
}

/** Pieces of a drawn edge where it is curved: far finer than a pixel shows. */
const edgePieces = 24;

/** An envelope's edges in the plot's coordinates, in the order in which its vertices stand. */
export function outlineOf(
  envelope: Pick<EnvelopeRecord, 'across' | 'vertices' | 'lowestIsLimit'>,
  to: PlotAcross,
  mac: AircraftRecord['mac'],
): OutlineEdge[] {
  const place = acrossFrom(to, mac);
  const momentAt = (across: number, massKg: number) => {
    if (envelope.across === 'moment') return across;
    return massKg * (envelope.across === 'mac' && mac !== null ? armAtMacPercentM(across, mac) : across);
  };
  // Arm and percent of the chord are straight in each other; moment is straight only in itself.
  const isStraight = (envelope.across === 'moment') === (to === 'moment');
  const pieces = isStraight ? 1 : edgePieces;
  const lowestKg = Math.min(...envelope.vertices.map(({ massKg }) => massKg));
  return envelope.vertices.map((from, index) => {
    const end = envelope.vertices[(index + 1) % envelope.vertices.length] ?? from;
    return {
      points: Array.from({ length: pieces + 1 }, (_, i): PlotPoint => {
        const share = i / pieces;
        const massKg = from.massKg + share * (end.massKg - from.massKg);
        return [place(massKg, momentAt(from.across + share * (end.across - from.across), massKg)), massKg];
      }),
      isLimit: envelope.lowestIsLimit === true || !(from.massKg === lowestKg && end.massKg === lowestKg),
    };
  });
}
