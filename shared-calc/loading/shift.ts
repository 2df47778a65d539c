import { InputProblem, requireRange } from '../problem.ts';
import { requireArm } from './require-arm.ts';

/**
 * How far the centre of gravity moves when a mass moves from one arm to another.
 * @param movedKg 0 to the total
 * @param totalKg with the moved mass, above 0 to 50,000 kg
 * @returns m, positive aft
 * @throws RangeProblem
 * @source FAA-H-8083-1B, chapter 4, weight shift formula: shift = weight moved x distance / total weight
 */
export function cgShiftM(movedKg: number, fromArmM: number, toArmM: number, totalKg: number): number {
  requireTotal(totalKg);
  requireRange('movedKg', movedKg, 0, totalKg, 'kg');
  requireArm('fromArmM', fromArmM);
  requireArm('toArmM', toArmM);
  return (movedKg * (toArmM - fromArmM)) / totalKg;
}

/**
 * The mass to move from one arm to another so that the centre of gravity comes to where it is wanted.
 * @returns kg; negative where it has to go the other way. It may be more than there is: the caller knows what lies there
 * @throws RangeProblem; InputProblem where both arms are the same
 * @source FAA-H-8083-1B, chapter 4, weight shift formula
 */
export function massToShiftKg(
  totalKg: number,
  cgArmM: number,
  wantedArmM: number,
  fromArmM: number,
  toArmM: number,
): number {
  requireTotal(totalKg);
  requireArm('cgArmM', cgArmM);
  requireArm('wantedArmM', wantedArmM);
  requireArm('fromArmM', fromArmM);
  requireArm('toArmM', toArmM);
  if (fromArmM === toArmM) throw new InputProblem('toArmM', 'moving a mass to its own arm changes nothing');
  return (totalKg * (wantedArmM - cgArmM)) / (toArmM - fromArmM);
}

/**
 * The mass of ballast at a given arm that brings the centre of gravity to where it is wanted.
 * @param totalKg before the ballast
 * @returns kg; negative where mass would have to be taken away there
 * @throws RangeProblem; InputProblem where the ballast lies at the wanted centre of gravity
 * @source FAA-H-8083-1B, chapter 5, ballast formula: total weight x distance wanted / distance of ballast from the
 *         wanted CG
 */
export function ballastKg(totalKg: number, cgArmM: number, wantedArmM: number, ballastArmM: number): number {
  requireTotal(totalKg);
  requireArm('cgArmM', cgArmM);
  requireArm('wantedArmM', wantedArmM);
  requireArm('ballastArmM', ballastArmM);
  if (ballastArmM === wantedArmM) {
    throw new InputProblem('ballastArmM', 'ballast at the wanted centre of gravity cannot move it there');
  }
  return (totalKg * (wantedArmM - cgArmM)) / (ballastArmM - wantedArmM);
}

/**
 * Litres to leave behind or drain so that a mass comes off.
 * @param excessKg 0 to 50,000 kg
 * @param densityKgPerL 0.6 to 1.1
 * @returns L, exact; the figure for a person rounds up
 * @throws RangeProblem
 */
export function litresToDrainL(excessKg: number, densityKgPerL: number): number {
  requireRange('excessKg', excessKg, 0, 50_000, 'kg');
  requireRange('densityKgPerL', densityKgPerL, 0.6, 1.1, 'kg/L');
  return excessKg / densityKgPerL;
}

function requireTotal(totalKg: number): void {
  requireRange('totalKg', totalKg, 0.1, 50_000, 'kg');
}
