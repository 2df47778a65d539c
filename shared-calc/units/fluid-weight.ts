import { requireRange } from '../problem.ts';
import { KG_PER_LB, L_PER_US_GAL } from './constants.ts';

export type StandardFluid = 'avgas' | 'jetA' | 'oil' | 'water';

/**
 * Standard weights, for want of a measured density: of a fluid at about 15 degC. Real avgas is 0.69 to 0.72 kg/L, mogas
 * 0.72 to 0.775 (EN 228), so a tank's own figure from its placard or a hydrometer comes first.
 * @source FAA-H-8083-25C chapter 10 and FAA-H-8083-1B chapter 2, standard weights
 */
export const STANDARD_WEIGHT_LB_PER_US_GAL: Readonly<Record<StandardFluid, number>> = {
  avgas: 6,
  jetA: 6.8,
  oil: 7.5,
  water: 8.35,
};

/**
 * The standard weight of a fluid as a density.
 * @returns kg/L
 * @example avgas: 0.7190 kg/L (6 lb/US gal)
 */
export function standardDensityKgL(fluid: StandardFluid): number {
  return (STANDARD_WEIGHT_LB_PER_US_GAL[fluid] * KG_PER_LB) / L_PER_US_GAL;
}

/**
 * Mass of a volume of fluid.
 * @param volumeL     0 to 10,000 L
 * @param densityKgL  0.5 to 1.5 kg/L
 * @returns kg
 * @throws RangeProblem naming volumeL or densityKgL
 * @example 30 US gal of avgas, 113.56 L, weigh 81.65 kg (180 lb)
 */
export function fluidMassKg(volumeL: number, densityKgL: number): number {
  requireRange('volumeL', volumeL, 0, 10_000, 'L');
  requireRange('densityKgL', densityKgL, 0.5, 1.5, 'kg/L');
  return volumeL * densityKgL;
}
