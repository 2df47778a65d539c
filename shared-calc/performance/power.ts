import { requireRange } from '../problem.ts';

/**
 * Full-throttle power of an engine that breathes without a charger, against its power in standard air at sea level.
 * A labelled estimate of how power falls with density; not for turbocharged engines, and nothing about the propeller.
 * @param densityRatio air density over 1.225 kg/m3, 0.3 to 1.4
 * @returns ratio, 1 at sea level
 * @throws RangeProblem outside it
 * @source R. F. Gagg and E. V. Farrar, Altitude Performance of Aircraft Engines Equipped with Gear-Driven
 *   Superchargers, SAE Transactions 29, 1934 (cited as Gagg and Ferrar): sigma − (1 − sigma) / 7.55
 * @example at 10,000 ft, sigma 0.7385: 0.704
 */
export function gaggFerrarPowerRatio(densityRatio: number): number {
  requireRange('densityRatio', densityRatio, 0.3, 1.4, '');
  return densityRatio - (1 - densityRatio) / 7.55;
}

/**
 * Lift-off or approach speed against the one at another mass, at the same lift coefficient and density.
 * @param massRatio new mass over old, 0.3 to 3
 * @returns square root of it
 * @throws RangeProblem outside it
 * @source Pilot's Handbook of Aeronautical Knowledge, FAA-H-8083-25C, ch. 11: 21 % more weight, 10 % more speed
 */
export function speedRatioForMass(massRatio: number): number {
  requireRange('massRatio', massRatio, 0.3, 3, '');
  return Math.sqrt(massRatio);
}
