import type { LoadingAeroplane } from '../aeroplane.ts';
import { assessModel, type LimitMargin, type LoadingResult } from '../assess.ts';
import type { LoadingCase } from '../case.ts';
import { loadingModel } from '../model.ts';
import { reserveOf } from '../reserve.ts';

/** A reserve met exactly is met, whatever its sum has lost in rounding. */
const MET_EXACTLY = 1e-10;

/** What a backwards question is asked about. */
export interface Asked {
  readonly aeroplane: LoadingAeroplane;
  readonly loading: LoadingCase;
  /** Legal reserve and the pilot's own, s. */
  readonly reserveS: number;
}

/** How far a loading is from breaking a limit, each kind by itself. */
export interface KeptBy {
  readonly result: LoadingResult;
  /** Least of `flightShareOf` over the limits of CG and mass, left against right fuel with them; negative is outside. */
  readonly flightShare: number;
  /** Seconds by which the planned landing keeps the reserve (or the fuel holds it at all); negative where it does not. */
  readonly reserveSlackS: number;
  /** Margins of stations and groups, kg, in the order of the limits. */
  readonly placesKg: readonly number[];
  /** Everything kept, and nothing that was compared with nothing. */
  readonly all: boolean;
}

/**
 * Hold a loading against every limit of the manual and its reserve: the same assessment as the verdict's.
 * @throws RangeProblem, InputProblem: see loadingModel
 */
export function keptBy({ aeroplane, loading, reserveS }: Asked): KeptBy {
  const result = assessModel(loadingModel(aeroplane, loading));
  let flightShare = result.unchecked.length > 0 ? -Infinity : Infinity;
  const placesKg: number[] = [];
  for (const margin of result.margins) {
    if ('loadedKg' in margin.limit) placesKg.push(margin.margin);
    else flightShare = Math.min(flightShare, flightShareOf(margin));
  }
  const reserveSlack = reserveSlackS(loading, reserveS);
  const all = result.inside && reserveSlack >= 0;
  return { result, flightShare, reserveSlackS: reserveSlack, placesKg, all };
}

/** Masses are measured by this much, so that limits of CG and mass compare and none is steeper than the other. */
export const SHARE_KG = 100;

/** A margin along the flight as a share: of the envelope's width, or of 100 kg. Its sign is the margin's. */
export function flightShareOf({ limit, margin }: LimitMargin): number {
  return 'envelope' in limit
    ? margin / limit.envelope.widthM
    : margin / ('side' in limit ? limit.widthM : SHARE_KG);
}

/** See KeptBy.reserveSlackS; an aeroplane without a fuel flow keeps no reserve. */
export function reserveSlackS({ fuel, flight }: LoadingCase, reserveS: number): number {
  const reserve = reserveOf({ fuel: [...fuel], flight: { ...flight, reserveMin: reserveS / 60 } });
  if (reserve === null) return fuel.length === 0 ? 0 : -Infinity;
  const landingS = flight.landingAfterS ?? 0;
  return reserve.landByS - landingS + MET_EXACTLY * Math.max(1, landingS);
}
