import { assessLoading } from '../../shared-calc/loading/assess.ts';
import type { LoadingCase } from '../../shared-calc/loading/case.ts';
import { loadingModel } from '../../shared-calc/loading/model.ts';
import { dimensionsOf, insideOdds, normalDraws } from '../../shared-calc/loading/odds.ts';
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
  );
}
