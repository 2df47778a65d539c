import type Database from 'better-sqlite3';
import type { BandKnot, CurveKnot, GaugeCurve } from '../../shared-calc/fuel/gauge-curve.ts';
import type { GaugeScale } from '../../shared-calc/fuel/gauge-scale.ts';
import type { CalibrationRecord } from '../../shared-calc/fuel/records.ts';
import type { KeptRefits } from '../../shared-calc/fuel/kept-refits.ts';
import { appendRefits } from './calibration-refits.ts';

interface CalibrationRow {
  id: string;
  tank_id: string;
  adopted_on: string;
  method: GaugeCurve['method'];
  method_version: number;
  scale_json: string;
  resolution_ratio: number;
  usable_capacity_l: number;
  off_empty_least_l: number;
  at_empty_most_l: number;
  reading_count: number;
  withdrawn: number;
  aside_count: number;
  few_rows: number;
  corrected_count: number;
  pinned_count: number;
  smoothness_ratio: number | null;
}

/** Every adopted curve of a tank, the latest first, withdrawn ones among them. */
export function readCalibrations(db: Database.Database, tankId: string): CalibrationRecord[] {
  const knots = db.prepare<[string], CurveKnot>(
    `SELECT position_ratio AS positionRatio, low_l AS lowL, high_l AS highL
     FROM calibration_knot WHERE calibration_id = ? ORDER BY position`,
  );
  const bandKnots = db.prepare<[string], BandKnot>(
    `SELECT position_ratio AS positionRatio, low_l AS lowL, best_l AS bestL, high_l AS highL,
       read_low_l AS readLowL, read_high_l AS readHighL
     FROM calibration_band WHERE calibration_id = ? ORDER BY position`,
  );
  const curveOf = (row: CalibrationRow): GaugeCurve => {
    const common = {
      resolutionRatio: row.resolution_ratio,
      usableCapacityL: row.usable_capacity_l,
      readingCount: row.reading_count,
    };
    return row.method === 'logSlopeRefits'
      ? {
          method: row.method,
          knots: bandKnots.all(row.id),
          ...common,
          asideCount: row.aside_count,
          fewRows: row.few_rows === 1,
        }
      : {
          method: row.method,
          knots: knots.all(row.id),
          ...common,
          offEmptyLeastL: row.off_empty_least_l,
          atEmptyMostL: row.at_empty_most_l,
        };
  };
  const tests = db
    .prepare<[string], string>(
      'SELECT test_id FROM calibration_test WHERE calibration_id = ? ORDER BY test_id',
    )
    .pluck();
  const checks = db
    .prepare<[string], string>(
      'SELECT check_id FROM calibration_check WHERE calibration_id = ? ORDER BY check_id',
    )
    .pluck();
  return db
    .prepare<[string], CalibrationRow>(
      'SELECT * FROM calibration WHERE tank_id = ? ORDER BY adopted_on DESC, recorded_epoch_s DESC',
    )
    .all(tankId)
    .map((row) => ({
      id: row.id,
      tankId: row.tank_id,
      testIds: tests.all(row.id),
      checkIds: checks.all(row.id),
      adoptedOn: row.adopted_on,
      methodVersion: row.method_version,
      scale: JSON.parse(row.scale_json) as GaugeScale,
      curve: curveOf(row),
      byHand: {
        correctedCount: row.corrected_count,
        pinnedCount: row.pinned_count,
        smoothness: row.smoothness_ratio,
      },
      withdrawn: row.withdrawn === 1,
    }));
}

/** For each tank of an aeroplane, in its order, the day of the curve that counts. */
export function readStanding(
  db: Database.Database,
  aircraftId: string,
): { tankId: string; name: string; adoptedOn: string | null }[] {
  return db
    .prepare<[string], { tankId: string; name: string; adoptedOn: string | null }>(
      `SELECT tank.id AS tankId, tank.name,
         (SELECT MAX(adopted_on) FROM calibration WHERE tank_id = tank.id AND withdrawn = 0) AS adoptedOn
       FROM tank WHERE tank.aircraft_id = ? AND tank.removed = 0 ORDER BY tank.position`,
    )
    .all(aircraftId);
}

/** Append an adopted curve and the ones behind its band; none is ever overwritten. */
export function appendCalibration(
  db: Database.Database,
  calibration: Omit<CalibrationRecord, 'withdrawn'>,
  refits: KeptRefits | null,
  recordedEpochS: number,
): void {
  const { id, curve, byHand } = calibration;
  db.prepare(
    `INSERT INTO calibration (id, tank_id, recorded_epoch_s, adopted_on, method, method_version, scale_json,
       resolution_ratio, usable_capacity_l, off_empty_least_l, at_empty_most_l, reading_count, aside_count, few_rows,
       corrected_count, pinned_count, smoothness_ratio)
     VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)`,
  ).run(
    id,
    calibration.tankId,
    recordedEpochS,
    calibration.adoptedOn,
    curve.method,
    calibration.methodVersion,
    JSON.stringify(calibration.scale),
    curve.resolutionRatio,
    curve.usableCapacityL,
    // What a curve without a band knew of the stops; a band says it by its ends.
    curve.method === 'logSlopeRefits' ? 0 : curve.offEmptyLeastL,
    curve.method === 'logSlopeRefits' ? Math.max(0, curve.knots[0]?.readHighL ?? 0) : curve.atEmptyMostL,
    curve.readingCount,
    curve.method === 'logSlopeRefits' ? curve.asideCount : 0,
    curve.method === 'logSlopeRefits' && curve.fewRows ? 1 : 0,
    byHand.correctedCount,
    byHand.pinnedCount,
    byHand.smoothness,
  );
  if (curve.method === 'logSlopeRefits') {
    const insertKnot = db.prepare(
      `INSERT INTO calibration_band
         (calibration_id, position, position_ratio, low_l, best_l, high_l, read_low_l, read_high_l)
       VALUES (?, ?, ?, ?, ?, ?, ?, ?)`,
    );
    curve.knots.forEach((knot, position) =>
      insertKnot.run(
        id,
        position,
        knot.positionRatio,
        knot.lowL,
        knot.bestL,
        knot.highL,
        knot.readLowL,
        knot.readHighL,
      ),
    );
  } else {
    const insertKnot = db.prepare(
      'INSERT INTO calibration_knot (calibration_id, position, position_ratio, low_l, high_l) VALUES (?, ?, ?, ?, ?)',
    );
    curve.knots.forEach((knot, position) =>
      insertKnot.run(id, position, knot.positionRatio, knot.lowL, knot.highL),
    );
  }
  if (refits !== null) appendRefits(db, id, refits);
  const insertTest = db.prepare('INSERT INTO calibration_test (calibration_id, test_id) VALUES (?, ?)');
  for (const testId of new Set(calibration.testIds)) insertTest.run(id, testId);
  const insertCheck = db.prepare('INSERT INTO calibration_check (calibration_id, check_id) VALUES (?, ?)');
  for (const checkId of new Set(calibration.checkIds)) insertCheck.run(id, checkId);
}

export function isCalibrationOf(db: Database.Database, id: string, tankId: string): boolean {
  return db.prepare('SELECT 1 FROM calibration WHERE id = ? AND tank_id = ?').get(id, tankId) !== undefined;
}

export function hasCalibration(db: Database.Database, id: string): boolean {
  return db.prepare('SELECT 1 FROM calibration WHERE id = ?').get(id) !== undefined;
}

/** Withdraw an adopted curve or let it count again. Gives its day and what it was before, or null where there is none. */
export function setCalibrationWithdrawn(
  db: Database.Database,
  id: string,
  withdrawn: boolean,
): { adoptedOn: string; before: boolean } | null {
  const row = db
    .prepare<[string], { adopted_on: string; withdrawn: number }>(
      'SELECT adopted_on, withdrawn FROM calibration WHERE id = ?',
    )
    .get(id);
  if (row === undefined) return null;
  db.prepare('UPDATE calibration SET withdrawn = ? WHERE id = ?').run(withdrawn ? 1 : 0, id);
  return { adoptedOn: row.adopted_on, before: row.withdrawn === 1 };
}
