import { requireRange } from '../problem.ts';
import { seededNormals } from '../numeric/seeded-normals.ts';
import { SAME_MARK_RATIO } from './gauge-curve.ts';

/**
 * The curves behind a band: each is one that the fill tests allow. They are kept with an adopted calibration, because
 * a difference between two calibrations and a sum over two tanks need how their errors go together.
 */
export interface KeptRefits {
  /** Positions of the needle at which each curve is kept, rising: those of the curve's band. */
  readonly positionsRatio: readonly number[];
  /** One entry a curve: usable litres at those positions. */
  readonly volumesL: readonly (readonly number[])[];
  /** For each container, by its id, the error of its scale that went with each curve, in standard deviations. */
  readonly containerErrors: Readonly<Record<string, readonly number[]>>;
}

/** Curves within such a stretch of ranks change places, so that no error but the shared one goes together. */
const RANKS_MIXED = 20;
const SEED = 20_260_516;

/**
 * Which curve of `b` goes with each curve of `a`. Errors of a container that both were measured with are the same
 * error, so curves are matched by its rank; all else is independent. (All fits draw from one seed, so the n-th curves
 * of two fits must never be matched as they lie.)
 * @returns for each curve of `a` the index of one of `b`
 */
export function pairedRefits(a: KeptRefits, b: KeptRefits): number[] {
  const random = seededNormals(SEED);
  const shared = Object.keys(a.containerErrors)
    .filter((id) => b.containerErrors[id] !== undefined)
    // One can be matched by only one error: the one that moves both curves most.
    .sort((x, y) => weightOf(b, y) * weightOf(a, y) - weightOf(b, x) * weightOf(a, x))[0];
  const count = Math.min(a.volumesL.length, b.volumesL.length);
  const order = (of: KeptRefits) => {
    const errors = shared === undefined ? undefined : of.containerErrors[shared];
    const indices = Array.from({ length: count }, (_, index) => index);
    if (errors !== undefined) indices.sort((i, j) => (errors[i] ?? 0) - (errors[j] ?? 0));
    return indices;
  };
  const orderB = order(b);
  const stretch = shared === undefined ? count : RANKS_MIXED;
  for (let from = 0; from < count; from += stretch)
    shuffle(orderB, from, Math.min(count, from + stretch), random);
  const paired: number[] = Array.from({ length: count }, () => 0);
  order(a).forEach((indexA, rank) => (paired[indexA] = orderB[rank] ?? 0));
  return paired;
}

/** How closely the topmost volume goes with a container's error: the absolute correlation, 0 to 1. */
function weightOf(refits: KeptRefits, containerId: string): number {
  const errors = refits.containerErrors[containerId] ?? [];
  const tops = refits.volumesL.map((volumes) => volumes.at(-1) ?? 0);
  const spread = Math.sqrt(covariance(errors, errors) * covariance(tops, tops));
  return spread === 0 ? 0 : Math.abs(covariance(errors, tops)) / spread;
}

function shuffle(indices: number[], from: number, to: number, random: { uniform: () => number }): void {
  for (let at = to - 1; at > from; at--) {
    const other = from + Math.floor(random.uniform() * (at - from + 1));
    const held = indices[at] ?? 0;
    indices[at] = indices[other] ?? 0;
    indices[other] = held;
  }
}

/**
 * Usable litres of every kept curve at one position, linear between the places at which they are kept.
 * @throws RangeProblem outside the readings that moved
 */
export function refitVolumesAtL(refits: KeptRefits, positionRatio: number): number[] {
  const { positionsRatio, volumesL } = refits;
  const first = positionsRatio[0] ?? 0;
  const last = positionsRatio.at(-1) ?? 0;
  requireRange('positionRatio', positionRatio, first - SAME_MARK_RATIO, last + SAME_MARK_RATIO, '');
  const found = positionsRatio.findIndex((place) => place >= positionRatio - SAME_MARK_RATIO);
  const above = found <= 0 ? Math.min(1, positionsRatio.length - 1) : found;
  const low = positionsRatio[above - 1] ?? first;
  const high = positionsRatio[above] ?? last;
  const share = high === low ? 0 : Math.min(1, Math.max(0, (positionRatio - low) / (high - low)));
  return volumesL.map((volumes) => {
    const from = volumes[above - 1] ?? volumes[0] ?? 0;
    return from + share * ((volumes[above] ?? from) - from);
  });
}

/** Covariance of two lists of equal length; 0 for fewer than two entries. */
export function covariance(a: readonly number[], b: readonly number[]): number {
  const count = Math.min(a.length, b.length);
  if (count < 2) return 0;
  const mean = (list: readonly number[]) => list.slice(0, count).reduce((sum, each) => sum + each, 0) / count;
  const [meanA, meanB] = [mean(a), mean(b)];
  let sum = 0;
  for (let i = 0; i < count; i++) sum += ((a[i] ?? 0) - meanA) * ((b[i] ?? 0) - meanB);
  return sum / (count - 1);
}
