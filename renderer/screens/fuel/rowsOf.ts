import { curveResiduals, flagRows } from '../../../shared-calc/fuel/row-flags.ts';
import { resolutionRatio } from '../../../shared-calc/fuel/gauge-scale.ts';
import { flagRun } from '../../../shared-calc/fuel/run-flags.ts';
import { usableAfterRows } from '../../../shared-calc/fuel/fill-run.ts';
import type { GaugeCurve } from '../../../shared-calc/fuel/gauge-curve.ts';
import { fuelTankOf, runsOfTest, type FillTestRecord } from '../../../shared-calc/fuel/records.ts';
import type { UnitPreferences } from '../../../shared-calc/units/preferences.ts';
import { residualSentence, rowFlagSentence } from '../../../shared-calc/wording/fuel.ts';
import { runFlagSentence } from '../../../shared-calc/wording/fuel-test.ts';

/** What is worked out for one pour. */
export interface RowFigures {
  usableL: number;
  /** null where the curve does not reach. */
  residualL: number | null;
  /** What is odd about it. */
  sentences: string[];
  /** All readings of its run go the other way: told here, with a way to say that the gauge does so. */
  isBackwards: boolean;
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
      if (pourId !== undefined)
        found.set(pourId, { usableL, residualL: null, sentences: [], isBackwards: false });
    });
  });
  const plain = runs.map(({ run }) => run);
  const backwards = new Set<number>();
  const resolution = resolutionRatio(test.scale);
  plain.forEach((run, runIndex) => {
    const endsAt = test.runs[runIndex]?.endsAt ?? null;
    for (const flag of flagRun(run, fuelTank, { resolutionRatio: resolution, endsAt })) {
      const row = at(runIndex, flag.rowIndex);
      row?.sentences.push(runFlagSentence(flag, units));
      if (flag.kind !== 'runsBackwards') continue;
      backwards.add(runIndex);
      if (row !== undefined) row.isBackwards = true;
    }
  });
  for (const flag of flagRows(plain, fuelTank)) {
    const isTold = flag.kind === 'fellWhileFilling' || flag.kind === 'roseWhileDraining';
    // One sentence for the run is enough.
    if (isTold && backwards.has(flag.runIndex)) continue;
    at(flag.runIndex, flag.rowIndex)?.sentences.push(rowFlagSentence(flag, units));
  }
  if (curve !== null)
    for (const { runIndex, rowIndex, residualL } of curveResiduals(curve, plain, fuelTank)) {
      const row = at(runIndex, rowIndex);
      if (row === undefined) continue;
      row.residualL = residualL;
      const isAside = plain[runIndex]?.rows[rowIndex]?.setAside === true;
      // Where a likely cause was told, how far off the row is stands in its column.
      const isTold = row.sentences.length > 0;
      if (!isAside && !isTold && Math.abs(residualL) > farOffRatio * fuelTank.usableCapacityL)
        row.sentences.push(residualSentence(residualL, units));
    }
  return found;
}
