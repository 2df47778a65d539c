import type { AircraftRecord, EnvelopeRecord } from '../../../shared-calc/loading/records.ts';
import { fieldText, unitSuffix } from '../../../shared-calc/units/shown.ts';
import type { ManualUnits } from './printedUnits.ts';

/** A top this far from the maximum mass is more likely in another unit, or from another aeroplane. */
const FAR_RATIO = 1.5;

/**
 * What in an envelope is possible but seldom meant: masses in another unit than the maximum, limits beyond every place
 * and wheel of the aeroplane. Sentences to be read beside the entry; nothing is refused.
 */
export function envelopeDoubts(
  envelope: Pick<EnvelopeRecord, 'across' | 'vertices' | 'phase'>,
  aircraft: Pick<AircraftRecord, 'maxMasses' | 'stations' | 'tanks' | 'gear' | 'mac'>,
  units: ManualUnits,
): string[] {
  const { vertices, across } = envelope;
  if (vertices.length < 3) return [];
  const doubts: string[] = [];
  const topKg = Math.max(...vertices.map(({ massKg }) => massKg));
  const mostKg = aircraft.maxMasses.takeOffKg;
  const mass = (massKg: number) => `${fieldText(massKg, 'mass', units.mass)}${unitSuffix(units.mass)}`;
  if (mostKg !== null && (topKg > FAR_RATIO * mostKg || topKg < mostKg / FAR_RATIO))
    doubts.push(
      `It reaches ${mass(topKg)}; the maximum at take-off is ${mass(mostKg)}. Is one of them in another unit?`,
    );
  const places = placesOf(aircraft);
  const limits = vertices.map((vertex) => {
    if (across === 'arm') return vertex.across;
    if (across === 'moment') return vertex.across / vertex.massKg;
    const { mac } = aircraft;
    return mac === null ? NaN : mac.leadingEdgeArmM + (vertex.across / 100) * mac.lengthM;
  });
  const [foremostM, aftmostM] = [Math.min(...limits), Math.max(...limits)];
  const [firstM, lastM] = [Math.min(...places), Math.max(...places)];
  if (places.length >= 2 && (foremostM < firstM || aftmostM > lastM)) {
    const arm = (armM: number) => `${fieldText(armM, 'arm', units.arm)}${unitSuffix(units.arm)}`;
    doubts.push(
      `It runs from ${arm(foremostM)} to ${arm(aftmostM)}; every station, tank and wheel lies between ${arm(firstM)} and ${arm(lastM)}. Look again at the datum, the unit and the figures.`,
    );
  }
  return doubts;
}

function placesOf({ stations, tanks, gear }: Pick<AircraftRecord, 'stations' | 'tanks' | 'gear'>): number[] {
  return [
    ...stations.flatMap(({ arm }) => (arm.kind === 'fixed' ? [arm.armM] : [arm.foremostM, arm.aftmostM])),
    ...tanks.flatMap(({ arm }) => (arm.kind === 'fixed' ? [arm.armM] : [])),
    ...[gear.mainArmM, gear.noseOrTailArmM].filter((armM) => armM !== null),
  ];
}
