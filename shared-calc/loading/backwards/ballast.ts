import type { Asked } from './kept.ts';
import { loadRanges, withLoad } from './loads.ts';

/** Ballast at one station: the least mass there that brings the whole flight inside, and the most that may lie there. */
export interface Ballast {
  readonly stationId: string;
  readonly leastKg: number;
  readonly mostKg: number;
}

/**
 * The least ballast at a station with which the whole flight keeps every limit; null where none does.
 * @param armM where it lies, for a seat on rails; null at every other station
 * @throws RangeProblem, InputProblem as loadingModel
 */
export function ballastAt(asked: Asked, stationId: string, armM: number | null): Ballast | null {
  const none = { stationId, name: 'Ballast', massKg: 0, biasKg: 0, massSdKg: 0, armM, armSdM: 0 };
  const [first] = loadRanges(withLoad(asked, none), asked.loading.loads.length);
  return first === undefined ? null : { stationId, leastKg: first.from, mostKg: first.to };
}
