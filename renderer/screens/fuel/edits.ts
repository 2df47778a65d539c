import type { GaugeReading } from '../../../shared-calc/fuel/fill-run.ts';
import { usableAfterRows } from '../../../shared-calc/fuel/fill-run.ts';
import {
  fuelTankOf,
  runsOfTest,
  type FillRunRecord,
  type FillTestRecord,
  type PourRecord,
} from '../../../shared-calc/fuel/records.ts';

// What a hand does to a fill test, each as a new test: the old one stays for undo and for comparing.

export function withRun(
  test: FillTestRecord,
  runId: string,
  edit: (run: FillRunRecord) => FillRunRecord,
): FillTestRecord {
  return { ...test, runs: test.runs.map((run) => (run.id === runId ? edit(run) : run)) };
}

/** Put a volume into a row; past the last row it makes a new one; null takes the row out. */
export function withVolume(
  run: FillRunRecord,
  index: number,
  volumeL: number | null,
  fresh: { id: string; atEpochS: number },
): FillRunRecord {
  if (volumeL === null) return { ...run, pours: run.pours.filter((_, at) => at !== index) };
  if (index >= run.pours.length)
    return {
      ...run,
      pours: [...run.pours, { ...fresh, volumeL, reading: null, asideReason: null, written: null }],
    };
  return withPour(run, index, (pour) => ({ ...pour, volumeL }));
}

export function withReading(run: FillRunRecord, index: number, reading: GaugeReading | null): FillRunRecord {
  return withPour(run, index, (pour) => ({ ...pour, reading }));
}

export function withAside(run: FillRunRecord, index: number, asideReason: string | null): FillRunRecord {
  return withPour(run, index, (pour) => ({ ...pour, asideReason }));
}

/** The row as it was written down, before it was corrected in the curve. */
export function asWritten(run: FillRunRecord, index: number): FillRunRecord {
  return withPour(run, index, (pour) =>
    pour.written === null
      ? pour
      : { ...pour, volumeL: pour.written.volumeL, reading: pour.written.reading, written: null },
  );
}

/** Correct a row's figures in the curve; what was written down first is kept beside them. */
export function corrected(
  run: FillRunRecord,
  pourId: string,
  to: { volumeL?: number; reading?: GaugeReading },
): FillRunRecord {
  return {
    ...run,
    pours: run.pours.map((pour) =>
      pour.id === pourId
        ? { ...pour, ...to, written: pour.written ?? { volumeL: pour.volumeL, reading: pour.reading } }
        : pour,
    ),
  };
}

function withPour(run: FillRunRecord, index: number, edit: (pour: PourRecord) => PourRecord): FillRunRecord {
  return { ...run, pours: run.pours.map((pour, at) => (at === index ? edit(pour) : pour)) };
}

/**
 * A run to go on with: filling starts from a drained tank, draining from what the last run left in it.
 * @param tank as the aeroplane's record has it, the unusable included in the capacity
 */
export function nextRun(
  test: FillTestRecord,
  direction: FillRunRecord['direction'],
  tank: { capacityL: number; unusableL: number },
  id: string,
): FillRunRecord {
  const last = test.runs.at(-1);
  const containerId = last?.containerId ?? null;
  const common = { id, direction, startSdL: null, containerId, endsAt: null, pours: [] };
  if (direction === 'filling') return { ...common, start: { from: 'engineFeed' } };
  const fuelTank = fuelTankOf(tank);
  const lastRun = runsOfTest(test).at(-1)?.run;
  const leftL = lastRun === undefined ? undefined : usableAfterRows(lastRun, fuelTank).at(-1)?.usableL;
  const usableL = Math.min(fuelTank.usableCapacityL, leftL ?? fuelTank.usableCapacityL);
  return { ...common, start: { from: 'known', usableL } };
}
