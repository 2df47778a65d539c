import { requireRange } from '../problem.ts';
import { normalCdf, normalQuantileWithin } from '../numeric/normal.ts';
import { SOBOL_MOST_DIMENSIONS, sobolPoints } from '../numeric/sobol.ts';
import type { Phase } from './aeroplane.ts';
import { corridorOf, narrowRoom, type Corridor, type MomentRoom } from './corridor.ts';
import { isDensityDoubtful, tanksWithDensity } from './fuel-figures.ts';
import { lateralRoom, type LateralModel, type LateralRoom } from './lateral.ts';
import { largestMassKg, limitsOf } from './limits.ts';
import type { LoadingModel } from './model.ts';
import { newPath, partOf, type Path } from './path.ts';
import { flightLimits, massesKept, staysInside, type FlightLimits } from './stays-inside.ts';
import { walk } from './walk.ts';
import { Z_95 } from '../numeric/z-95.ts';

/** Standard normal draws, in groups that were spread independently of each other. Make them with `normalDraws`. */
export interface NormalDraws {
  /** Row after row, one a point: the moment's rest, then one a tank, then the fuel's density. */
  readonly values: Float64Array;
  /** For each point, the masses that are tried with it: four quarters of a turn round the scale of probability. */
  readonly massZ: Float64Array;
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
/** Masses tried with each set of contents: a flight's fuel is followed once for all of them. */
const TURNS = 4;

/**
 * Evenly spread standard normal draws for insideOdds. They do not depend on a loading: make them once, and a drag
 * that asks again and again does not flicker.
 * @param dimensions 2 for all that is no fuel, one for each tank in doubt, one for the fuel's density: 2 to 16
 * @param count      flights, 64 to 65,536, rounded up to a multiple of 64
 * @param seed       1 to 2^32 - 17
 * @throws RangeProblem
 */
export function normalDraws(dimensions: number, count: number, seed: number): NormalDraws {
  requireRange('dimensions', dimensions, 2, SOBOL_MOST_DIMENSIONS, '');
  requireRange('count', count, GROUPS * TURNS, 65_536, '');
  requireRange('seed', seed, 1, 2 ** 32 - 17, '');
  const perGroup = Math.ceil(count / (GROUPS * TURNS));
  const values = new Float64Array(GROUPS * perGroup * (dimensions - 1));
  const massZ = new Float64Array(GROUPS * perGroup * TURNS);
  // Middle of the finest cell: 0 has no quantile.
  const half = 2 ** -33;
  let next = 0;
  let nextMass = 0;
  for (let group = 0; group < GROUPS; group++) {
    const points = sobolPoints(dimensions, perGroup, seed + group);
    for (let i = 0; i < points.length; i += dimensions) {
      for (let turn = 0; turn < TURNS; turn++) {
        massZ[nextMass++] = normalQuantileWithin((((points[i] ?? 0) + turn / TURNS) % 1) + half);
      }
      for (let d = 1; d < dimensions; d++) values[next++] = normalQuantileWithin((points[i + d] ?? 0) + half);
    }
  }
  return { values, massZ, dimensions, groups: GROUPS, perGroup };
}

/** Dimensions of draws that a loading needs. */
export function dimensionsOf(model: LoadingModel): number {
  const density = isDensityDoubtful(model.aeroplane) ? 1 : 0;
  return 2 + model.fuel.filter((fuel) => fuel.highL > fuel.lowL).length + density;
}

/**
 * Probability that the whole flight keeps all limits of CG and mass, by quasi-random draws.
 *
 * Masses and arms are normal and independent; all that is no fuel comes in by the mean and covariance of its mass and
 * moment (exact for products of independent factors). A tank's contents follow a normal curve through its 5, 50 and
 * 95 % figures, another width on either side, and never leave the tank. Each draw is a whole flight with its contents
 * and its fixed mass; the fixed moments that keep it inside are solved for, and their probability is exact, so that
 * only mass and contents are left to chance. (A notched envelope allows no such interval: there the moment is drawn
 * too, and a flight is followed until it is first outside.) Where the manual limits the lateral CG, the lateral moment is
 * drawn first, and the interval of the other one is that under it. A density in doubt is normal and the same error in
 * all tanks. Limits of stations and groups are not asked.
 * @param draws of at least dimensionsOf(model) dimensions
 * @throws RangeProblem where the draws have too few dimensions
 * @source A. B. Owen, Monte Carlo Theory, Methods and Examples, 2013, ch. 8 (conditioning), 15 and 17 (randomised
 *         quasi-Monte Carlo)
 */
export function insideOdds(model: LoadingModel, draws: NormalDraws): InsideOdds {
  requireRange('draws.dimensions', draws.dimensions, dimensionsOf(model), SOBOL_MOST_DIMENSIONS, '');
  const limits = flightLimits(limitsOf(model));
  const massTolerance = 1e-9 * largestMassKg(model);
  const spread = solidSpread(model);
  const corridors = corridorsOf(limits);
  const flights = corridors === null ? null : newRooms(limits, corridors, massTolerance);
  const doubtful = model.fuel.flatMap((fuel, i) => (fuel.highL > fuel.lowL ? [{ ...fuel, i }] : []));
  const contents = model.fuel.map((fuel) => fuel.bestL);
  const densityAt = isDensityDoubtful(model.aeroplane) ? 1 + doubtful.length : -1;
  const sideways = model.lateral === null ? null : newSideways(model.lateral, spread);
  const path = newPath(model.tanks.length);
  let { tanks } = model;
  let sum = 0;
  let sumOfSquares = 0;
  for (let group = 0; group < draws.groups; group++) {
    let inside = 0;
    for (let k = 0; k < draws.perGroup; k++) {
      const point = group * draws.perGroup + k;
      const row = point * (draws.dimensions - 1);
      for (let j = 0; j < doubtful.length; j++) {
        const tank = doubtful[j];
        if (tank === undefined) continue;
        const z = draws.values[row + 1 + j] ?? 0;
        const litres = tank.bestL + ((z > 0 ? tank.highL - tank.bestL : tank.bestL - tank.lowL) * z) / Z_95;
        contents[tank.i] = Math.min(Math.max(litres, 0), model.tanks[tank.i]?.usableL ?? 0);
      }
      if (densityAt > 0)
        tanks = tanksWithDensity(model.aeroplane, model.tanks, draws.values[row + densityAt] ?? 0);
      const { plan, solidKg, solidKgM } = model;
      // One path serves every mass and moment that is tried with this fuel, and all of them without doubt in fuel.
      if (point === 0 || doubtful.length > 0 || densityAt > 0)
        walk(path, plan, tanks, contents, solidKg, solidKgM, model.lateral?.solidKgM);
      const z = draws.values[row] ?? 0;
      for (let turn = 0; turn < TURNS; turn++) {
        const shiftKg = spread.massSdKg * (draws.massZ[point * TURNS + turn] ?? 0);
        const meanKgM = spread.momentPerMass * shiftKg;
        if (flights !== null) {
          if (sideways === null) inside += shareInside(flights, path, shiftKg, meanKgM, spread.restSdKgM);
          else if (isBeside(sideways, path, shiftKg, sideways.restSdKgM * z)) {
            const besideKgM = sideways.momentPerSd * z;
            inside += shareInside(flights, path, shiftKg, meanKgM + besideKgM, sideways.momentRestSdKgM);
          }
        } else {
          const share = sideways === null ? 1 : shareBeside(sideways, path, shiftKg, z);
          if (share === 0) continue;
          walk(path, plan, tanks, contents, solidKg + shiftKg, solidKgM + meanKgM + spread.restSdKgM * z);
          if (staysInside(path, limits, massTolerance)) inside += share;
          // The lateral moments were written over.
          if (sideways !== null)
            walk(path, plan, tanks, contents, solidKg, solidKgM, sideways.model.solidKgM);
        }
      }
    }
    const share = inside / (draws.perGroup * TURNS);
    sum += share;
    sumOfSquares += share * share;
  }
  const insideProb = sum / draws.groups;
  const variance = Math.max(0, sumOfSquares / draws.groups - insideProb ** 2) / (draws.groups - 1);
  return {
    insideProb,
    errorProb: Math.sqrt(variance),
    drawCount: draws.groups * draws.perGroup * TURNS,
  };
}

/** Envelopes joined by the part of the flight in which they hold. */
interface Rooms {
  readonly limits: FlightLimits;
  readonly corridors: readonly {
    readonly phase: Phase;
    readonly corridor: Corridor;
    readonly toleranceM: number;
  }[];
  readonly massTolerance: number;
  readonly room: MomentRoom;
}

type Corridors = Rooms['corridors'];

/** null where an envelope is notched, or several leave no mass between them. */
function corridorsOf({ envelopes }: FlightLimits): Corridors | null {
  const phases = [...new Set(envelopes.map(({ phase }) => phase))];
  const corridors: Corridors[number][] = [];
  for (const phase of phases) {
    const joined = envelopes.flatMap((limit) => (limit.phase === phase ? [limit.envelope] : []));
    const corridor = corridorOf(joined);
    if (corridor === null) return null;
    const toleranceM = 1e-9 * Math.min(...joined.map((envelope) => envelope.widthM));
    corridors.push({ phase, corridor, toleranceM });
  }
  return corridors;
}

function newRooms(limits: FlightLimits, corridors: Corridors, massTolerance: number): Rooms {
  return { limits, corridors, massTolerance, room: { leastKgM: 0, mostKgM: 0 } };
}

/** Probability that a flight with this fixed mass is inside, over the fixed moments that it may have. */
function shareInside(
  { limits, corridors, massTolerance, room }: Rooms,
  path: Path,
  shiftKg: number,
  meanKgM: number,
  sdKgM: number,
): number {
  if (!massesKept(path, limits, massTolerance, shiftKg)) return 0;
  room.leastKgM = -Infinity;
  room.mostKgM = Infinity;
  let toleranceKgM = 0;
  for (const { phase, corridor, toleranceM } of corridors) {
    const [from, to] = partOf(path, phase);
    narrowRoom(path, from, to, corridor, shiftKg, room);
    toleranceKgM = Math.max(toleranceKgM, toleranceM * (path.massKg[0] ?? 0));
  }
  if (room.leastKgM > room.mostKgM + 2 * toleranceKgM) return 0;
  if (sdKgM === 0) {
    return meanKgM >= room.leastKgM - toleranceKgM && meanKgM <= room.mostKgM + toleranceKgM ? 1 : 0;
  }
  const high = (room.mostKgM - meanKgM) / sdKgM;
  const low = (room.leastKgM - meanKgM) / sdKgM;
  return Math.max(0, below(high) - below(low));
}

/** Mass and moments of all that is no fuel as normal quantities: the moments' slopes on the mass, and their rests. */
interface SolidSpread {
  massSdKg: number;
  momentPerMass: number;
  restSdKgM: number;
  lateralPerMass: number;
  lateralRestSdKgM: number;
  /** Between the two rests, kg^2 m^2. */
  restCovariance: number;
}

function solidSpread({ solids }: LoadingModel): SolidSpread {
  let varianceMass = 0;
  let varianceMoment = 0;
  let varianceLateral = 0;
  let covariance = 0;
  let lateralCovariance = 0;
  let momentsCovariance = 0;
  for (const { massKg, armM, massSdKg, armSdM, lateralArmM, lateralArmSdM } of solids) {
    const variance = massSdKg ** 2;
    varianceMass += variance;
    varianceMoment += (armM * massSdKg) ** 2 + (massKg * armSdM) ** 2 + (massSdKg * armSdM) ** 2;
    varianceLateral += lateralArmM ** 2 * variance + lateralArmSdM ** 2 * (massKg ** 2 + variance);
    covariance += armM * variance;
    lateralCovariance += lateralArmM * variance;
    momentsCovariance += armM * lateralArmM * variance;
  }
  const momentPerMass = varianceMass > 0 ? covariance / varianceMass : 0;
  const lateralPerMass = varianceMass > 0 ? lateralCovariance / varianceMass : 0;
  return {
    massSdKg: Math.sqrt(varianceMass),
    momentPerMass,
    restSdKgM: Math.sqrt(Math.max(0, varianceMoment - momentPerMass * covariance)),
    lateralPerMass,
    lateralRestSdKgM: Math.sqrt(Math.max(0, varianceLateral - lateralPerMass * lateralCovariance)),
    restCovariance: momentsCovariance - momentPerMass * lateralCovariance,
  };
}

/** The lateral limits with how the lateral moment goes along with the mass and with the other moment. */
interface Sideways {
  readonly model: LateralModel;
  readonly lateralPerMass: number;
  readonly restSdKgM: number;
  /** Of the other moment for one standard deviation of the lateral one, and what is left of its own. */
  readonly momentPerSd: number;
  readonly momentRestSdKgM: number;
  /** Likewise of the lateral moment for one of the other. */
  readonly lateralPerSd: number;
  readonly lateralLeftSdKgM: number;
  readonly room: LateralRoom;
}

function newSideways(model: LateralModel, spread: SolidSpread): Sideways {
  const { restSdKgM, lateralRestSdKgM, restCovariance } = spread;
  const momentPerSd = lateralRestSdKgM > 0 ? restCovariance / lateralRestSdKgM : 0;
  const lateralPerSd = restSdKgM > 0 ? restCovariance / restSdKgM : 0;
  return {
    model,
    lateralPerMass: spread.lateralPerMass,
    restSdKgM: lateralRestSdKgM,
    momentPerSd,
    momentRestSdKgM: Math.sqrt(Math.max(0, restSdKgM ** 2 - momentPerSd ** 2)),
    lateralPerSd,
    lateralLeftSdKgM: Math.sqrt(Math.max(0, lateralRestSdKgM ** 2 - lateralPerSd ** 2)),
    room: { leastKgM: 0, mostKgM: 0 },
  };
}

/** Whether a flight whose lateral moment is off by so much keeps the lateral limits. */
function isBeside(sideways: Sideways, path: Path, shiftKg: number, restKgM: number): boolean {
  const { model, room, lateralPerMass } = sideways;
  lateralRoom(path, ...partOf(path, 'flight'), model, shiftKg, room);
  const tolerance = 1e-9 * model.widthM * (path.massKg[0] ?? 0);
  const offKgM = lateralPerMass * shiftKg + restKgM;
  return offKgM >= room.leastKgM - tolerance && offKgM <= room.mostKgM + tolerance;
}

/** Probability that a flight keeps the lateral limits, its other moment being off by so many standard deviations. */
function shareBeside(sideways: Sideways, path: Path, shiftKg: number, z: number): number {
  const { room, lateralPerMass, lateralPerSd, lateralLeftSdKgM: sdKgM } = sideways;
  if (sdKgM === 0) return isBeside(sideways, path, shiftKg, lateralPerSd * z) ? 1 : 0;
  lateralRoom(path, ...partOf(path, 'flight'), sideways.model, shiftKg, room);
  const meanKgM = lateralPerMass * shiftKg + lateralPerSd * z;
  return Math.max(0, below((room.mostKgM - meanKgM) / sdKgM) - below((room.leastKgM - meanKgM) / sdKgM));
}

/** Beyond nine standard deviations nothing is left; without an envelope a side is infinitely far. */
function below(z: number): number {
  if (z > 9) return 1;
  return z < -9 ? 0 : normalCdf(z);
}
