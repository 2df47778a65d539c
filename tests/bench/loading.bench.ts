import { assessLoading } from '../../shared-calc/loading/assess.ts';
import type { LoadingCase } from '../../shared-calc/loading/case.ts';
import { loadingModel } from '../../shared-calc/loading/model.ts';
import { largestMassKg, limitsOf } from '../../shared-calc/loading/limits.ts';
import { dimensionsOf, insideOdds, normalDraws } from '../../shared-calc/loading/odds.ts';
import { newPath } from '../../shared-calc/loading/path.ts';
import { flightLimits, staysInside } from '../../shared-calc/loading/stays-inside.ts';
import { walk } from '../../shared-calc/loading/walk.ts';
import { seededNormals } from '../../shared-calc/numeric/seeded-normals.ts';
import { busyAeroplane, busyCertain, busyLoading } from '../shared-calc/loading/busy-aeroplane.ts';
import { contentsAfter } from '../shared-calc/loading/oracle.ts';
import { beside, machineLine } from './measure.ts';

// Twelve stations, four tanks with tables, four envelopes of eight edges. The plainest other way samples the flight:
// every quarter of a litre, with no margins and no crossings solved for.
const N = 20;
const totalL = busyCertain.fuel.reduce((sum, tank) => sum + tank.bestL, 0);

console.log(machineLine());

beside(
  'loading: one sum with every crossing and margin',
  N,
  () => {
    let met = 0;
    for (let i = 0; i < N; i++) if (assessLoading(busyAeroplane, busyCertain).inside) met++;
    return met;
  },
  {
    name: 'the contents of the tanks alone, sampled every quarter of a litre',
    run: () => {
      let sum = 0;
      for (let i = 0; i < N; i++)
        for (let burnedL = 0; burnedL < totalL; burnedL += 0.25)
          sum += contentsAfter(busyAeroplane, busyCertain, burnedL)[0] ?? 0;
      return sum;
    },
  },
);

/** The same aeroplane with its heaviest loads doubled in doubt and near its greatest mass: about even chances. */
const nearTheLimit: LoadingCase = {
  ...busyLoading,
  loads: busyLoading.loads.map((load, i) =>
    i < 4 ? { ...load, massKg: load.massKg + 27, massSdKg: 6 } : load,
  ),
};

/** The plain other way: as many flights with everything drawn, each followed until it is first outside. */
function plainFlights(loading: LoadingCase): () => number {
  const model = loadingModel(busyAeroplane, loading);
  const limits = flightLimits(limitsOf(model));
  const massTolerance = 1e-9 * largestMassKg(model);
  const random = seededNormals(1);
  const drawn = Array.from({ length: 4096 }, () => ({
    contents: model.fuel.map((f) => f.bestL + random.normal()),
    items: model.solids.map((item) => {
      const massKg = item.massKg + item.massSdKg * random.normal();
      return { massKg, momentKgM: massKg * (item.armM + item.armSdM * random.normal()) };
    }),
  }));
  const path = newPath(model.tanks.length);
  return () => {
    let inside = 0;
    for (const { contents, items } of drawn) {
      let solidKg = 0;
      let solidKgM = 0;
      for (const item of items) {
        solidKg += item.massKg;
        solidKgM += item.momentKgM;
      }
      walk(path, model.plan, model.tanks, contents, solidKg, solidKgM);
      if (staysInside(path, limits, massTolerance)) inside++;
    }
    return inside;
  };
}

for (const [words, loading] of [
  ['comfortably inside, so that every draw is followed to its end', busyLoading],
  ['near a limit, where a draw stops when it is first outside', nearTheLimit],
] as const) {
  const model = loadingModel(busyAeroplane, loading);
  const draws = normalDraws(dimensionsOf(model), 4096, 1);
  const { insideProb } = insideOdds(model, draws);
  beside(
    `loading: probability by 4,096 draws, ${words} (${(100 * insideProb).toFixed(0)} in 100 inside)`,
    1,
    () => insideOdds(model, draws),
    { name: 'as many flights drawn one by one and followed until first outside', run: plainFlights(loading) },
  );
}
