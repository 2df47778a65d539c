import { KG_PER_LB, MS_PER_KT } from '../units/constants.ts';

/**
 * What a light-sport airplane was limited to until the rule of 2025 changed the definition: fields that aeroplanes of the
 * class still carry on their placards.
 * @source 14 CFR 1.1, light-sport aircraft (2004 to 2025)
 */
export const LIGHT_SPORT_LIMITS = {
  landMassKg: 1320 * KG_PER_LB,
  waterMassKg: 1430 * KG_PER_LB,
  /** Calibrated, clean, at maximum mass. */
  stallSpeedMs: 45 * MS_PER_KT,
  /** Calibrated, level at maximum continuous power, standard sea level. */
  levelSpeedMs: 120 * MS_PER_KT,
  seatCount: 2,
} as const;
