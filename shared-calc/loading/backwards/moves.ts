import { InputProblem } from '../../problem.ts';
import type { NumberRange } from '../../numeric/ranges-not-negative.ts';
import type { StationLoad } from '../case.ts';
import type { Asked } from './kept.ts';
import { keptRanges } from './kept-ranges.ts';
import { withLoad, withMass } from './loads.ts';

/** Where something is moved to: a station, and where it stands if it is a seat on rails. */
export interface Place {
  readonly stationId: string;
  readonly armM: number | null;
}

/**
 * How much of a load to move to another station so that the whole flight keeps every limit: ranges of kg moved, from
 * nothing to all of it.
 * @param index of the load in the loading
 * @throws InputProblem for a load that is not there; RangeProblem, InputProblem as loadingModel
 */
export function moveRanges(asked: Asked, index: number, place: Place): NumberRange[] {
  const load = asked.loading.loads[index];
  if (load === undefined) throw new InputProblem('index', `there is no load ${String(index)}`);
  return keptRanges({
    at: (movedKg) => withMoved(asked, index, place, movedKg),
    from: 0,
    to: load.massKg + Math.min(0, load.biasKg),
    // What goes and what comes are the two ends of one arm among those in use.
    kgPerUnit: 1,
  });
}

/** The same loading with part of a load at another station; what is added to a stated mass stays where it was. */
export function withMoved(asked: Asked, index: number, place: Place, movedKg: number): Asked {
  const load = asked.loading.loads[index];
  if (load === undefined) return asked;
  const moved: StationLoad = { ...load, ...place, massKg: movedKg, biasKg: 0 };
  return withLoad(withMass(asked, index, load.massKg - movedKg), moved);
}
