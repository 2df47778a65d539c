import type { NextPour } from '../../../shared-calc/fuel/fit/advise-test.ts';
import type { BandedCurve } from '../../../shared-calc/fuel/gauge-curve.ts';
import type { ContainerRecord, FillTestRecord } from '../../../shared-calc/fuel/records.ts';

/** A fill test to be fitted beside the window. */
export interface FitJob {
  readonly test: FillTestRecord;
  readonly containers: readonly ContainerRecord[];
  readonly tank: { readonly capacityL: number; readonly unusableL: number };
}

export interface FittedTest {
  readonly testId: string;
  readonly curve: BandedCurve;
  readonly nextPour: NextPour | null;
}

/** null: the fit could not be made; the window has checked the rows and says why by itself. */
export type FitReply = FittedTest | null;
