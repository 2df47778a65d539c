import { containerIdsOf } from '../fit/calibrate.ts';
import { bandedCurveOf } from '../fit/banded-curve.ts';
import { fitGauge, LEAST_DISTINCT_READINGS } from '../fit/gauge-fit.ts';
import { refitsToKeep } from '../fit/refits-to-keep.ts';
import type { BandedCurve } from '../gauge-curve.ts';
import type { KeptRefits } from '../kept-refits.ts';
import type { ContainerRecord, FillTestRecord } from '../records.ts';
import type { DipstickRecord } from './dipstick-record.ts';
import { stickDataOf, type StickSpan } from './stick-data.ts';

export type StickCalibration =
  | {
      readonly kind: 'curve';
      readonly curve: BandedCurve;
      readonly refits: KeptRefits;
      readonly span: StickSpan;
    }
  | { readonly kind: 'tooFewReadings'; readonly distinctCount: number; readonly neededCount: number };

/** Another than the gauge's: what is drawn for the stick alone has nothing to do with what is drawn for the gauge. */
const STICK_SEED = 20_260_607;

/**
 * Usable fuel over the height of a dipstick or sight tube, by the same fit as the gauge's and from the same pours.
 * Positions are shares of the heights between which it was read.
 * @throws InputProblem and RangeProblem as `stickDataOf`
 */
export function calibrateStick(
  tests: readonly FillTestRecord[],
  containers: readonly ContainerRecord[],
  tank: { capacityL: number; unusableL: number },
  stick: DipstickRecord,
): StickCalibration {
  const stuck = stickDataOf(tests, containers, tank, stick);
  if (stuck === null)
    return {
      kind: 'tooFewReadings',
      distinctCount: distinctHeights(tests),
      neededCount: LEAST_DISTINCT_READINGS,
    };
  const { data, span } = stuck;
  const fit = fitGauge(data, undefined, STICK_SEED);
  if (!fit.enough)
    return { kind: 'tooFewReadings', distinctCount: fit.distinctCount, neededCount: fit.neededCount };
  const curve = bandedCurveOf(fit, data.capacityL, 0);
  return { kind: 'curve', curve, refits: refitsToKeep(fit, curve, containerIdsOf(tests)), span };
}

function distinctHeights(tests: readonly FillTestRecord[]): number {
  const pours = tests.flatMap(({ runs }) => runs).flatMap(({ pours: each }) => each);
  return new Set(pours.flatMap(({ stickMm }) => (stickMm != null && stickMm > 0 ? [stickMm] : []))).size;
}
