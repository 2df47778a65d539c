import { curveResiduals, flagRows } from '../../../shared-calc/fuel/row-flags.ts';
import { usableAfterRows } from '../../../shared-calc/fuel/fill-run.ts';
import type { GaugeCurve } from '../../../shared-calc/fuel/gauge-curve.ts';
import { fuelTankOf, runsOfTest, type FillTestRecord } from '../../../shared-calc/fuel/records.ts';
import type { UnitPreferences } from '../../../shared-calc/units/preferences.ts';
import { residualSentence, rowFlagSentence } from '../../../shared-calc/wording/fuel.ts';

/** What is worked out for one pour. */
export interface RowFigures {
  usableL: number;
  /** null where the curve does not reach. */
  residualL: number | null;
  /** What is odd about it. */
  sentences: string[];
}

/** Farther off the curve than this share of the capacity, a row is worth a second reading. Common practice, no source. */
const farOffRatio = 0.035;

/**
 * The figures of every row that was read, by the pour's id.
 * @param curve that of this very test; null where there is none yet
 * @throws InputProblem or RangeProblem where the sum cannot be made (a draining run without a start)
 */
export function rowsOf(
  test: FillTestRecord,
  tank: { capacityL: number; unusableL: number },
  curve: GaugeCurve | null,
  units: Pick<UnitPreferences, 'volume'>,
): Map<string, RowFigures> {
  const fuelTank = fuelTankOf(tank);
  const runs = runsOfTest(test);
  const found = new Map<string, RowFigures>();
  const at = (runIndex: number, rowIndex: number) => found.get(runs[runIndex]?.pourIds[rowIndex] ?? '');
  runs.forEach(({ run, pourIds }, runIndex) => {
    usableAfterRows(run, fuelTank, runIndex).forEach(({ usableL, rowIndex }) => {
      const pourId = pourIds[rowIndex];
      if (pourId !== undefined) found.set(pourId, { usableL, residualL: null, sentences: [] });
    });
  });
  const plain = runs.map(({ run }) => run);
  for (const flag of flagRows(plain, fuelTank))
    at(flag.runIndex, flag.rowIndex)?.sentences.push(rowFlagSentence(flag, units));
  if (curve !== null)
    for (const { runIndex, rowIndex, residualL } of curveResiduals(curve, plain, fuelTank)) {
      const row = at(runIndex, rowIndex);
      if (row === undefined) continue;
      row.residualL = residualL;
      const isAside = plain[runIndex]?.rows[rowIndex]?.setAside === true;
      if (!isAside && Math.abs(residualL) > farOffRatio * fuelTank.usableCapacityL)
        row.sentences.push(residualSentence(residualL, units));
    }
  return found;
}
