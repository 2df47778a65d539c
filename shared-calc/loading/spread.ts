import { requireRange } from '../problem.ts';
import type { LimitMargin } from './assess.ts';
import { bandAt } from './envelope.ts';
import type { LoadingModel, SolidItem } from './model.ts';
import { newPath, type Path } from './path.ts';
import { pointAfterL, type FlightPoint } from './point.ts';
import { walk } from './walk.ts';
import { isDensityDoubtful, tanksWithDensity } from './fuel-figures.ts';
import { Z_95 } from '../numeric/z-95.ts';

/** Doubt of the loaded point at one instant: variances and covariance of arm and mass. */
export interface Spread {
  readonly armM: number;
  readonly massKg: number;
  readonly armSdM: number;
  readonly massSdKg: number;
  /** -1 to 1 */
  readonly correlation: number;
}

/** What one input adds to the doubt, in the order of its size. */
export interface DoubtShare {
  readonly name: string;
  readonly kind: 'empty' | 'load' | 'fuel' | 'density';
  /** Of the variance of the margin, 0 to 1; all shares add up to 1. */
  readonly share: number;
  /** Part of that share that comes from the arm and not from the mass. */
  readonly armShare: number;
}

/** Effect on mass and moment of one standard deviation of one independent input. */
interface Input {
  readonly name: string;
  readonly kind: DoubtShare['kind'];
  readonly ofArm: boolean;
  readonly massKg: number;
  readonly momentKgM: number;
  readonly lateralKgM: number;
}

/**
 * Mean and standard uncertainties of the loaded point after so many litres burned.
 *
 * Propagated to first order: each mass with its arm, each arm with its mass, and each tank by what its 5 and 95 %
 * figures do at that instant (more in the tank that burns first is more in the next one later). Inputs are independent.
 * @param burnedL 0 to what the best figures of fuel give
 * @throws RangeProblem naming burnedL
 * @source JCGM 100:2008 (GUM), 5.1.2
 */
export function spreadAfterL(model: LoadingModel, path: Path, burnedL: number): Spread {
  const { massKg, armM } = pointAfterL(model, path, burnedL);
  let varianceMass = 0;
  let varianceArm = 0;
  let covariance = 0;
  for (const input of inputsAt(model, burnedL)) {
    const arm = (input.momentKgM - armM * input.massKg) / massKg;
    varianceMass += input.massKg ** 2;
    varianceArm += arm ** 2;
    covariance += arm * input.massKg;
  }
  const massSdKg = Math.sqrt(varianceMass);
  const armSdM = Math.sqrt(varianceArm);
  const product = massSdKg * armSdM;
  return { armM, massKg, armSdM, massSdKg, correlation: product > 0 ? covariance / product : 0 };
}

/**
 * Outline of the region that holds the loaded point with a given probability: an ellipse in arm and mass.
 * @param share above 0, below 1: 0.9 for nine times in ten
 * @param count points round the outline, 8 to 1,000
 * @throws RangeProblem
 * @source the chi-squared distribution with two degrees of freedom: radius^2 = -2 ln(1 - share)
 */
export function ellipseOf(spread: Spread, share: number, count = 72): { armM: number; massKg: number }[] {
  requireRange('share', share, 1e-6, 1 - 1e-6, '');
  requireRange('count', count, 8, 1000, '');
  const radius = Math.sqrt(-2 * Math.log(1 - share));
  const across = Math.sqrt(Math.max(0, 1 - spread.correlation ** 2));
  return Array.from({ length: count }, (_, i) => {
    const angle = (2 * Math.PI * i) / count;
    const [u, v] = [radius * Math.cos(angle), radius * Math.sin(angle)];
    return {
      armM: spread.armM + spread.armSdM * u,
      massKg: spread.massKg + spread.massSdKg * (spread.correlation * u + across * v),
    };
  });
}

/**
 * By which inputs a margin is in doubt, largest share first; empty where nothing is in doubt, or for a limit of a
 * station or group.
 */
export function doubtShares(model: LoadingModel, margin: LimitMargin): DoubtShare[] {
  const effects = effectsOn(model, margin);
  const total = effects.reduce((sum, { variance }) => sum + variance, 0);
  if (total === 0) return [];
  const byName = new Map<string, { name: string; kind: DoubtShare['kind']; all: number; arm: number }>();
  for (const { name, kind, ofArm, variance } of effects) {
    const key = `${kind} ${name}`;
    const sum = byName.get(key) ?? { name, kind, all: 0, arm: 0 };
    sum.all += variance;
    if (ofArm) sum.arm += variance;
    byName.set(key, sum);
  }
  return [...byName.values()]
    .map(({ name, kind, all, arm }) => ({ name, kind, share: all / total, armShare: arm / total }))
    .filter(({ share }) => share > 0)
    .sort((a, b) => b.share - a.share);
}

/**
 * The limit that decides how probable it is to stay inside: whose margin is fewest of its own standard uncertainties.
 * null where no margin is in doubt.
 */
export function mostDoubtful(model: LoadingModel, margins: readonly LimitMargin[]): LimitMargin | null {
  let fewest = Infinity;
  let found: LimitMargin | null = null;
  for (const margin of margins) {
    const sd = Math.sqrt(effectsOn(model, margin).reduce((sum, { variance }) => sum + variance, 0));
    if (sd === 0 || margin.margin / sd >= fewest) continue;
    fewest = margin.margin / sd;
    found = margin;
  }
  return found;
}

/** What each input adds to the variance of a margin, to first order; nothing for a limit of a station or group. */
function effectsOn(model: LoadingModel, margin: LimitMargin): (Input & { variance: number })[] {
  const slope = slopeOf(margin);
  if (slope === null || margin.worst === null) return [];
  return inputsAt(model, margin.worst.burnedL).map((input) => ({
    ...input,
    variance:
      (slope.perKg * input.massKg +
        slope.perKgM * input.momentKgM +
        slope.perLateralKgM * input.lateralKgM) **
      2,
  }));
}

/** Change of a margin with mass and with moment at its worst point. */
function slopeOf({
  limit,
  worst,
}: LimitMargin): { perKg: number; perKgM: number; perLateralKgM: number } | null {
  if (worst === null) return null;
  const ofMass = { perKgM: 0, perLateralKgM: 0 };
  if (limit.kind === 'most') return { perKg: -1, ...ofMass };
  if (limit.kind === 'least') return limit.isStated ? { perKg: 1, ...ofMass } : null;
  const { massKg: m, momentKgM, lateralArmM } = worst;
  if ('side' in limit) {
    const towards = limit.kind === 'right' ? 1 : -1;
    // margin = towards (l0/m + l1 - Y/m)
    const perKg = towards * (-limit.side.l0 / m ** 2 + (lateralArmM ?? 0) / m);
    return { perKg, perKgM: 0, perLateralKgM: -towards / m };
  }
  if (!('envelope' in limit)) return null;
  const span = bandAt(limit.envelope, m).spans[0];
  if (span === undefined) return null;
  const sense = limit.kind === 'aft' ? 1 : -1;
  const side = limit.kind === 'aft' ? span.aft : span.forward;
  // margin = sense (l0/m + l1 + l2 m - M/m)
  return {
    perKg: sense * (side.l2 - side.l0 / m ** 2 + momentKgM / m ** 2),
    perKgM: -sense / m,
    perLateralKgM: 0,
  };
}

function inputsAt(model: LoadingModel, burnedL: number): Input[] {
  const inputs: Input[] = [];
  model.solids.forEach((item, i) => {
    inputs.push(...solidInputs(item, i === 0 ? 'empty' : 'load'));
  });
  const at = (contents: readonly number[], tanks: LoadingModel['tanks']) => {
    const path = newPath(tanks.length);
    const { plan, solidKg, solidKgM, lateral } = model;
    walk(path, plan, tanks, contents, solidKg, solidKgM, lateral?.solidKgM);
    return pointAfterL(model, path, Math.min(burnedL, path.burnedL[path.nodes - 1] ?? 0));
  };
  const between = (low: FlightPoint, high: FlightPoint) => ({
    ofArm: false,
    massKg: (high.massKg - low.massKg) / (2 * Z_95),
    momentKgM: (high.momentKgM - low.momentKgM) / (2 * Z_95),
    lateralKgM: ((high.lateralArmM ?? 0) * high.massKg - (low.lateralArmM ?? 0) * low.massKg) / (2 * Z_95),
  });
  model.fuel.forEach((fuel, i) => {
    if (fuel.highL === fuel.lowL) return;
    const filled = (litres: number) =>
      at(
        model.fuel.map((f, j) => (j === i ? litres : f.bestL)),
        model.tanks,
      );
    const name = model.aeroplane.tanks[i]?.name ?? '';
    inputs.push({ name, kind: 'fuel', ...between(filled(fuel.lowL), filled(fuel.highL)) });
  });
  if (isDensityDoubtful(model.aeroplane)) {
    const best = model.fuel.map((f) => f.bestL);
    const [light, heavy] = [-Z_95, Z_95].map((z) =>
      at(best, tanksWithDensity(model.aeroplane, model.tanks, z)),
    );
    if (light !== undefined && heavy !== undefined)
      inputs.push({ name: '', kind: 'density', ...between(light, heavy) });
  }
  return inputs;
}

function solidInputs(item: SolidItem, kind: 'empty' | 'load'): Input[] {
  const { name, massKg, armM, massSdKg, armSdM, lateralArmM, lateralArmSdM } = item;
  const inputs: Input[] = [];
  if (massSdKg > 0)
    inputs.push({
      ...{ name, kind, ofArm: false, massKg: massSdKg, momentKgM: massSdKg * armM },
      lateralKgM: massSdKg * lateralArmM,
    });
  const ofArm = { name, kind, ofArm: true, massKg: 0, momentKgM: 0, lateralKgM: 0 };
  if (armSdM > 0) inputs.push({ ...ofArm, momentKgM: massKg * armSdM });
  if (lateralArmSdM > 0) inputs.push({ ...ofArm, lateralKgM: massKg * lateralArmSdM });
  return inputs;
}
