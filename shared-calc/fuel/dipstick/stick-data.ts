import { InputProblem, requireRange } from '../../problem.ts';
import { usableAfterRows, type GaugeReading } from '../fill-run.ts';
import { fillDataOf } from '../fit/calibrate.ts';
import type { FillData } from '../fit/fill-data.ts';
import {
  fuelTankOf,
  runsOfTest,
  type ContainerRecord,
  type FillTestRecord,
  type PourRecord,
} from '../records.ts';
import type { DipstickRecord } from './dipstick-record.ts';

/** A wet edge is seen to about this; it neither lags nor sticks. Common practice, no source. */
const WET_EDGE_SD_MM = 2;
/** A division finer than the fit takes is taken as this one: a little more doubt than there is. */
const FINEST_RATIO = 0.001;

/**
 * The heights between which a stick was read, half a division beyond each end. The fit's positions run from one to the
 * other: a stick is longer than its tank is high and stands in unusable fuel, and what it would show there is not to
 * be taken for an empty or a full tank.
 */
export interface StickSpan {
  readonly lowMm: number;
  readonly highMm: number;
}

/** A stick's reading as the fit takes readings: below what was read at its empty stop, above it at its full one. */
export function stickReading(stickMm: number, { lowMm, highMm }: StickSpan): GaugeReading {
  requireRange('stickMm', stickMm, 0, 2000, 'mm');
  if (stickMm <= 0 || stickMm < lowMm) return { at: 'emptyStop' };
  if (stickMm > highMm) return { at: 'fullStop' };
  return { at: 'scale', positionRatio: (stickMm - lowMm) / (highMm - lowMm) };
}

/**
 * The fill tests again, with the stick in place of the gauge: the same pours, starts and containers, so that the errors
 * of what was poured stand in the same places of both fits. Rows at which the stick was not read keep their volume, and
 * so do those with nothing usable in the tank yet.
 * @returns null where the stick was read at fewer than two heights apart
 * @throws InputProblem and RangeProblem as `fillDataOf`, and for a stick outside 20 to 2000 mm or read to other than 1 to 50
 */
export function stickDataOf(
  tests: readonly FillTestRecord[],
  containers: readonly ContainerRecord[],
  tank: { capacityL: number; unusableL: number },
  stick: DipstickRecord,
): { data: FillData; span: StickSpan } | null {
  requireRange('lengthMm', stick.lengthMm, 20, 2000, 'mm');
  requireRange('readToMm', stick.readToMm, 1, 50, 'mm');
  if (stick.readToMm > stick.lengthMm / 2)
    throw new InputProblem('readToMm', 'a stick is read to no more than half of its length');
  const usable = new Set(tests.flatMap((test) => usablePourIds(test, tank)));
  const isRead = ({ id, stickMm }: PourRecord) => stickMm != null && usable.has(id);
  const heights = tests
    .flatMap(({ runs }) => runs)
    .flatMap(({ pours }) => pours)
    .flatMap((pour) => (isRead(pour) && pour.stickMm != null && pour.stickMm > 0 ? [pour.stickMm] : []));
  const lowMm = Math.max(0, Math.min(...heights) - stick.readToMm / 2);
  const highMm = Math.max(...heights) + stick.readToMm / 2;
  // One height alone spans a single division.
  if (heights.length === 0 || highMm - lowMm < 2 * stick.readToMm) return null;
  const span = { lowMm, highMm };
  const data = fillDataOf(
    tests.map((test) => withStick(test, span, isRead)),
    containers,
    tank,
  );
  return {
    span,
    data: {
      ...data,
      smoothness: null,
      gauge: {
        resolutionRatio: Math.max(FINEST_RATIO, stick.readToMm / (highMm - lowMm)),
        stickingSdRatio: Math.min(0.1, Math.max(FINEST_RATIO, WET_EDGE_SD_MM / (highMm - lowMm))),
        lagRatio: 0,
        lagSdRatio: 0,
      },
    },
  };
}

/** The pours after which there was usable fuel, or none and no less. */
function usablePourIds(test: FillTestRecord, tank: { capacityL: number; unusableL: number }): string[] {
  return runsOfTest(test).flatMap(({ run, pourIds }, runIndex) =>
    usableAfterRows(run, fuelTankOf(tank), runIndex).flatMap(({ usableL, rowIndex }) => {
      const id = pourIds[rowIndex];
      return usableL >= 0 && id !== undefined ? [id] : [];
    }),
  );
}

function withStick(
  test: FillTestRecord,
  span: StickSpan,
  isRead: (pour: PourRecord) => boolean,
): FillTestRecord {
  return {
    ...test,
    pins: [],
    runs: test.runs.map((run) => ({
      ...run,
      // A pour is kept where the gauge was read, as in the gauge's own fit; where the stick was not, it is set aside.
      pours: run.pours.map((pour) => {
        if (pour.reading === null) return pour;
        if (!isRead(pour) || pour.stickMm == null)
          return { ...pour, asideReason: 'the stick says nothing here' };
        return { ...pour, reading: stickReading(pour.stickMm, span), asideReason: null };
      }),
    })),
  };
}
