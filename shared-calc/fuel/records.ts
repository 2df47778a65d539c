import type { FillRow, FillRun, FuelTank, GaugeReading, RunStart } from './fill-run.ts';
import type { GaugeCurve } from './gauge-curve.ts';
import type { GaugeScale } from './gauge-scale.ts';

/** What fuel is measured with. Two errors: of its own scale, common to all pours from it, and of each pour. */
export interface ContainerRecord {
  id: string;
  name: string;
  /** What one full pour of it is; null for a pump or meter. */
  nominalL: number | null;
  how: 'marked' | 'weighed' | 'meter';
  scaleSdRatio: number;
  pourSdL: number;
  /** Of fuel that is weighed instead of measured: its density, and the temperature that the density is for. */
  weighed: { densityKgPerL: number; temperatureC: number } | null;
}

/** One pour or drain. The reading comes after the volume: until then it is null. */
export interface PourRecord {
  id: string;
  volumeL: number;
  reading: GaugeReading | null;
  /** Why the reading is not used; null where it is. */
  asideReason: string | null;
  /** What the dipstick or sight tube showed after the same pour, millimetres; 0 is dry. */
  stickMm?: number | null;
  atEpochS: number;
  /** What was written down, where the row was corrected in the curve afterwards; null where it was not. */
  written: { volumeL: number; reading: GaugeReading | null } | null;
}

export interface FillRunRecord {
  id: string;
  direction: FillRun['direction'];
  start: RunStart;
  /** How well the quantity at the start is known, one standard deviation; null: as is usual for such a start. */
  startSdL: number | null;
  /** null where it was not written down. */
  containerId: string | null;
  /** Filled to the brim, or only until the gauge stopped moving; null while it goes on or was not written down. */
  endsAt: 'brim' | 'gaugeStopped' | null;
  pours: PourRecord[];
}

/** A reading at which the contents are known from elsewhere: 'the sight mark is 20 L, checked by the maker'. */
export interface PinRecord {
  id: string;
  positionRatio: number;
  usableL: number;
  /** One standard deviation. */
  sdL: number;
  note: string;
}

/** A fill test of one tank. Only tests alike in attitude, supply and fuel may be pooled. */
export interface FillTestRecord {
  id: string;
  tankId: string;
  /** A day of the calendar, '2026-05-09'. */
  testedOn: string;
  attitude: 'ground' | 'level flight';
  power: 'battery' | 'engine running';
  /** Volts at the gauge; null where they were not measured. */
  supplyV: number | null;
  /** Whether fuel could run to another tank or to the engine; null where it was not written down. */
  feeds: 'shut' | 'open' | null;
  fuelKind: string;
  /** null where it was not measured. */
  fuelTemperatureC: number | null;
  scale: GaugeScale;
  /** Precautions that were ticked before the first pour and after the last, by their key. */
  precautions: string[];
  note: string;
  runs: FillRunRecord[];
  pins: PinRecord[];
  /** How far the curve may bend, one of `SMOOTHNESS_GRID`; null: as the data ask. */
  smoothness: number | null;
}

/** What a person did to a curve that the rows alone do not say. */
export interface CurveByHand {
  correctedCount: number;
  pinnedCount: number;
  smoothness: number | null;
}

/** A curve that was adopted on a day. Never overwritten: a later one supersedes, a wrong one is withdrawn. */
export interface CalibrationRecord {
  id: string;
  tankId: string;
  testIds: string[];
  /** Checks that were taken in as data. */
  checkIds: string[];
  adoptedOn: string;
  methodVersion: number;
  scale: GaugeScale;
  curve: GaugeCurve;
  byHand: CurveByHand;
  withdrawn: boolean;
}

/** A card that was printed. It is superseded once another curve counts for its tank. */
export interface FuelCardRecord {
  /** On the paper; never used twice in a library. */
  serial: number;
  calibrationId: string;
  printedOn: string;
  /** Which kind of figure it prints. */
  reading: 'needleOnMark' | 'nearestDivision';
  withdrawn: boolean;
}

/** Which pour each row of a run came from. */
export interface TestRun {
  run: FillRun;
  pourIds: string[];
}

/**
 * A test's runs as the calculations take them. A pour whose reading is not typed yet counts with the next one:
 * its fuel is in the tank, and the needle was not looked at in between.
 */
export function runsOfTest(test: FillTestRecord): TestRun[] {
  return test.runs.map(({ direction, start, pours }) => {
    const rows: FillRow[] = [];
    const pourIds: string[] = [];
    let waitingL = 0;
    for (const { id, volumeL, reading, asideReason } of pours) {
      waitingL += volumeL;
      if (reading === null) continue;
      rows.push({ volumeL: waitingL, reading, setAside: asideReason !== null });
      pourIds.push(id);
      waitingL = 0;
    }
    return { run: { direction, start, rows }, pourIds };
  });
}

/** The tank of the aeroplane's record as the fuel calculations take it. */
export function fuelTankOf(tank: { capacityL: number; unusableL: number }): FuelTank {
  return { usableCapacityL: tank.capacityL - tank.unusableL, unusableL: tank.unusableL };
}

/** What was edited by hand in the tests behind a curve. The first test's smoothness holds. */
export function byHandOf(tests: readonly FillTestRecord[]): CurveByHand {
  const pours = tests.flatMap(({ runs }) => runs).flatMap(({ pours: each }) => each);
  return {
    correctedCount: pours.filter(({ written }) => written !== null).length,
    pinnedCount: tests.reduce((sum, { pins }) => sum + pins.length, 0),
    smoothness: tests[0]?.smoothness ?? null,
  };
}
