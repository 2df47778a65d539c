import { bracketedRoot } from '../../numeric/bracketed-root.ts';
import { rangesNotNegative, type NumberRange } from '../../numeric/ranges-not-negative.ts';
import { limitingMomentKgM, type EnvelopeBands } from '../envelope.ts';
import { fuelCases } from '../fuel-figures.ts';
import { limitsOf } from '../limits.ts';
import { loadingModel, type LoadingModel } from '../model.ts';
import { newPath, partOf } from '../path.ts';
import { walk } from '../walk.ts';
import { keptBy, reserveSlackS, type Asked, type KeptBy } from './kept.ts';
import { steepestPerKg } from './steepest.ts';

/** A loading that changes with one number: a load, a volume, a mass that is moved, a time. */
export interface Varied {
  /** The loading for a value of the number. Stations and groups change straight with it, the reserve one way only. */
  readonly at: (x: number) => Asked;
  readonly from: number;
  readonly to: number;
  /** Most kilograms that come, go or move aboard at one instant of the flight for one unit of the number. */
  readonly kgPerUnit: number;
  /** Which limits of the flight are asked; all unless told. */
  readonly shareOf?: (kept: KeptBy) => number;
}

/** Alternating between more than two tanks, which one is in use jumps when another runs dry: so many parts are looked at. */
const PARTS_OF_JUMPING_ORDER = 256;

/**
 * The values of a number for which the whole flight keeps every limit and its reserve: a union of closed ranges.
 *
 * Solved, not sampled: limits of stations and groups by straight lines, the reserve by its root, the rest by
 * `rangesNotNegative`, for the least margin of a flight cannot change faster than `steepestPerKg` says. Where an
 * envelope has a level step, the margin jumps when an end of the flight passes its mass: those values are solved for
 * first.
 * @throws RangeProblem, InputProblem where the loading at an end of the range is refused: see loadingModel
 */
export function keptRanges({ at, from, to, kgPerUnit, shareOf = allOfTheFlight }: Varied): NumberRange[] {
  if (to < from) return [];
  // The reserve first: a loading without its taxi fuel is no loading at all.
  const domain = placesKept(at, reserveKept(at, { from, to }));
  if (domain === null) return [];
  const models = [domain.from, domain.to].map((x) => modelAt(at, x));
  const lightestKg = Math.min(...models.map(({ solidKg }) => solidKg));
  const model = models[0];
  if (model === undefined) return [];
  const steepest = kgPerUnit * steepestPerKg(model, lightestKg);
  const share = (x: number) => shareOf(keptBy(at(x)));
  const jumps = [...stepsPassed(at, domain, model), ...partsOfJumpingOrder(model, domain)];
  return rangesNotNegative(share, domain.from, domain.to, steepest, jumps);
}

function allOfTheFlight({ flightShare }: KeptBy): number {
  return flightShare;
}

function modelAt(at: Varied['at'], x: number): LoadingModel {
  const { aeroplane, loading } = at(x);
  return loadingModel(aeroplane, loading);
}

/** Margins of stations and groups are straight lines over the number. */
function placesKept(at: Varied['at'], domain: NumberRange | null): NumberRange | null {
  if (domain === null) return null;
  const { from, to } = domain;
  const here = keptBy(at(from)).placesKg;
  const there = to > from ? keptBy(at(to)).placesKg : here;
  let low = from;
  let high = to;
  here.forEach((a, i) => {
    const b = there[i] ?? a;
    const crossing = from + ((to - from) * a) / (a - b);
    if (a < 0 && b < 0) high = -Infinity;
    else if (a < 0) low = Math.max(low, crossing);
    else if (b < 0) high = Math.min(high, crossing);
  });
  return low <= high ? { from: low, to: high } : null;
}

function reserveKept(at: Varied['at'], domain: NumberRange): NumberRange | null {
  const slackS = (x: number) => {
    const { loading, reserveS } = at(x);
    return reserveSlackS(loading, reserveS);
  };
  const here = slackS(domain.from);
  const there = slackS(domain.to);
  if (here < 0 && there < 0) return null;
  if (here >= 0 && there >= 0) return domain;
  const root = bracketedRoot(slackS, domain.from, domain.to);
  // A hair to the side on which the reserve is kept.
  const hair = 1e-13 * Math.max(Math.abs(domain.from), Math.abs(domain.to));
  return here < 0
    ? { from: Math.min(root + hair, domain.to), to: domain.to }
    : { from: domain.from, to: Math.max(root - hair, domain.from) };
}

/** Values at which the mass at an end of a part of the flight passes a level step of an envelope. */
function stepsPassed(at: Varied['at'], { from, to }: NumberRange, model: LoadingModel): number[] {
  const steps = limitsOf(model).flatMap((limit) =>
    limit.kind === 'forward'
      ? levelSteps(limit.envelope).map((massKg) => ({ massKg, phase: limit.phase }))
      : [],
  );
  if (steps.length === 0) return [];
  const path = newPath(model.tanks.length);
  return fuelCases(model).flatMap((_, figure) =>
    steps.flatMap(({ massKg, phase }) =>
      ([0, 1] as const).flatMap((end) => {
        const over = (x: number) => {
          const now = modelAt(at, x);
          const { fuelL, tanks } = fuelCases(now)[figure] ?? {
            fuelL: now.fuel.map(({ bestL }) => bestL),
            tanks: now.tanks,
          };
          walk(path, now.plan, tanks, fuelL, now.solidKg, now.solidKgM);
          return (path.massKg[partOf(path, phase)[end]] ?? 0) - massKg;
        };
        const [a, b] = [over(from), over(to)];
        return a < 0 === b < 0 ? [] : [bracketedRoot(over, from, to)];
      }),
    ),
  );
}

/** Masses inside an envelope at which a limit jumps from one arm to another. */
function levelSteps({ bands, widthM }: EnvelopeBands): number[] {
  return bands.flatMap((above, i) => {
    const below = bands[i - 1];
    if (below === undefined) return [];
    const m = above.lowestKg;
    const arms = ({ spans }: typeof above) =>
      spans.flatMap(({ forward, aft }) => [limitingMomentKgM(forward, m) / m, limitingMomentKgM(aft, m) / m]);
    const [upper, lower] = [arms(above), arms(below)];
    const same =
      upper.length === lower.length &&
      upper.every((arm, j) => Math.abs(arm - (lower[j] ?? 0)) < 1e-9 * widthM);
    return same ? [] : [m];
  });
}

function partsOfJumpingOrder({ loading }: LoadingModel, { from, to }: NumberRange): number[] {
  if (loading.burn.kind !== 'alternate' || loading.burn.tankIds.length < 3) return [];
  return Array.from(
    { length: PARTS_OF_JUMPING_ORDER - 1 },
    (_, i) => from + ((to - from) * (i + 1)) / PARTS_OF_JUMPING_ORDER,
  );
}
