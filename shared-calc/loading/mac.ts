import { requireRange } from '../problem.ts';
import type { MeanChord } from './aeroplane.ts';
import { requireArm } from './require-arm.ts';

/**
 * Where an arm lies on the mean aerodynamic chord, in percent from its leading edge.
 * @param armM within 100 m of the datum
 * @param mac  leading edge within 100 m, length 0.1 to 20 m
 * @returns percent; negative ahead of the leading edge, above 100 behind the chord
 * @throws RangeProblem
 * @source FAA-H-8083-1B, Aircraft Weight and Balance Handbook, chapter 3
 * See armAtMacPercentM for the way back.
 */
export function macPercent(armM: number, mac: MeanChord): number {
  requireArm('armM', armM);
  requireChord(mac);
  return ((armM - mac.leadingEdgeArmM) / mac.lengthM) * 100;
}

/**
 * The arm at so many percent of the mean aerodynamic chord.
 * @param percent -100 to 200
 * @returns m aft of the datum
 * @throws RangeProblem
 * @source FAA-H-8083-1B, Aircraft Weight and Balance Handbook, chapter 3
 */
export function armAtMacPercentM(percent: number, mac: MeanChord): number {
  requireRange('percent', percent, -100, 200, '% MAC');
  requireChord(mac);
  return mac.leadingEdgeArmM + (percent / 100) * mac.lengthM;
}

/** @throws RangeProblem where a chord is none that a small aeroplane has */
export function requireChord(mac: MeanChord): void {
  requireArm('mac.leadingEdgeArmM', mac.leadingEdgeArmM);
  requireRange('mac.lengthM', mac.lengthM, 0.1, 20, 'm');
}
