import type { NextPour } from '../../../shared-calc/fuel/fit/advise-test.ts';
import type { WeightedMode } from '../../../shared-calc/fuel/fit/refits.ts';
import type { BandedCurve } from '../../../shared-calc/fuel/gauge-curve.ts';
import type { KeptRefits } from '../../../shared-calc/fuel/kept-refits.ts';
import type { ContainerRecord, FillTestRecord } from '../../../shared-calc/fuel/records.ts';

/** Fill tests to be fitted beside the window. */
export interface FitJob {
  /** The test in hand first, then those that are pooled with it. */
  readonly tests: readonly [FillTestRecord, ...FillTestRecord[]];
  readonly containers: readonly ContainerRecord[];
  readonly tank: { readonly capacityL: number; readonly unusableL: number };
}

export interface FittedTest {
  /** Of the test in hand. */
  readonly testId: string;
  readonly curve: BandedCurve;
  readonly refits: KeptRefits;
  readonly nextPour: NextPour | null;
  /** Share of the posterior of each smoothness, stiffest first, whatever a person chose. */
  readonly smoothnessShares: readonly number[];
  /** From which a quick curve starts while a point is dragged. */
  readonly modes: readonly WeightedMode[];
}

/** `fitted` is null where the fit could not be made; the window has checked the rows and says why by itself. */
export type FitReply = { readonly number: number; readonly fitted: FittedTest | null };

/** A job with its number, which the reply carries back. */
export interface NumberedJob {
  readonly number: number;
  readonly job: FitJob;
}
