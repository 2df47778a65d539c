import { requireRange } from '../problem.ts';
import { normalQuantileWithin } from '../numeric/normal.ts';
import { SOBOL_MOST_DIMENSIONS, sobolPoints } from '../numeric/sobol.ts';
import { largestMassKg, limitsOf } from './limits.ts';
import type { LoadingModel } from './model.ts';
import { newPath } from './path.ts';
import { Z_95 } from './spread.ts';
import { flightLimits, staysInside } from './stays-inside.ts';
import { walk } from './walk.ts';

/** Standard normal draws, row after row, in groups that were spread independently of each other. */
export interface NormalDraws {
  readonly values: Float64Array;
  readonly dimensions: number;
  readonly groups: number;
  readonly perGroup: number;
}

/** The probability that a whole flight stays inside, with how far the draws may be off. */
export interface InsideOdds {
  readonly insideProb: number;
  /** Standard error of insideProb by the spread between the groups of draws. */
  readonly errorProb: number;
  readonly drawCount: number;
}

/** Draws in groups, so that their differences tell the error. */
const GROUPS = 16;

/**
 * Evenly spread standard normal draws for insideOdds. They do not depend on a loading: make them once, and a drag
 * that asks again and again does not flicker.
 * @param dimensions 2 for all that is no fuel, and one for each tank in doubt: 2 to 16
 * @param count      16 to 65,536, rounded up to a multiple of 16
 * @param seed       1 to 2^32 - 17
 * @throws RangeProblem
 */
export function normalDraws(dimensions: number, count: number, seed: number): NormalDraws {
  requireRange('dimensions', dimensions, 2, SOBOL_MOST_DIMENSIONS, '');
  requireRange('count', count, GROUPS, 65_536, '');
  requireRange('seed', seed, 1, 2 ** 32 - 17, '');
  const perGroup = Math.ceil(count / GROUPS);
  const values = new Float64Array(GROUPS * perGroup * dimensions);
  for (let group = 0; group < GROUPS; group++) {
    const points = sobolPoints(dimensions, perGroup, seed + group);
    // Middle of the finest cell: 0 has no quantile.
    for (let i = 0; i < points.length; i++) {
      values[group * points.length + i] = normalQuantileWithin((points[i] ?? 0) + 2 ** -33);
    }
  }
  return { values, dimensions, groups: GROUPS, perGroup };
}

/** Dimensions of draws that a loading needs. */
export function dimensionsOf(model: LoadingModel): number {
  return 2 + model.fuel.filter((fuel) => fuel.highL > fuel.lowL).length;
}

/**
 * Probability that the whole flight keeps all limits of CG and mass, by quasi-random draws.
 *
 * Masses and arms are normal and independent; all that is no fuel comes in by the mean and covariance of its mass and
 * moment (exact for products of independent factors). A tank's contents follow a normal curve through its 5, 50 and
 * 95 % figures, another width on either side, and never leave the tank. Each draw is a whole flight, followed until
 * it is first outside. Limits of stations and groups are not asked.
 * @param draws of at least dimensionsOf(model) dimensions
 * @throws RangeProblem where the draws have too few dimensions
 * @source A. B. Owen, Monte Carlo Theory, Methods and Examples, 2013, ch. 15 and 17 (randomised quasi-Monte Carlo)
 */
export function insideOdds(model: LoadingModel, draws: NormalDraws): InsideOdds {
  requireRange('draws.dimensions', draws.dimensions, dimensionsOf(model), SOBOL_MOST_DIMENSIONS, '');
  const limits = flightLimits(limitsOf(model));
  const massTolerance = 1e-9 * largestMassKg(model);
  const { massSdKg, momentPerMass, restSdKgM } = solidSpread(model);
  const doubtful = model.fuel.flatMap((fuel, i) => (fuel.highL > fuel.lowL ? [{ ...fuel, i }] : []));
  const contents = model.fuel.map((fuel) => fuel.bestL);
  const path = newPath(model.tanks.length);
  let sum = 0;
  let sumOfSquares = 0;
  let at = 0;
  for (let group = 0; group < draws.groups; group++) {
    let inside = 0;
    for (let k = 0; k < draws.perGroup; k++, at += draws.dimensions) {
      const massKg = massSdKg * (draws.values[at] ?? 0);
      const momentKgM = momentPerMass * massKg + restSdKgM * (draws.values[at + 1] ?? 0);
      for (let j = 0; j < doubtful.length; j++) {
        const tank = doubtful[j];
        if (tank === undefined) continue;
        const z = draws.values[at + 2 + j] ?? 0;
        const litres = tank.bestL + ((z > 0 ? tank.highL - tank.bestL : tank.bestL - tank.lowL) * z) / Z_95;
        contents[tank.i] = Math.min(Math.max(litres, 0), model.tanks[tank.i]?.usableL ?? 0);
      }
      walk(path, model.plan, model.tanks, contents, model.solidKg + massKg, model.solidKgM + momentKgM);
      if (staysInside(path, limits, massTolerance)) inside++;
    }
    const share = inside / draws.perGroup;
    sum += share;
    sumOfSquares += share * share;
  }
  const insideProb = sum / draws.groups;
  const variance = Math.max(0, sumOfSquares / draws.groups - insideProb ** 2) / (draws.groups - 1);
  return { insideProb, errorProb: Math.sqrt(variance), drawCount: draws.groups * draws.perGroup };
}

/** Mass and moment of all that is no fuel as two normal quantities: the moment's slope on the mass, and its rest. */
function solidSpread({ solids }: LoadingModel): {
  massSdKg: number;
  momentPerMass: number;
  restSdKgM: number;
} {
  let varianceMass = 0;
  let varianceMoment = 0;
  let covariance = 0;
  for (const { massKg, armM, massSdKg, armSdM } of solids) {
    varianceMass += massSdKg ** 2;
    varianceMoment += (armM * massSdKg) ** 2 + (massKg * armSdM) ** 2 + (massSdKg * armSdM) ** 2;
    covariance += armM * massSdKg ** 2;
  }
  const momentPerMass = varianceMass > 0 ? covariance / varianceMass : 0;
  const rest = Math.max(0, varianceMoment - momentPerMass * covariance);
  return { massSdKg: Math.sqrt(varianceMass), momentPerMass, restSdKgM: Math.sqrt(rest) };
}
