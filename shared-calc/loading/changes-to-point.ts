import { requireRange } from '../problem.ts';
import { MASS_MOST_KG, requireArm } from './require-arm.ts';

/** A place whose load may be changed: its arm, what it holds and the most that it may hold, kg. */
export interface ChangeablePlace {
  readonly name: string;
  readonly armM: number;
  readonly loadedKg: number;
  /** null where the manual gives none. */
  readonly mostKg: number | null;
}

/** So much more (or less, negative) at each place brings the loaded point where it was asked to be. */
export type ChangeToPoint = readonly { readonly name: string; readonly changeKg: number }[];

/** A change this small is none, kg: half of the last figure shown. */
const NOTHING_KG = 0.05;

/**
 * Which changes of load bring the loaded aeroplane to a mass and an arm: those at one place, and those at two, exactly.
 * No place goes below nothing or above its most. The fewest places first, then the least mass handled.
 *
 * At two places with arms a and b the changes x and y follow from x + y = difference in mass and a x + b y = difference in
 * moment. Group limits and the rest of the flight are not asked.
 * @param from, to mass 1 to 50,000 kg, arms within 100 m
 * @param mostCount how many ways are given at most, 1 to 20
 * @throws RangeProblem
 * @source FAA-H-8083-1B, Aircraft Weight and Balance Handbook, chapter 4 (weight addition, removal and shift)
 */
export function changesToPoint(
  from: { readonly massKg: number; readonly armM: number },
  to: { readonly massKg: number; readonly armM: number },
  places: readonly ChangeablePlace[],
  mostCount: number,
): ChangeToPoint[] {
  requireRange('from.massKg', from.massKg, 1, MASS_MOST_KG, 'kg');
  requireRange('to.massKg', to.massKg, 1, MASS_MOST_KG, 'kg');
  requireArm('from.armM', from.armM);
  requireArm('to.armM', to.armM);
  requireRange('mostCount', mostCount, 1, 20, '');
  const massKg = to.massKg - from.massKg;
  const momentKgM = to.massKg * to.armM - from.massKg * from.armM;
  const ways = new Map<string, { change: ChangeToPoint; handledKg: number }>();
  places.forEach((one, i) => {
    for (const other of places.slice(i + 1)) {
      const apartM = one.armM - other.armM;
      if (Math.abs(apartM) < 1e-6) continue;
      const oneKg = (momentKgM - other.armM * massKg) / apartM;
      const otherKg = massKg - oneKg;
      if (!fits(one, oneKg) || !fits(other, otherKg)) continue;
      const change = [
        { name: one.name, changeKg: oneKg },
        { name: other.name, changeKg: otherKg },
      ].filter(({ changeKg }) => Math.abs(changeKg) >= NOTHING_KG);
      const key = change.map(({ name }) => name).join('\n');
      const handledKg = change.reduce((sum, { changeKg }) => sum + Math.abs(changeKg), 0);
      if (change.length > 0 && !ways.has(key)) ways.set(key, { change, handledKg });
    }
  });
  return [...ways.values()]
    .sort((a, b) => a.change.length - b.change.length || a.handledKg - b.handledKg)
    .slice(0, mostCount)
    .map(({ change }) => change);
}

function fits({ loadedKg, mostKg }: ChangeablePlace, changeKg: number): boolean {
  const afterKg = loadedKg + changeKg;
  return afterKg >= -NOTHING_KG && (mostKg === null || afterKg <= mostKg + 1e-9);
}
