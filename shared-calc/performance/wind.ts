import { requireRange } from '../problem.ts';
import { RAD_PER_DEG } from '../units/constants.ts';
import type { DirectionDeg, North } from './direction.ts';

export interface WindComponents {
  /** Along the runway; negative is a tailwind. */
  readonly headwindMs: number;
  /** Across it; negative comes from the left. */
  readonly crosswindFromRightMs: number;
}

/**
 * A wind along and across a runway. Both directions count from the same north.
 * @param runwayDeg the direction in which the aeroplane will roll
 * @param windFromDeg where the wind comes from
 * @param speedMs 0 to 60 m/s; a gust is entered for the crosswind and the tailwind, the mean for the headwind
 * @throws RangeProblem outside the range
 * @source Pilot's Handbook of Aeronautical Knowledge, FAA-H-8083-25C, ch. 11, crosswind and headwind component chart
 * @example runway 180, wind from 220 at 30 kt: 23 kt ahead, 19 kt from the right
 */
export function windComponents<N extends North>(
  runwayDeg: DirectionDeg<N>,
  windFromDeg: DirectionDeg<NoInfer<N>>,
  speedMs: number,
): WindComponents {
  requireRange('speedMs', speedMs, 0, STRONGEST_MS, 'm/s');
  const angleRad = (windFromDeg - runwayDeg) * RAD_PER_DEG;
  return {
    headwindMs: speedMs * Math.cos(angleRad),
    crosswindFromRightMs: speedMs * Math.sin(angleRad),
  };
}

/**
 * The widest angle to the runway at which a wind stays within a crosswind limit; 90 when it does at any angle.
 * @param speedMs 0 to 60 m/s
 * @param limitMs 0 to 60 m/s
 * @returns degrees, 0 to 90
 * @throws RangeProblem naming either
 */
export function widestAngleForCrosswindDeg(speedMs: number, limitMs: number): number {
  requireRange('speedMs', speedMs, 0, STRONGEST_MS, 'm/s');
  requireRange('limitMs', limitMs, 0, STRONGEST_MS, 'm/s');
  return limitMs >= speedMs ? 90 : Math.asin(limitMs / speedMs) / RAD_PER_DEG;
}

/**
 * The wind that gives a component at a fixed angle: for a least headwind and a most crosswind.
 * @param componentMs 0 to 60 m/s
 * @param angleDeg between runway and wind, 0 to 89 for a headwind, 1 to 90 for a crosswind
 * @throws RangeProblem naming either
 * @example at 60 degrees a headwind of 10 kt needs a wind of 20 kt
 */
export function windForHeadwindMs(componentMs: number, angleDeg: number): number {
  requireRange('componentMs', componentMs, 0, STRONGEST_MS, 'm/s');
  requireRange('angleDeg', angleDeg, 0, 89, 'degrees');
  return componentMs / Math.cos(angleDeg * RAD_PER_DEG);
}

/** As `windForHeadwindMs`, for a crosswind. @throws RangeProblem naming either argument */
export function windForCrosswindMs(componentMs: number, angleDeg: number): number {
  requireRange('componentMs', componentMs, 0, STRONGEST_MS, 'm/s');
  requireRange('angleDeg', angleDeg, 1, 90, 'degrees');
  return componentMs / Math.sin(angleDeg * RAD_PER_DEG);
}

/** How much of a headwind is counted on, and how much of a tailwind is feared. */
export interface WindCredit {
  /** 0 to 1. */
  readonly headwindRatio: number;
  /** 1 to 3. */
  readonly tailwindRatio: number;
}

/** Unless the manual's figures include it already. @source 14 CFR 25.105(d), 25.125(f), used here as common practice */
export const DEFAULT_WIND_CREDIT: WindCredit = { headwindRatio: 0.5, tailwindRatio: 1.5 };
/** For figures of a manual that says that they include the margin. */
export const FULL_WIND_CREDIT: WindCredit = { headwindRatio: 1, tailwindRatio: 1 };

/**
 * The headwind to enter a table or a note with.
 * @param headwindMs −60 to 60 m/s, negative is a tailwind
 * @throws RangeProblem naming headwindMs or a part of the credit
 * @example 8 kt of headwind count as 4, 4 kt of tailwind as 6
 */
export function creditedHeadwindMs(headwindMs: number, credit: WindCredit = DEFAULT_WIND_CREDIT): number {
  requireRange('headwindMs', headwindMs, -STRONGEST_MS, STRONGEST_MS, 'm/s');
  requireRange('headwindRatio', credit.headwindRatio, 0, 1, '');
  requireRange('tailwindRatio', credit.tailwindRatio, 1, 3, '');
  return headwindMs * (headwindMs >= 0 ? credit.headwindRatio : credit.tailwindRatio);
}

/**
 * Ground roll with a wind against that without, for a constant acceleration to the same airspeed.
 * Theory to compare with, not a replacement of the manual's own figures.
 * @param headwindRatio headwind over lift-off or touch-down speed, −0.5 to 0.5
 * @returns (1 − r) squared
 * @throws RangeProblem outside it
 * @source Pilot's Handbook of Aeronautical Knowledge, FAA-H-8083-25C, ch. 11: 10 % of headwind shorten it by 19 %
 */
export function groundRollWindRatio(headwindRatio: number): number {
  requireRange('headwindRatio', headwindRatio, -0.5, 0.5, '');
  return (1 - headwindRatio) ** 2;
}

const STRONGEST_MS = 60;
