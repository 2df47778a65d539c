import type { ContainerRecord } from '../records.ts';

/** Errors of what a refill was measured with, as standard deviations. */
export interface RefillMeasure {
  /** Of its own scale, common to every refill by it. */
  readonly scaleSdRatio: number;
  /** Of each refill by itself. */
  readonly refillSdL: number;
}

/**
 * A fuel station's pump. Common practice, no source: legal tolerances are about 0.5 %, and a club's own pump is tested
 * less often; its counter is read to a tenth of a litre.
 */
export const STATION_PUMP: RefillMeasure = { scaleSdRatio: 0.004, refillSdL: 0.05 };

/**
 * What a refill's measure is good for. From a can of known size a refill is as many pours as it takes.
 * @param container null for a fuel station's pump
 */
export function refillMeasure(container: ContainerRecord | null, refillL: number): RefillMeasure {
  if (container === null) return STATION_PUMP;
  const pours = container.nominalL === null ? 1 : Math.max(1, refillL / container.nominalL);
  return { scaleSdRatio: container.scaleSdRatio, refillSdL: container.pourSdL * Math.sqrt(pours) };
}
