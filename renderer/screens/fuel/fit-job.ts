import type { NextPour } from '../../../shared-calc/fuel/fit/advise-test.ts';
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
}

/** null: the fit could not be made; the window has checked the rows and says why by itself. */
export type FitReply = FittedTest | null;
