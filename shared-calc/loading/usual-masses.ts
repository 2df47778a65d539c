// What masses usually are, so that pounds typed for kilograms (or the other way about) are noticed and asked about. Nothing
// is refused or changed by it. Common practice, no source: light aeroplanes weigh empty from 40 to 88 % of their maximum, so
// that a factor of 2.2 leads out of what is usual either way.

const LEAST_RATIO = 1.13;
const MOST_RATIO = 2.5;

/** From and to, kg. */
export type UsualMass = readonly [number, number];

/**
 * What a maximum mass of an aeroplane usually is.
 * @param emptyKg as weighed; null where it is not known yet: then that of one to four seats
 */
export function usualMaximumKg(emptyKg: number | null): UsualMass {
  return emptyKg === null ? [200, 1150] : [LEAST_RATIO * emptyKg, MOST_RATIO * emptyKg];
}

/**
 * What an aeroplane usually weighs empty.
 * @param takeOffKg its maximum at take-off; null where it is not known yet
 */
export function usualEmptyKg(takeOffKg: number | null): UsualMass {
  return takeOffKg === null ? [90, 650] : [takeOffKg / MOST_RATIO, takeOffKg / LEAST_RATIO];
}

/** What whoever sits on a seat usually weighs, kg: a child of ten to a heavy adult. */
export const USUAL_PERSON_KG: UsualMass = [32, 140];
