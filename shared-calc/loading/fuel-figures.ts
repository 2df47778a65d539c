import type { LoadingAeroplane } from './aeroplane.ts';
import type { TankFuel } from './case.ts';
import type { LoadingModel } from './model.ts';
import { withDensityTimes, type TankMoment } from './tank-moment.ts';
import { Z_95 } from '../numeric/z-95.ts';

/**
 * The sets of contents with which limits are compared, L in each tank: the best figures first, then every
 * combination of low and high.
 *
 * With a fixed arm, what a tank adds to the moment about a limit rises or falls steadily with its contents, so that
 * some combination of ends is the worst at every instant. Tanks without doubt are not varied: one doubtful tank makes
 * three sets, four make seventeen.
 */
export function fuelFigures(fuel: readonly TankFuel[]): number[][] {
  let sets: number[][] = [[]];
  for (const { lowL, bestL, highL } of fuel) {
    const ends = lowL === highL ? [bestL] : [lowL, highL];
    sets = sets.flatMap((set) => ends.map((litres) => [...set, litres]));
  }
  const best = fuel.map((f) => f.bestL);
  return sets.length === 1 ? [best] : [best, ...sets];
}

/** Contents with the fuel that they are of: what a flight is followed with. */
export interface FuelCase {
  readonly fuelL: readonly number[];
  readonly tanks: readonly TankMoment[];
}

/**
 * Every set of contents with every density with which limits are compared, the best figures of both first. Where the
 * density is in doubt, its 5 and 95 % figures: heavy fuel is the worse for a maximum, light fuel for a least mass, and
 * either for the CG. The error is one and the same in all tanks.
 */
export function fuelCases({ aeroplane, tanks, fuel }: LoadingModel): FuelCase[] {
  const sets = fuelFigures(fuel);
  if (!isDensityDoubtful(aeroplane)) return sets.map((fuelL) => ({ fuelL, tanks }));
  const [best = []] = sets;
  const others = sets.length === 1 ? sets : sets.slice(1);
  const ends = [-Z_95, Z_95].map((z) => tanksWithDensity(aeroplane, tanks, z));
  return [
    { fuelL: best, tanks },
    ...ends.flatMap((dense) => others.map((fuelL) => ({ fuelL, tanks: dense }))),
  ];
}

/** Whether any tank's fuel is of a density that is not known for sure. */
export function isDensityDoubtful({ tanks }: Pick<LoadingAeroplane, 'tanks'>): boolean {
  return tanks.some(({ densitySdKgPerL }) => (densitySdKgPerL ?? 0) > 0);
}

/** The tanks with fuel that is so many standard uncertainties denser than the best figure. */
export function tanksWithDensity(
  aeroplane: Pick<LoadingAeroplane, 'tanks'>,
  tanks: readonly TankMoment[],
  z: number,
): TankMoment[] {
  return tanks.map((tank, i) => {
    const sdKgPerL = aeroplane.tanks[i]?.densitySdKgPerL ?? 0;
    return withDensityTimes(tank, Math.max(0.5, 1 + (z * sdKgPerL) / tank.densityKgPerL));
  });
}
