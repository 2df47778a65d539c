import { InputProblem, requireRange } from '../problem.ts';
import { requireArm } from './require-arm.ts';

/** Something put in, taken out or moved since a weighing. */
export type EquipmentChange =
  | { readonly kind: 'added' | 'removed'; readonly massKg: number; readonly armM: number }
  | { readonly kind: 'moved'; readonly massKg: number; readonly fromArmM: number; readonly toArmM: number };

/** Empty weight after a change, and what the change did. */
export interface EmptyAfter {
  readonly massKg: number;
  readonly armM: number;
  readonly changeKg: number;
  /** Positive aft. */
  readonly changeArmM: number;
}

/**
 * The running record of empty weight and centre of gravity through equipment changes, one entry a change.
 * @param empty   by the last weighing: above 0 to 50,000 kg, arm within 100 m
 * @param changes in the order in which they were made
 * @throws RangeProblem naming changes[i]; InputProblem where more is taken out than there is
 * @source AC 43.13-1B, chapter 10, weight and balance changes; FAA-H-8083-1B, chapter 4
 */
export function emptyAfterChanges(
  empty: { massKg: number; armM: number },
  changes: readonly EquipmentChange[],
): EmptyAfter[] {
  requireRange('empty.massKg', empty.massKg, 0.1, 50_000, 'kg');
  requireArm('empty.armM', empty.armM);
  let { massKg, armM } = empty;
  return changes.map((change, i) => {
    const field = `changes[${String(i)}]`;
    requireRange(`${field}.massKg`, change.massKg, 0, 50_000, 'kg');
    const before = { massKg, armM };
    let momentKgM = massKg * armM;
    if (change.kind === 'moved') {
      requireArm(`${field}.fromArmM`, change.fromArmM);
      requireArm(`${field}.toArmM`, change.toArmM);
      momentKgM += change.massKg * (change.toArmM - change.fromArmM);
    } else {
      requireArm(`${field}.armM`, change.armM);
      const sense = change.kind === 'added' ? 1 : -1;
      massKg += sense * change.massKg;
      momentKgM += sense * change.massKg * change.armM;
    }
    if (massKg <= 0)
      throw new InputProblem(
        field,
        `${String(change.massKg)} kg cannot be taken from ${String(before.massKg)} kg`,
      );
    armM = momentKgM / massKg;
    return { massKg, armM, changeKg: massKg - before.massKg, changeArmM: armM - before.armM };
  });
}

/**
 * Changes below these need no new record, for an empty weight of less than 5,000 lb: 1 lb, and 0.05 % of the MAC.
 * @source AC 43.13-1B, change 1, chapter 10, paragraph 10-2c
 */
export const NEGLIGIBLE_CHANGE_KG = 0.45359237;
export const NEGLIGIBLE_CHANGE_MAC_PERCENT = 0.05;

/**
 * Least fuel for the forward and aft checks of balance: 1/12 US gallon for each horsepower of maximum continuous power.
 * @param powerHp maximum except take-off power, 1 to 2,000 hp
 * @returns L
 * @throws RangeProblem
 * @source AC 43.13-1B, change 1, chapter 10, paragraph 10-2p
 */
export function minimumFuelForBalanceL(powerHp: number): number {
  requireRange('powerHp', powerHp, 1, 2000, 'hp');
  return (powerHp / 12) * 3.785411784;
}
