import { usableAfterRows, type PlacedReading } from '../../../shared-calc/fuel/fill-run.ts';
import { fuelTankOf, runsOfTest, type FillTestRecord } from '../../../shared-calc/fuel/records.ts';

/** A reading of a fill test where it lies in the plot. */
export interface PlacedPour extends PlacedReading {
  pourId: string;
  runId: string;
  testId: string;
  /** As the row has it; the first of several where pours were made without a reading. */
  volumeL: number;
}

/**
 * Every reading of some fill tests with the running sum beside it.
 * @throws InputProblem or RangeProblem where a sum cannot be made
 */
export function placedPours(
  tests: readonly FillTestRecord[],
  tank: { capacityL: number; unusableL: number },
): PlacedPour[] {
  return tests.flatMap((test) =>
    runsOfTest(test).flatMap(({ run, pourIds }, runIndex) => {
      const record = test.runs[runIndex];
      return usableAfterRows(run, fuelTankOf(tank), runIndex).map((placed): PlacedPour => {
        const pourId = pourIds[placed.rowIndex] ?? '';
        return {
          ...placed,
          pourId,
          runId: record?.id ?? '',
          testId: test.id,
          volumeL: record?.pours.find(({ id }) => id === pourId)?.volumeL ?? 0,
        };
      });
    }),
  );
}
