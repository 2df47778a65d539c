import { requireRange } from '../problem.ts';

/**
 * Thermal expansion of fuels by their density at 15 degC: a = k0 / rho^2 + k1 / rho (+ k2), rho in kg/m3.
 * Gasolines, the transition zone, and jet fuels.
 */
const GROUPS = [
  { belowKgM3: 770.3, k0: 346.4228, k1: 0.4388, k2: 0 },
  { belowKgM3: 787.5, k0: 2680.3206, k1: 0, k2: -0.00336312 },
  { belowKgM3: Infinity, k0: 594.5418, k1: 0, k2: 0 },
] as const;

/**
 * Density of a fuel at another temperature than the one for which it is known. The density that is known is taken as
 * the one at 15 degC in finding the expansion: within 20 degrees of it that errs by less than 0.02 %.
 * @param densityKgPerL  at `atC`, 0.653 to 0.838 kg/L (gasolines to jet fuel)
 * @param atC            the temperature that the density is for, -40 to 60 degC
 * @param fuelC          the fuel's own, -40 to 60 degC
 * @returns kg/L
 * @throws RangeProblem naming what lies outside its range
 * @source API MPMS ch. 11.1 (ASTM D1250-80), equations behind tables 53B and 54B. The standard was not at hand: the
 *   constants are as several public implementations of table 54B have them, and the tests hold them against a printed table
 * @example 0.740 kg/L at 15 degC is 0.731 at 25 degC
 */
export function fuelDensityKgPerL(densityKgPerL: number, atC: number, fuelC: number): number {
  requireRange('densityKgPerL', densityKgPerL, 0.653, 0.838, 'kg/L');
  requireRange('atC', atC, -40, 60, 'degC');
  requireRange('fuelC', fuelC, -40, 60, 'degC');
  const kgM3 = 1000 * densityKgPerL;
  const group = GROUPS.find(({ belowKgM3 }) => kgM3 < belowKgM3) ?? GROUPS[2];
  const perC = group.k0 / kgM3 ** 2 + group.k1 / kgM3 + group.k2;
  const expansion = perC * (fuelC - atC);
  return densityKgPerL * Math.exp(-expansion * (1 + 0.8 * expansion));
}

/**
 * Litres of a weighed pour: what went in by volume is what the gauge's float or plates see.
 * @param massKg  net, 0 to 1000 kg
 * @param weighed the fuel's density and the temperature that it is for
 * @param fuelC   the fuel's temperature; null where it was not measured: that of the density
 * @throws RangeProblem naming what lies outside its range
 */
export function weighedVolumeL(
  massKg: number,
  weighed: { densityKgPerL: number; temperatureC: number },
  fuelC: number | null,
): number {
  requireRange('massKg', massKg, 0, 1000, 'kg');
  return (
    massKg / fuelDensityKgPerL(weighed.densityKgPerL, weighed.temperatureC, fuelC ?? weighed.temperatureC)
  );
}
