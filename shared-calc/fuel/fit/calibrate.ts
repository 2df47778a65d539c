import { InputProblem } from '../../problem.ts';
import type { RefillCheckRecord } from '../checks/check-record.ts';
import { checksAsRuns } from '../checks/checks-as-runs.ts';
import { refillMeasure } from '../checks/pump.ts';
import { usableAfterRows, type RunStart } from '../fill-run.ts';
import type { BandedCurve } from '../gauge-curve.ts';
import { resolutionRatio } from '../gauge-scale.ts';
import {
  fuelTankOf,
  runsOfTest,
  type ContainerRecord,
  type FillRunRecord,
  type FillTestRecord,
  type PinRecord,
} from '../records.ts';
import { bandedCurveOf } from './banded-curve.ts';
import {
  DEFAULT_BEHAVIOUR,
  fitRows,
  type FillData,
  type MeasuredRow,
  type MeasuredRun,
  type PourContainer,
} from './fill-data.ts';
import { fitGauge, LEAST_DISTINCT_READINGS, type GaugeFit } from './gauge-fit.ts';
import type { KeptRefits } from '../kept-refits.ts';
import { refitsToKeep } from './refits-to-keep.ts';

/** How well the quantity at the start is known, standard deviations in litres. Common practice, no source. */
const START_SD_L = { engineFeed: 0.3, sump: 0.5, known: 0.5 } as const;
/** A quantity that was stated was itself measured: this share of it, where that is more. */
const KNOWN_START_SD_RATIO = 0.02;

/** How well the start of a run is taken to be known where nobody said, one standard deviation in litres. */
export function usualStartSdL(start: RunStart): number {
  return start.from === 'known'
    ? Math.max(START_SD_L.known, KNOWN_START_SD_RATIO * Math.abs(start.usableL))
    : START_SD_L[start.from];
}
/** A container that was not written down is taken to be no better than a household can. Common practice, no source. */
export const UNKNOWN_CONTAINER: PourContainer = { scaleSdRatio: 0.02, pourSdRatio: 0.03 };

export type Calibration =
  | {
      readonly kind: 'curve';
      readonly curve: BandedCurve;
      readonly refits: KeptRefits;
      readonly fit: GaugeFit;
    }
  | { readonly kind: 'tooFewReadings'; readonly distinctCount: number; readonly neededCount: number };

/**
 * The curve with its band from fill tests of one tank. Which containers were used decides how far the sum of the
 * pours is trusted; a reading that was set aside is left out, its fuel is not.
 * @param tests  of one tank, alike in attitude, supply, fuel and scale
 * @param tank   as the aeroplane's record has it, the unusable included in the capacity
 * @param checks refills after flights, taken in as further data; a reading at a stop cannot be
 * @throws InputProblem when there is no test, or they are not alike, or a check has a reading at a stop
 * @throws RangeProblem for a volume, a reading, a container or the tank outside its range
 */
export function calibrate(
  tests: readonly FillTestRecord[],
  containers: readonly ContainerRecord[],
  tank: { capacityL: number; unusableL: number },
  checks: readonly RefillCheckRecord[] = [],
): Calibration {
  const tested = fillDataOf(tests, containers, tank);
  // Checks can bend a curve, not make one.
  const { distinctCount } = fitRows(tested);
  if (distinctCount < LEAST_DISTINCT_READINGS)
    return { kind: 'tooFewReadings', distinctCount, neededCount: LEAST_DISTINCT_READINGS };
  const data = withChecks(tested, checks, containers, containerIdsOf(tests));
  const fit = fitGauge(data);
  if (!fit.enough)
    return { kind: 'tooFewReadings', distinctCount: fit.distinctCount, neededCount: fit.neededCount };
  const asideCount = tests
    .flatMap(({ runs }) => runs)
    .flatMap(({ pours }) => pours)
    .filter(({ asideReason }) => asideReason !== null).length;
  const curve = bandedCurveOf(fit, data.capacityL, asideCount);
  const pinnedCount = tests.reduce((sum, { pins }) => sum + pins.length, 0);
  return {
    kind: 'curve',
    curve: { ...curve, readingCount: curve.readingCount - pinnedCount - 2 * checks.length },
    refits: refitsToKeep(fit, curve, containerIdsOf(tests)),
    fit,
  };
}

/** Whether tests may make one curve: a capacitance sender reads blends differently, a float another attitude. */
export function areAlike(tests: readonly FillTestRecord[]): boolean {
  const key = (test: FillTestRecord) =>
    JSON.stringify([test.tankId, test.attitude, test.power, test.fuelKind, test.scale]);
  return new Set(tests.map(key)).size <= 1;
}

/** The containers that tests were measured with, each once; null for those that were not written down. */
export function containerIdsOf(tests: readonly FillTestRecord[]): (string | null)[] {
  return [...new Set(tests.flatMap(({ runs }) => runs).map(({ containerId }) => containerId))];
}

/**
 * What the fit takes, from the records. Pours by hand from a can of known size add up as many errors of one pour as
 * fills of it; a meter's error counts once a row.
 * @throws InputProblem when there is no test, or they are not alike
 * @throws RangeProblem for a volume, a start or the tank outside its range
 */
export function fillDataOf(
  tests: readonly FillTestRecord[],
  containers: readonly ContainerRecord[],
  tank: { capacityL: number; unusableL: number },
): FillData {
  const [first] = tests;
  if (first === undefined) throw new InputProblem('tests', 'a curve needs at least one fill test');
  if (!areAlike(tests))
    throw new InputProblem('tests', 'fill tests that differ in tank, attitude, supply, fuel or scale');
  const fuelTank = fuelTankOf(tank);
  const runs = tests.flatMap((test) =>
    test.runs.map((record, index) => ({ record, run: runsOfTest(test)[index]?.run })),
  );
  const usedIds = containerIdsOf(tests);
  const used = usedIds.map((id) => containers.find((container) => container.id === id) ?? null);
  const measured = runs.flatMap(({ record, run }, runIndex): MeasuredRun[] => {
    if (run === undefined) return [];
    // Refuses a draining run without a start and figures outside their range, naming the row.
    usableAfterRows(run, fuelTank, runIndex);
    const index = usedIds.indexOf(record.containerId);
    return [
      {
        direction: run.direction,
        ...startOf(record, fuelTank.unusableL),
        rows: run.rows.map((row) => measuredRow(row, index, used[index] ?? null)),
      },
    ];
  });
  return {
    capacityL: fuelTank.usableCapacityL,
    gauge: { resolutionRatio: resolutionRatio(first.scale), ...DEFAULT_BEHAVIOUR },
    containers: used.map((container) =>
      container === null
        ? UNKNOWN_CONTAINER
        : { scaleSdRatio: container.scaleSdRatio, pourSdRatio: UNKNOWN_CONTAINER.pourSdRatio },
    ),
    smoothness: first.smoothness,
    runs: [...measured, ...tests.flatMap(({ pins }) => pins.map(pinnedRun))],
  };
}

/** A refill by a container of the fill test shares its scale; a fuel station's pump has one of its own. */
function withChecks(
  data: FillData,
  checks: readonly RefillCheckRecord[],
  containers: readonly ContainerRecord[],
  usedIds: readonly (string | null)[],
): FillData {
  if (checks.length === 0) return data;
  const others = [...new Set(checks.map(({ containerId }) => containerId))].filter(
    (id) => id === null || !usedIds.includes(id),
  );
  const indexOf = ({ containerId }: RefillCheckRecord) =>
    containerId !== null && usedIds.includes(containerId)
      ? usedIds.indexOf(containerId)
      : usedIds.length + others.indexOf(containerId);
  const scaleOf = (id: string | null) =>
    refillMeasure(containers.find((container) => container.id === id) ?? null, 1).scaleSdRatio;
  return {
    ...data,
    containers: [
      ...data.containers,
      ...others.map((id) => ({ scaleSdRatio: scaleOf(id), pourSdRatio: UNKNOWN_CONTAINER.pourSdRatio })),
    ],
    runs: [...data.runs, ...checksAsRuns(checks, containers, data.capacityL, indexOf)],
  };
}

function startOf(
  { start, startSdL }: FillRunRecord,
  unusableL: number,
): { startUsableL: number; startSdL: number } {
  const known = { startSdL: startSdL ?? usualStartSdL(start) };
  switch (start.from) {
    case 'engineFeed':
      return { startUsableL: 0, ...known };
    case 'sump':
      return { startUsableL: -unusableL, ...known };
    case 'known':
      return { startUsableL: start.usableL, ...known };
  }
}

/**
 * A pinned value is a run of its own without a pour: its error is the start's, shared with no other row. It counts as
 * filling, which with the gauge's lag is the lower of the two.
 */
function pinnedRun({ positionRatio, usableL, sdL }: PinRecord): MeasuredRun {
  return {
    direction: 'filling',
    startUsableL: usableL,
    startSdL: sdL,
    rows: [{ volumeL: 0, container: null, reading: { at: 'scale', positionRatio }, setAside: false }],
  };
}

function measuredRow(
  row: Omit<MeasuredRow, 'container'>,
  index: number,
  container: ContainerRecord | null,
): MeasuredRow {
  const common = { ...row, container: row.volumeL > 0 ? index : null };
  if (container === null) return common;
  const fills = container.nominalL === null ? 1 : Math.max(1, row.volumeL / container.nominalL);
  return { ...common, pourSdL: container.pourSdL * Math.sqrt(fills) };
}
