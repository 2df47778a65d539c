/** A reading at which the curve is known. The two volumes differ only where pours passed with no movement. */
export interface CurveKnot {
  readonly positionRatio: number;
  /** Usable litres when the needle first stands here, filling. */
  readonly lowL: number;
  /** Usable litres when the needle last stands here, filling. */
  readonly highL: number;
}

/** One place of a curve with its band: usable litres, 5, 50 and 95 % over what the fill tests allow. */
export interface BandKnot {
  readonly positionRatio: number;
  /** With the needle exactly here. */
  readonly lowL: number;
  readonly bestL: number;
  readonly highL: number;
  /** Read to the nearest division here: the reading's own error mixed in. */
  readonly readLowL: number;
  readonly readHighL: number;
}

/** The curve by the fit of the slope's logarithm (`fit/gauge-fit.ts`), between the readings that moved. */
export interface BandedCurve {
  readonly method: 'logSlopeRefits';
  /** Rising in position and in every volume; linear between them. */
  readonly knots: readonly BandKnot[];
  /** Smallest step in which the gauge was read, as a share of the scale between its stops. */
  readonly resolutionRatio: number;
  readonly usableCapacityL: number;
  /** Readings on the scale that the curve rests on, and how many a person set aside. */
  readonly readingCount: number;
  readonly asideCount: number;
  /** So few readings that the band rests mostly on what gauges are like in general. */
  readonly fewRows: boolean;
}

/** Usable fuel over needle position, between the first and the last reading that moved and nowhere else. */
export type GaugeCurve = IsotonicCurve | BandedCurve;

/** A curve through the mean volumes, with no band: how curves were adopted before there was one. */
export interface IsotonicCurve {
  readonly method: 'isotonicMeansMonotoneCubic';
  /** Rising in position and in volume, at least three. */
  readonly knots: readonly CurveKnot[];
  /** Smallest step in which the gauge was read, as a share of the scale between its stops. */
  readonly resolutionRatio: number;
  readonly usableCapacityL: number;
  /** At least this much was in the tank whenever the needle had left the empty stop. */
  readonly offEmptyLeastL: number;
  /** At the empty stop less than this is in the tank: the first volume that moved the needle. */
  readonly atEmptyMostL: number;
  /** Readings on the scale that the curve rests on. */
  readonly readingCount: number;
}

/** Positions closer than this are the same mark: typed as 5/8, 0.625 or 62.5 % they differ by rounding only. */
export const SAME_MARK_RATIO = 1e-10;
