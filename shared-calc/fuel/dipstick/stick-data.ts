import { InputProblem, requireRange } from '../../problem.ts';
import type { FillData } from '../fit/fill-data.ts';
import { fillDataOf } from '../fit/calibrate.ts';
import type { GaugeReading } from '../fill-run.ts';
import type { ContainerRecord, FillTestRecord } from '../records.ts';
import type { DipstickRecord } from './dipstick-record.ts';

/** A wet edge is seen to about this; it neither lags nor sticks. Common practice, no source. */
const WET_EDGE_SD_MM = 2;

/** A stick's reading as the fit takes readings: dry below the lowest mark, over the highest one at its full stop. */
export function stickReading(stickMm: number, { lengthMm }: Pick<DipstickRecord, 'lengthMm'>): GaugeReading {
  requireRange('stickMm', stickMm, 0, 2000, 'mm');
  if (stickMm <= 0) return { at: 'emptyStop' };
  return stickMm >= lengthMm ? { at: 'fullStop' } : { at: 'scale', positionRatio: stickMm / lengthMm };
}

/**
 * The fill tests again, with the stick in place of the gauge: the same pours, starts and containers, so that the errors
 * of what was poured stand in the same places of both fits. Rows at which the stick was not read keep their volume.
 * @throws InputProblem and RangeProblem as `fillDataOf`, and for a stick outside 20 to 2000 mm or read to other than 1 to 50
 */
export function stickDataOf(
  tests: readonly FillTestRecord[],
  containers: readonly ContainerRecord[],
  tank: { capacityL: number; unusableL: number },
  stick: DipstickRecord,
): FillData {
  requireRange('lengthMm', stick.lengthMm, 20, 2000, 'mm');
  requireRange('readToMm', stick.readToMm, 1, 50, 'mm');
  if (stick.readToMm > stick.lengthMm / 2)
    throw new InputProblem('readToMm', 'a stick is read to no more than half of its length');
  const data = fillDataOf(tests.map(withStickReadings(stick)), containers, tank);
  return {
    ...data,
    smoothness: null,
    gauge: {
      resolutionRatio: stick.readToMm / stick.lengthMm,
      stickingSdRatio: Math.min(0.1, WET_EDGE_SD_MM / stick.lengthMm),
      lagRatio: 0,
      lagSdRatio: 0,
    },
  };
}

function withStickReadings(stick: DipstickRecord): (test: FillTestRecord) => FillTestRecord {
  return (test) => ({
    ...test,
    pins: [],
    runs: test.runs.map((run) => ({
      ...run,
      // A pour is kept where the gauge was read, as in the gauge's own fit; where the stick was not, it is set aside.
      pours: run.pours.map((pour) => {
        if (pour.reading === null) return pour;
        if (pour.stickMm == null) return { ...pour, asideReason: 'the stick was not read' };
        return { ...pour, reading: stickReading(pour.stickMm, stick), asideReason: null };
      }),
    })),
  });
}
