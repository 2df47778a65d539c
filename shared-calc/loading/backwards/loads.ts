import { InputProblem } from '../../problem.ts';
import type { NumberRange } from '../../numeric/ranges-not-negative.ts';
import type { StationLoad } from '../case.ts';
import type { Asked } from './kept.ts';
import { keptRanges } from './kept-ranges.ts';

/**
 * The masses of one load with which the whole flight keeps every limit, from nothing to the heaviest that could matter.
 *
 * The largest load at a station is the end of the last range, the heaviest passenger with this fuel likewise; the least
 * (a pilot too light, ballast that is needed) is the start of the first.
 * @param index of the load in the loading
 * @returns ranges of the load's own mass, kg, without what is added to a stated one; empty where no mass helps
 * @throws InputProblem for a load that is not there; RangeProblem, InputProblem as loadingModel
 */
export function loadRanges(asked: Asked, index: number): NumberRange[] {
  const load = asked.loading.loads[index];
  if (load === undefined) throw new InputProblem('index', `there is no load ${String(index)}`);
  const [leastKg, mostKg] = massesOf(asked, index, load);
  return keptRanges({
    at: (massKg) => withMass(asked, index, massKg),
    from: leastKg,
    to: mostKg,
    kgPerUnit: 1,
  });
}

/** The same loading with another mass of one load. */
export function withMass(asked: Asked, index: number, massKg: number): Asked {
  const loads = asked.loading.loads.map((load, i) => (i === index ? { ...load, massKg } : load));
  return { ...asked, loading: { ...asked.loading, loads } };
}

/** The same loading with one more load, which comes last. */
export function withLoad(asked: Asked, load: StationLoad): Asked {
  return { ...asked, loading: { ...asked.loading, loads: [...asked.loading.loads, load] } };
}

/** From nothing (a mass below what is taken off it is none) to what the station, its table or the largest maximum allows. */
function massesOf({ aeroplane, loading }: Asked, index: number, load: StationLoad): [number, number] {
  const station = aeroplane.stations.find(({ id }) => id === load.stationId);
  const othersKg = loading.loads
    .filter((each, i) => i !== index && each.stationId === load.stationId)
    .reduce((sum, each) => sum + each.massKg + each.biasKg, 0);
  const tops = Object.values(aeroplane.maxMasses).flatMap((massKg) => (massKg === null ? [] : [massKg]));
  const vertices = aeroplane.envelopes.flatMap((envelope) => envelope.vertices.map(({ massKg }) => massKg));
  const topKg = Math.max(0, ...tops, ...vertices) - aeroplane.empty.massKg;
  const places = [station?.mostKg ?? topKg];
  let leastKg = Math.max(0, -load.biasKg);
  if (station?.arm.kind === 'armTable') {
    places.push(station.arm.knots.at(-1)?.massKg ?? 0);
    leastKg = Math.max(leastKg, (station.arm.knots[0]?.massKg ?? 0) - othersKg - load.biasKg);
  }
  return [leastKg, Math.min(topKg, ...places.map((massKg) => massKg - othersKg - load.biasKg))];
}
