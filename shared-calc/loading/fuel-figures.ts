import type { TankFuel } from './case.ts';

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
