import { requireRange } from '../problem.ts';

/** What a flight by visual rules must keep at normal cruising speed, by day. @source 14 CFR 91.151(a)(1) */
export const VFR_DAY_RESERVE_S = 30 * 60;
/** The same at night: from the end of evening to the beginning of morning civil twilight. @source 14 CFR 91.151(a)(2), 1.1 */
export const VFR_NIGHT_RESERVE_S = 45 * 60;

export interface EnduranceQuestion {
  /** Low bound of the usable fuel aboard, 0 to 1000 L. */
  readonly usableL: number;
  /** High bound of the flow in level cruise where one is known, 1 to 500 L/h. */
  readonly fuelFlowLPerH: number;
  /** Used before level cruise, 0 to 100 L each. */
  readonly taxiL: number;
  readonly climbL: number;
  /** Kept by law, and by the pilot's own rule above it, at the cruise flow; 0 to 4 h each. */
  readonly legalReserveS: number;
  readonly ownReserveS: number;
}

export interface Endurance {
  /** Level cruise until only the reserve is left; 0 when there is no more than the reserve. */
  readonly cruiseS: number;
  /** Kept back for the reserve. */
  readonly reserveL: number;
  /** By how much the fuel falls short of taxi, climb and reserve; 0 when it covers them. */
  readonly shortL: number;
}

/**
 * Time in level cruise after taxi, climb and reserve.
 * @returns seconds and litres, unrounded: a screen rounds endurance down
 * @throws RangeProblem naming the quantity that lies outside its range
 * @source 14 CFR 91.151 for the legal reserve; the arithmetic is volume over flow
 * @example 20 L at 18 L/h, nothing for taxi and climb, 30 min reserve: 66 min 40 s less 30 min is 36 min 40 s
 */
export function enduranceOf(question: EnduranceQuestion): Endurance {
  const { usableL, fuelFlowLPerH, taxiL, climbL, legalReserveS, ownReserveS } = question;
  requireRange('usableL', usableL, 0, 1000, 'L');
  requireRange('fuelFlowLPerH', fuelFlowLPerH, 1, 500, 'L/h');
  requireRange('taxiL', taxiL, 0, 100, 'L');
  requireRange('climbL', climbL, 0, 100, 'L');
  requireRange('legalReserveS', legalReserveS, 0, FOUR_HOURS_S, 's');
  requireRange('ownReserveS', ownReserveS, 0, FOUR_HOURS_S, 's');
  const reserveL = ((legalReserveS + ownReserveS) / HOUR_S) * fuelFlowLPerH;
  const leftL = usableL - taxiL - climbL - reserveL;
  return { cruiseS: (Math.max(0, leftL) / fuelFlowLPerH) * HOUR_S, reserveL, shortL: Math.max(0, -leftL) };
}

const HOUR_S = 3600;
const FOUR_HOURS_S = 4 * HOUR_S;
