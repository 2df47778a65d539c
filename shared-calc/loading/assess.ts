import type { LoadingAeroplane } from './aeroplane.ts';
import type { LoadingCase } from './case.ts';
import {
  followDifference,
  followEnvelope,
  followLateral,
  followMass,
  newTally,
  type Tally,
} from './follow.ts';
import { fuelCases, isDensityDoubtful, tanksWithDensity, type FuelCase } from './fuel-figures.ts';
import { hasMargin, isOfCg, largestMassKg, limitsOf, type Limit } from './limits.ts';
import { loadingModel, type LoadingModel } from './model.ts';
import { newPath, partOf, type Path } from './path.ts';
import { pointAfterL, pointAt, type FlightPoint } from './point.ts';
import { walk } from './walk.ts';
import { Z_95 } from '../numeric/z-95.ts';

/** A limit with its least margin along the flight, by the worst of the fuel figures. */
export interface LimitMargin {
  readonly limit: Limit;
  /** m of arm for forward, aft, left and right, kg for every other; negative is outside, 0 is met exactly. */
  readonly margin: number;
  /** Margin over the envelope's width or the useful load, so that limits of both kinds compare. */
  readonly share: number;
  readonly met: boolean;
  /** Where the margin is least. null for a station or a group: all the way. */
  readonly worst: FlightPoint | null;
  /** Usable litres in each tank at the ramp by which it is least. */
  readonly fuelL: readonly number[];
  /** Stretches of the flight in which the limit is broken by any of the fuel figures. */
  readonly outside: readonly Stretch[];
}

/** A stretch of the flight, by litres burned and by seconds after take-off. */
export interface Stretch {
  readonly fromL: number;
  readonly toL: number;
  readonly fromS: number;
  readonly toS: number;
  /** Usable fuel left in all where it begins, L, by the fuel figures by which it begins then. */
  readonly leftL: number;
  readonly fromRamp: boolean;
  /** The stretch lasts until the usable fuel is exhausted. */
  readonly untilExhausted: boolean;
}

/** What can be said of a loading against the limits of the manual. */
export interface LoadingResult {
  readonly model: LoadingModel;
  /** All limits met, from ramp until usable fuel is exhausted, and something was there to compare with. */
  readonly inside: boolean;
  readonly margins: readonly LimitMargin[];
  /** The margin of least share among forward, aft, left, right, maximum and stated least masses; null where there are none. */
  readonly least: LimitMargin | null;
  /** What no limit was entered for. */
  readonly unchecked: readonly ('CG' | 'take-off mass')[];
  /** The flight by the best figures of fuel. */
  readonly path: Path;
  readonly ramp: FlightPoint;
  readonly takeOff: FlightPoint;
  /** null where none is planned, or the fuel ends before it. */
  readonly landing: FlightPoint | null;
  readonly exhausted: FlightPoint;
  /** Until then a landing is above the landing limit, whether planned or not; null where it never is. */
  readonly tooHeavyToLandUntilS: number | null;
  /** The fuel by its low figures ends before the planned landing: when it does, else null. */
  readonly fuelEndsS: number | null;
  /** A return line fills a tank and fuel is lost overboard: which and when; null where it does not. */
  readonly fuelLost: { readonly tankId: string; readonly afterTakeOffS: number } | null;
}

/**
 * Follow a loading from ramp until usable fuel is exhausted and compare it with every limit of the manual.
 *
 * Forward, aft and mass limits of an envelope hold over its part of the flight; every place where one is met is
 * solved for in closed form, and the least margin is exact, not the least of samples. Where fuel has low, best and
 * high figures, each limit is compared with the worst of them. A limit met exactly is met: down to 1e-9 of the
 * largest mass or of the envelope's width a margin below zero is rounding.
 * @throws RangeProblem, InputProblem: see loadingModel
 * @source FAA-H-8083-1B, Aircraft Weight and Balance Handbook, chapters 2, 4 and 6 (the sums); the path over burned
 *         fuel is their consequence
 */
export function assessLoading(aeroplane: LoadingAeroplane, loading: LoadingCase): LoadingResult {
  return assessModel(loadingModel(aeroplane, loading));
}

/** As assessLoading, for a loading that was checked before. */
export function assessModel(model: LoadingModel): LoadingResult {
  const limits = limitsOf(model);
  const path = newPath(model.tanks.length);
  const trial = newPath(model.tanks.length);
  const worst = limits.map(newWorst);
  const massTolerance = 1e-9 * largestMassKg(model);
  let fuelEndsS: number | null = null;
  let fuelLost: LoadingResult['fuelLost'] = null;
  fuelCases(model).forEach(({ fuelL, tanks }, figure) => {
    const flown = figure === 0 ? path : trial;
    walk(flown, model.plan, tanks, fuelL, model.solidKg, model.solidKgM, model.lateral?.solidKgM);
    const endS = flown.timeS[flown.nodes - 1] ?? 0;
    if (flown.landing < 0 && model.plan.landingS < Infinity)
      fuelEndsS = Math.min(fuelEndsS ?? Infinity, endS);
    fuelLost ??= lostFuel(model, flown);
    followAll(model, limits, flown, { fuelL, tanks }, worst, massTolerance);
  });
  const margins = limits.map((limit, i) => marginOf(model, limit, worst[i] ?? newWorst(), massTolerance));
  const compared = margins.filter(
    ({ limit }) => isOfCg(limit) || limit.kind === 'most' || (limit.kind === 'least' && hasMargin(limit)),
  );
  const unchecked: ('CG' | 'take-off mass')[] = [];
  if (!limits.some((l) => l.kind === 'aft' && l.phase === 'flight')) unchecked.push('CG');
  if (!limits.some((l) => l.kind === 'most' && (l.phase === 'take-off' || l.phase === 'flight')))
    unchecked.push('take-off mass');
  return {
    model,
    inside: unchecked.length === 0 && margins.every((m) => m.met) && fuelEndsS === null,
    margins,
    least: compared.reduce<LimitMargin | null>((a, b) => (a === null || b.share < a.share ? b : a), null),
    unchecked,
    path,
    ramp: pointAt(model, path, 0, 0),
    takeOff: pointAt(model, path, path.takeOff, 0),
    landing: path.landing < 0 ? null : pointAt(model, path, path.landing, 0),
    exhausted: pointAt(model, path, path.nodes - 1, 0),
    tooHeavyToLandUntilS: tooHeavyToLandUntilS(model, limits, massTolerance),
    fuelEndsS,
    fuelLost,
  };
}

/** The least margin to one limit over all fuel figures. */
interface Worst {
  margin: number;
  point: FlightPoint | null;
  fuelL: readonly number[];
  readonly outside: Stretch[];
}

function newWorst(): Worst {
  return { margin: Infinity, point: null, fuelL: [], outside: [] };
}

function take(worst: Worst, model: LoadingModel, path: Path, tally: Tally, fuelL: readonly number[]): void {
  if (tally.least < worst.margin - 1e-12 || worst.point === null) {
    worst.margin = tally.least;
    worst.fuelL = fuelL;
    worst.point = pointAt(model, path, tally.node, tally.sinceL);
  }
  const endL = path.burnedL[path.nodes - 1] ?? 0;
  for (let i = 0; i < tally.outsideL.length; i += 2) {
    const fromL = Math.min(endL, tally.outsideL[i] ?? 0);
    const toL = Math.min(endL, tally.outsideL[i + 1] ?? 0);
    const begin = pointAfterL(model, path, fromL);
    worst.outside.push({
      fromL,
      toL,
      fromS: begin.afterTakeOffS,
      leftL: begin.usableL,
      toS: pointAfterL(model, path, toL).afterTakeOffS,
      fromRamp: fromL < 1e-9,
      untilExhausted: toL > endL - 1e-6,
    });
  }
}

function followAll(
  model: LoadingModel,
  limits: readonly Limit[],
  path: Path,
  { fuelL, tanks }: FuelCase,
  worst: readonly Worst[],
  massTolerance: number,
): void {
  for (let i = 0; i < limits.length; i++) {
    const limit = limits[i];
    const into = worst[i];
    if (limit === undefined || into === undefined) continue;
    if (limit.kind === 'forward') {
      // An envelope's forward and aft limits stand side by side in the list and are followed together.
      const aft = worst[i + 1];
      const [from, to] = partOf(path, limit.phase);
      const tolerance = 1e-9 * limit.envelope.widthM;
      const tallies = [newTally(tolerance), newTally(tolerance)] as const;
      followEnvelope(path, from, to, limit.envelope, ...tallies);
      take(into, model, path, tallies[0], fuelL);
      if (aft !== undefined) take(aft, model, path, tallies[1], fuelL);
    } else if (limit.kind === 'most' || limit.kind === 'least') {
      const [from, to] = partOf(path, limit.phase);
      const tally = newTally(massTolerance);
      followMass(path, from, to, limit.limitKg, limit.kind === 'most' ? 1 : -1, tally);
      take(into, model, path, tally, fuelL);
    } else if (limit.kind === 'left-right') {
      const tally = newTally(massTolerance);
      followDifference(path, signedDensities(model, tanks), limit.limitKg, tally);
      take(into, model, path, tally, fuelL);
    } else if ('side' in limit) {
      const [from, to] = partOf(path, 'flight');
      const tally = newTally(1e-9 * limit.widthM);
      followLateral(path, from, to, limit.side, limit.kind === 'right' ? 1 : -1, tally);
      take(into, model, path, tally, fuelL);
    }
  }
}

/** kg/L of each tank, positive on the left and negative on the right. */
function signedDensities({ aeroplane }: LoadingModel, tanks: LoadingModel['tanks']): number[] {
  const sign = { left: 1, centre: 0, right: -1 };
  return tanks.map((tank, i) => tank.densityKgPerL * sign[aeroplane.tanks[i]?.side ?? 'centre']);
}

function marginOf(model: LoadingModel, limit: Limit, worst: Worst, massTolerance: number): LimitMargin {
  if ('envelope' in limit) {
    const { widthM } = limit.envelope;
    return marginWith(limit, worst, worst.margin / widthM, 1e-9 * widthM);
  }
  if ('side' in limit) return marginWith(limit, worst, worst.margin / limit.widthM, 1e-9 * limit.widthM);
  if ('loadedKg' in limit) {
    const sense = limit.kind === 'station-least' ? -1 : 1;
    const margin = sense * (limit.limitKg - limit.loadedKg);
    const scale = Math.max(limit.limitKg, massTolerance);
    return marginWith(limit, { ...newWorst(), margin }, margin / scale, massTolerance);
  }
  const usefulKg = Math.max(limit.limitKg - model.aeroplane.empty.massKg, massTolerance);
  return marginWith(limit, worst, worst.margin / usefulKg, massTolerance);
}

function marginWith(limit: Limit, worst: Worst, share: number, tolerance: number): LimitMargin {
  // What is within rounding of the limit is on it.
  const margin = Math.abs(worst.margin) <= tolerance ? 0 : worst.margin;
  return {
    limit,
    margin,
    share: margin === 0 ? 0 : share,
    met: margin >= 0,
    worst: worst.point,
    fuelL: worst.fuelL,
    outside: joined(worst.outside),
  };
}

/** Stretches by different fuel figures, joined where they touch. */
function joined(stretches: readonly Stretch[]): Stretch[] {
  const rising = [...stretches].sort((a, b) => a.fromL - b.fromL);
  const out: Stretch[] = [];
  for (const next of rising) {
    const last = out.at(-1);
    if (last === undefined || next.fromL > last.toL + 1e-9) out.push(next);
    else if (next.toL > last.toL) {
      out[out.length - 1] = { ...last, toL: next.toL, toS: next.toS, untilExhausted: next.untilExhausted };
    }
  }
  return out;
}

/** By the high figures of fuel, which keep the aeroplane heavy longest. */
function tooHeavyToLandUntilS(
  model: LoadingModel,
  limits: readonly Limit[],
  massTolerance: number,
): number | null {
  const landing = limits.filter((limit) => limit.kind === 'most' && limit.phase === 'landing');
  if (landing.length === 0) return null;
  const path = newPath(model.tanks.length);
  const highL = model.fuel.map((f) => f.highL);
  // Heavy fuel keeps it heavy longest.
  const tanks = isDensityDoubtful(model.aeroplane)
    ? tanksWithDensity(model.aeroplane, model.tanks, Z_95)
    : model.tanks;
  walk(path, model.plan, tanks, highL, model.solidKg, model.solidKgM);
  let untilS: number | null = null;
  for (const limit of landing) {
    if (limit.kind !== 'most') continue;
    const tally = newTally(massTolerance);
    followMass(path, path.takeOff, path.nodes - 1, limit.limitKg, 1, tally);
    const lastL = tally.outsideL.at(-1);
    if (lastL === undefined) continue;
    const toL = Math.min(lastL, path.burnedL[path.nodes - 1] ?? 0);
    untilS = Math.max(untilS ?? 0, pointAfterL(model, path, toL).afterTakeOffS);
  }
  return untilS;
}

/**
 * From where on the tanks lose more than the engine burns: the return line's tank is full, by filling or from the start.
 */
function lostFuel({ aeroplane, loading, tanks }: LoadingModel, path: Path): LoadingResult['fuelLost'] {
  const { returnLine } = loading.burn;
  const tank = aeroplane.tanks.find(({ id }) => id === returnLine?.intoTankId);
  if (tank === undefined) return null;
  const totalL = (node: number) =>
    tanks.reduce((sum, _, i) => sum + (path.contentsL[node * tanks.length + i] ?? 0), 0);
  for (let node = 0; node + 1 < path.nodes; node++) {
    const burnedL = (path.burnedL[node + 1] ?? 0) - (path.burnedL[node] ?? 0);
    if (totalL(node) - totalL(node + 1) > burnedL + 1e-6)
      return { tankId: tank.id, afterTakeOffS: path.timeS[node] ?? 0 };
  }
  return null;
}
