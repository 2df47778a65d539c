import type { LoadingRecord } from './records.ts';

/** How long the fuel lasts, by its low figures. */
export interface Reserve {
  /** Seconds after take-off until the last usable litre is burned; negative where not even the taxi fuel is there. */
  lastsS: number;
  /** Latest landing, seconds after take-off, that keeps the reserve; negative where there is none. */
  landByS: number;
  /** What a landing as planned leaves; null where none is planned. */
  leftAtLandingS: number | null;
  kept: boolean;
}

/**
 * Endurance from the low figures of fuel, less taxi and climb, at the cruise flow; and what of it a reserve leaves.
 *
 * All usable fuel counts whatever the order of tanks. What a return line loses overboard is not in it.
 * @returns null where no flow was entered
 * @source the sum itself; the legal reserve by day is 30 min, by night 45 min in 14 CFR 91.151
 */
export function reserveOf({ fuel, flight }: Pick<LoadingRecord, 'fuel' | 'flight'>): Reserve | null {
  if (flight.cruiseLPerH <= 0) return null;
  const lowL = fuel.reduce((sum, each) => sum + each.lowL, 0);
  const cruiseL = lowL - flight.taxiL - flight.climbL;
  const lastsS = flight.climbMin * 60 + (cruiseL / flight.cruiseLPerH) * 3600;
  const landByS = lastsS - flight.reserveMin * 60;
  const landingS = flight.landingAfterS;
  return {
    lastsS,
    landByS,
    leftAtLandingS: landingS === null ? null : lastsS - landingS,
    // A billionth of the flight, as for every limit: a reserve met exactly is kept.
    kept: landingS === null ? landByS >= 0 : landingS <= landByS + 1e-9 * Math.max(1, landingS),
  };
}
