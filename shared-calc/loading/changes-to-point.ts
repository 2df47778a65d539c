import { bracketedRoot } from '../numeric/bracketed-root.ts';
import { requireRange } from '../problem.ts';
import { MASS_MOST_KG, requireArm } from './require-arm.ts';

/** A place or a tank whose load may be changed: what it holds and the most that it may hold, kg. */
export interface ChangeablePlace {
  readonly name: string;
  /** Of what comes or goes, where that is the same whatever is there. */
  readonly armM: number;
  readonly loadedKg: number;
  /** null where the manual gives none. */
  readonly mostKg: number | null;
  /** Where the arm changes with the contents: moment of so much there, kg m, from nothing to the most (which is then told). */
  readonly momentKgM?: (heldKg: number) => number;
}

/** So much more (or less, negative) at each place brings the loaded point where it was asked to be. */
export type ChangeToPoint = readonly {
  readonly name: string;
  /** Which of the places that were given. */
  readonly index: number;
  readonly changeKg: number;
}[];

/** A change this small is none, kg: half of the last figure shown. */
const NOTHING_KG = 0.05;
/** Between so many places a moment that is bent over the contents is looked at for a change of sign. */
const PARTS = 16;

/**
 * Which changes of load bring the loaded aeroplane to a mass and an arm: those at one place that end near enough, else
 * those at two, exactly. No place goes below nothing or above its most. The least mass handled first.
 *
 * At two places with arms a and b the changes x and y follow from x + y = difference in mass and a x + b y = difference in
 * moment. Group limits and the rest of the flight are not asked.
 * @param from, to  mass 1 to 50,000 kg, arms within 100 m
 * @param mostCount how many ways are given at most, 1 to 20
 * @param near      how far from the point a change at one place alone may end: kg and m, each from 0
 * @throws RangeProblem
 * @source FAA-H-8083-1B, Aircraft Weight and Balance Handbook, chapter 4 (weight addition, removal and shift)
 */
export function changesToPoint(
  from: { readonly massKg: number; readonly armM: number },
  to: { readonly massKg: number; readonly armM: number },
  places: readonly ChangeablePlace[],
  mostCount: number,
  near: { readonly massKg: number; readonly armM: number } = { massKg: NOTHING_KG, armM: 0 },
): ChangeToPoint[] {
  requireRange('from.massKg', from.massKg, 1, MASS_MOST_KG, 'kg');
  requireRange('to.massKg', to.massKg, 1, MASS_MOST_KG, 'kg');
  requireArm('from.armM', from.armM);
  requireArm('to.armM', to.armM);
  requireRange('mostCount', mostCount, 1, 20, '');
  requireRange('near.massKg', near.massKg, 0, MASS_MOST_KG, 'kg');
  requireRange('near.armM', near.armM, 0, 100, 'm');
  const alone = places.flatMap((place, index) => {
    const changeKg = aloneKg(from, to, place, near);
    return changeKg === null ? [] : [[{ name: place.name, index, changeKg }]];
  });
  const ways = alone.length > 0 ? alone : together(from, to, places);
  const handledKg = (way: ChangeToPoint) => way.reduce((sum, { changeKg }) => sum + Math.abs(changeKg), 0);
  return ways.sort((a, b) => a.length - b.length || handledKg(a) - handledKg(b)).slice(0, mostCount);
}

type Point = Parameters<typeof changesToPoint>[0];

/** The change at one place that ends nearest: with the mass asked for, else with the arm asked for. */
function aloneKg(from: Point, to: Point, place: ChangeablePlace, near: Point): number | null {
  const massKg = to.massKg - from.massKg;
  const tries = [massKg];
  const apartM = place.armM - to.armM;
  if (place.momentKgM === undefined && Math.abs(apartM) > 1e-6)
    tries.unshift(((to.armM - from.armM) * from.massKg) / apartM);
  for (const changeKg of tries) {
    if (Math.abs(changeKg) < NOTHING_KG || !fits(place, changeKg)) continue;
    const afterKg = from.massKg + changeKg;
    if (afterKg < 1) continue;
    const afterM = (from.massKg * from.armM + momentOf(place, changeKg)) / afterKg;
    // A hair for what rounding leaves of an exact answer.
    if (
      Math.abs(afterKg - to.massKg) <= near.massKg + 1e-9 &&
      Math.abs(afterM - to.armM) <= near.armM + 1e-12
    )
      return changeKg;
  }
  return null;
}

function together(from: Point, to: Point, places: readonly ChangeablePlace[]): ChangeToPoint[] {
  const massKg = to.massKg - from.massKg;
  const momentKgM = to.massKg * to.armM - from.massKg * from.armM;
  const ways = new Map<string, ChangeToPoint>();
  places.forEach((one, i) => {
    places.slice(i + 1).forEach((other, later) => {
      for (const oneKg of sharesKg(one, other, massKg, momentKgM)) {
        const otherKg = massKg - oneKg;
        if (!fits(one, oneKg) || !fits(other, otherKg)) continue;
        const way = [
          { name: one.name, index: i, changeKg: oneKg },
          { name: other.name, index: i + 1 + later, changeKg: otherKg },
        ].filter(({ changeKg }) => Math.abs(changeKg) >= NOTHING_KG);
        const key = way.map(({ index }) => String(index)).join(' ');
        if (way.length > 0 && !ways.has(key)) ways.set(key, way);
      }
    });
  });
  return [...ways.values()];
}

/** What the first of two places may take so that both together make up the difference; the other takes the rest. */
function sharesKg(one: ChangeablePlace, other: ChangeablePlace, massKg: number, momentKgM: number): number[] {
  if (one.momentKgM === undefined && other.momentKgM === undefined) {
    const apartM = one.armM - other.armM;
    return Math.abs(apartM) < 1e-6 ? [] : [(momentKgM - other.armM * massKg) / apartM];
  }
  const [leastKg, mostKg] = [
    Math.max(-one.loadedKg, massKg - (mostChangeKg(other) ?? Infinity)),
    Math.min(mostChangeKg(one) ?? Infinity, massKg + other.loadedKg),
  ];
  if (!(leastKg < mostKg)) return [];
  const miss = (oneKg: number) => momentOf(one, oneKg) + momentOf(other, massKg - oneKg) - momentKgM;
  const at = Array.from({ length: PARTS + 1 }, (_, i) => leastKg + ((mostKg - leastKg) * i) / PARTS);
  return at.flatMap((high, i) => {
    const low = at[i - 1];
    return low === undefined || miss(low) < 0 === miss(high) < 0 ? [] : [bracketedRoot(miss, low, high)];
  });
}

function momentOf({ armM, loadedKg, momentKgM }: ChangeablePlace, changeKg: number): number {
  return momentKgM === undefined ? armM * changeKg : momentKgM(loadedKg + changeKg) - momentKgM(loadedKg);
}

function mostChangeKg({ loadedKg, mostKg }: ChangeablePlace): number | null {
  return mostKg === null ? null : mostKg - loadedKg;
}

function fits({ loadedKg, mostKg, momentKgM }: ChangeablePlace, changeKg: number): boolean {
  const afterKg = loadedKg + changeKg;
  const leastKg = momentKgM === undefined ? -NOTHING_KG : -1e-9;
  return afterKg >= leastKg && (mostKg === null || afterKg <= mostKg + 1e-9);
}
