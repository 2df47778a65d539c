import { requireRange } from '../problem.ts';

/** Farther from the datum than any arm of a small aeroplane, m. */
export const ARM_MOST_M = 100;

/**
 * Refuse an arm that no small aeroplane has: 100 m either side of the datum.
 * @throws RangeProblem
 */
export function requireArm(field: string, armM: number): void {
  requireRange(field, armM, -ARM_MOST_M, ARM_MOST_M, 'm', 'were inches or millimetres meant?');
}

/** Heaviest mass that loading takes, kg: above any aeroplane for which it is meant. */
export const MASS_MOST_KG = 50_000;

/**
 * Refuse a mass that is negative, not finite or beyond any small aeroplane.
 * @throws RangeProblem
 */
export function requireMass(field: string, massKg: number): void {
  requireRange(field, massKg, 0, MASS_MOST_KG, 'kg');
}
