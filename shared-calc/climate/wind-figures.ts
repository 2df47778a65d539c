import type { DirectionDeg } from '../performance/direction.ts';
import { RAD_PER_DEG } from '../units/constants.ts';

/** The wind of one report. */
export interface ReportedWind {
  /** True; NaN where it varied. */
  readonly fromDeg: number;
  /** Mean; NaN where none was reported. */
  readonly meanMs: number;
  /** NaN where none was reported. */
  readonly gustMs: number;
}

/**
 * Headwind along a runway, negative for a tailwind: the mean of a headwind, the gust of a tailwind. A wind of no
 * certain direction counts fully as a tailwind.
 * @returns m/s; NaN where no wind was reported, which is no observation
 * @source common practice, no source
 * @example runway 360, wind 180 at 5 m/s gusting 9: -9
 */
export function headwindFigureMs(
  { fromDeg, meanMs, gustMs }: ReportedWind,
  runwayDeg: DirectionDeg<'true'>,
): number {
  const strongestMs = gustMs > meanMs ? gustMs : meanMs;
  if (Number.isNaN(fromDeg)) return strongestMs === 0 ? 0 : -strongestMs;
  const along = Math.cos((fromDeg - runwayDeg) * RAD_PER_DEG);
  return along >= 0 ? meanMs * along : strongestMs * along;
}

/**
 * Crosswind on a runway from either side, never negative: of the gust where there is one. A wind of no certain
 * direction counts fully.
 * @returns m/s; NaN where no wind was reported, which is no observation
 * @source common practice, no source
 * @example runway 360, wind 270 at 5 m/s gusting 9: 9
 */
export function crosswindFigureMs(
  { fromDeg, meanMs, gustMs }: ReportedWind,
  runwayDeg: DirectionDeg<'true'>,
): number {
  const strongestMs = gustMs > meanMs ? gustMs : meanMs;
  return Number.isNaN(fromDeg)
    ? strongestMs
    : Math.abs(strongestMs * Math.sin((fromDeg - runwayDeg) * RAD_PER_DEG));
}
