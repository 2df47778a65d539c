import { InputProblem } from '../../problem.ts';
import { keptBy, type Asked } from './kept.ts';

/** Loads that stay on the ground, by their indexes in the loading. */
export interface LeftBehind {
  readonly indexes: readonly number[];
  readonly massKg: number;
}

/** More pieces than this make too many choices to try them all. */
const MOST_PIECES = 14;

/**
 * What to leave behind so that the whole flight keeps every limit, of the pieces that may stay.
 *
 * Every choice is tried: first those of one piece, then of two, and so on. `fewest` is the lightest among the choices of
 * fewest pieces, `lightest` the choice of least mass whatever its number. Both null where even leaving all behind
 * does not do; both empty where nothing has to stay.
 * @param pieces indexes of loads that may stay behind, at most 14
 * @throws InputProblem for more pieces; RangeProblem, InputProblem as loadingModel
 */
export function leaveBehind(
  asked: Asked,
  pieces: readonly number[],
): { fewest: LeftBehind | null; lightest: LeftBehind | null } {
  if (pieces.length > MOST_PIECES)
    throw new InputProblem('pieces', `at most ${String(MOST_PIECES)} may be chosen from`);
  const choices: LeftBehind[] = [];
  for (let bits = 0; bits < 2 ** pieces.length; bits++) {
    const indexes = pieces.filter((_, i) => (bits & (1 << i)) !== 0);
    choices.push({ indexes, massKg: indexes.reduce((sum, i) => sum + massOf(asked, i), 0) });
  }
  choices.sort((a, b) => a.indexes.length - b.indexes.length || a.massKg - b.massKg);
  const fewest = choices.find(({ indexes }) => keptBy(without(asked, indexes)).all) ?? null;
  if (fewest === null) return { fewest, lightest: null };
  const lighter = choices.filter(({ massKg }) => massKg < fewest.massKg).sort((a, b) => a.massKg - b.massKg);
  const lightest = lighter.find(({ indexes }) => keptBy(without(asked, indexes)).all) ?? fewest;
  return { fewest, lightest };
}

/** The same loading without some of its loads. */
export function without(asked: Asked, indexes: readonly number[]): Asked {
  const loads = asked.loading.loads.filter((_, i) => !indexes.includes(i));
  return { ...asked, loading: { ...asked.loading, loads } };
}

function massOf({ loading }: Asked, index: number): number {
  const load = loading.loads[index];
  if (load === undefined) throw new InputProblem('pieces', `there is no load ${String(index)}`);
  return load.massKg + load.biasKg;
}
