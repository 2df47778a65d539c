import type { LoadingResult } from '../../../shared-calc/loading/assess.ts';
import { momentOfUsableKgM } from '../../../shared-calc/loading/tank-moment.ts';

/** One load of the chain from the empty aeroplane to the ramp: what it adds, and where it begins and ends. */
export interface ChainLink {
  kind: 'load' | 'tank';
  /** Index among the loading's items, or among the aeroplane's tanks. */
  index: number;
  name: string;
  from: { massKg: number; momentKgM: number };
  to: { massKg: number; momentKgM: number };
}

/** Everything aboard, one load after the other: the empty aeroplane first, then places, then tanks by best figures. */
export function loadChain(result: LoadingResult): { empty: ChainLink['to']; links: ChainLink[] } {
  const { model } = result;
  const fixed = model.solids.filter(({ stationId }) => stationId === null);
  const empty = {
    massKg: fixed.reduce((sum, item) => sum + item.massKg, 0),
    momentKgM: fixed.reduce((sum, item) => sum + item.massKg * item.armM, 0),
  };
  let at = empty;
  const links: ChainLink[] = [];
  const add = (kind: ChainLink['kind'], index: number, name: string, massKg: number, momentKgM: number) => {
    const to = { massKg: at.massKg + massKg, momentKgM: at.momentKgM + momentKgM };
    links.push({ kind, index, name, from: at, to });
    at = to;
  };
  model.solids
    .filter(({ stationId }) => stationId !== null)
    .forEach((item, index) => {
      add('load', index, item.name, item.massKg, item.massKg * item.armM);
    });
  // The tank burned first comes last, so that the flight runs back along its arc.
  const { order } = model.plan;
  const others = model.tanks.map((_, index) => index).filter((index) => !order.includes(index));
  [...others, ...order.toReversed()].forEach((index) => {
    const tank = model.tanks[index];
    if (tank === undefined) return;
    const litres = model.fuel[index]?.bestL ?? 0;
    add(
      'tank',
      index,
      model.aeroplane.tanks[index]?.name ?? '',
      litres * tank.densityKgPerL,
      litres === 0 ? 0 : momentOfUsableKgM(tank, litres),
    );
  });
  return { empty, links };
}
