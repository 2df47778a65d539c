import type { Station } from '../aeroplane.ts';
import type { EnvelopeBands, Side } from '../envelope.ts';
import { limitsOf } from '../limits.ts';
import type { LoadingModel } from '../model.ts';
import { SHARE_KG } from './kept.ts';

/**
 * Most by which the least share of a flight's limits can change when one kilogram comes, goes or moves anywhere aboard.
 *
 * With x the centre of gravity and a the arm of what comes, x changes by (a - x) / m for a kilogram; both lie among
 * the arms in use, and m is at least the lightest mass. A limit that leans changes with the mass besides. Fuel counts
 * at the arm of the next litre, which a table may put beyond the arms of its contents.
 * @param lightestKg the least mass that the flight can have, above 0 (the caller's promise)
 * @returns share per kg; a bound, not sharp
 */
export function steepestPerKg(model: LoadingModel, lightestKg: number): number {
  const arms = armsInUse(model);
  const spreadM = Math.max(...arms) - Math.min(...arms);
  let most = 1 / SHARE_KG;
  for (const limit of limitsOf(model)) {
    if (limit.kind === 'forward')
      most = Math.max(most, (spreadM / lightestKg + leanPerKg(limit.envelope)) / limit.envelope.widthM);
    if ('side' in limit) {
      const lateral = lateralArms(model);
      const besideM = Math.max(...lateral) - Math.min(...lateral);
      const lean = Math.abs(limit.side.l0) / lightestKg ** 2;
      most = Math.max(most, (besideM / lightestKg + lean) / limit.widthM);
    }
  }
  return most;
}

function armsInUse({ solids, aeroplane, tanks }: LoadingModel): number[] {
  const fuel = tanks.flatMap(({ at, c1, c2, densityKgPerL }) =>
    Array.from(c1).flatMap((slope, k) => {
      const lengthL = (at[k + 1] ?? 0) - (at[k] ?? 0);
      return [slope / densityKgPerL, (slope + 2 * (c2[k] ?? 0) * lengthL) / densityKgPerL];
    }),
  );
  return [...solids.map(({ armM }) => armM), ...aeroplane.stations.flatMap(armsOf), ...fuel];
}

/** Lateral arms of everything that is or may be aboard. */
function lateralArms({ solids, aeroplane }: LoadingModel): number[] {
  return [
    ...solids.map(({ lateralArmM }) => lateralArmM),
    ...[...aeroplane.stations, ...aeroplane.tanks].map(({ lateralArmM }) => lateralArmM ?? 0),
  ];
}

function armsOf({ arm }: Station): number[] {
  if (arm.kind === 'fixed') return [arm.armM];
  if (arm.kind === 'adjustable') return [arm.foremostM, arm.aftmostM];
  return arm.knots.flatMap((knot, i) => {
    const next = arm.knots[i + 1];
    if (next === undefined) return [knot.armM];
    const slope = (next.armM - knot.armM) / (next.massKg - knot.massKg);
    return [knot.armM, knot.armM + slope * knot.massKg, next.armM + slope * next.massKg];
  });
}

/** Most change of a limiting arm for one kilogram of mass. */
function leanPerKg({ bands }: EnvelopeBands): number {
  let most = 0;
  const slope = ({ l0, l2 }: Side, m: number) => Math.abs(l2 - l0 / m ** 2);
  for (const { lowestKg, highestKg, spans } of bands)
    for (const { forward, aft } of spans)
      for (const m of [lowestKg, highestKg]) most = Math.max(most, slope(forward, m), slope(aft, m));
  return most;
}
