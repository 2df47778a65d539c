import type Database from 'better-sqlite3';
import type { FuelCheckRecord } from '../../shared-calc/fuel/checks/check-record.ts';
import type { GaugeReading } from '../../shared-calc/fuel/fill-run.ts';
import { readingColumns, readingOf } from './fill-tests.ts';

interface CheckRow {
  id: string;
  tank_id: string;
  checked_on: string;
  kind: FuelCheckRecord['kind'];
  attitude: FuelCheckRecord['attitude'];
  before_at: GaugeReading['at'] | null;
  before_position_ratio: number | null;
  after_at: GaugeReading['at'];
  after_position_ratio: number | null;
  flight_s: number | null;
  refill_l: number | null;
  state_sd_l: number | null;
  container_id: string | null;
  note: string;
  withdrawn: number;
}

/** The checks of a tank's gauge, the latest day first, withdrawn ones among them. */
export function readFuelChecks(db: Database.Database, tankId: string): FuelCheckRecord[] {
  return db
    .prepare<[string], CheckRow>(
      'SELECT * FROM fuel_check WHERE tank_id = ? ORDER BY checked_on DESC, recorded_epoch_s DESC, rowid DESC',
    )
    .all(tankId)
    .map(checkOf);
}

/** Append a check; none is ever overwritten. */
export function appendFuelCheck(db: Database.Database, check: FuelCheckRecord, recordedEpochS: number): void {
  const isRefill = check.kind === 'refill';
  db.prepare(
    `INSERT INTO fuel_check (id, tank_id, recorded_epoch_s, checked_on, kind, attitude, before_at, before_position_ratio,
       after_at, after_position_ratio, flight_s, refill_l, state_sd_l, container_id, note, withdrawn)
     VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, 0)`,
  ).run(
    check.id,
    check.tankId,
    recordedEpochS,
    check.checkedOn,
    check.kind,
    check.attitude,
    ...readingColumns(isRefill ? check.before : null),
    ...readingColumns(isRefill ? check.after : check.reading),
    isRefill ? check.flightS : null,
    isRefill ? check.refillL : null,
    isRefill ? check.stateSdL : null,
    isRefill ? check.containerId : null,
    check.note,
  );
}

/** Withdraw a check or let it count again. Gives its day and what it was before, or null where there is none. */
export function setFuelCheckWithdrawn(
  db: Database.Database,
  id: string,
  withdrawn: boolean,
): { checkedOn: string; before: boolean } | null {
  const row = db
    .prepare<[string], { checked_on: string; withdrawn: number }>(
      'SELECT checked_on, withdrawn FROM fuel_check WHERE id = ?',
    )
    .get(id);
  if (row === undefined) return null;
  db.prepare('UPDATE fuel_check SET withdrawn = ? WHERE id = ?').run(withdrawn ? 1 : 0, id);
  return { checkedOn: row.checked_on, before: row.withdrawn === 1 };
}

// The table's checks hold each column where its kind needs it, so a missing one cannot be read here.
function checkOf(row: CheckRow): FuelCheckRecord {
  const common = {
    id: row.id,
    tankId: row.tank_id,
    checkedOn: row.checked_on,
    attitude: row.attitude,
    note: row.note,
    withdrawn: row.withdrawn === 1,
  };
  const after = readingOf(row.after_at, row.after_position_ratio) ?? { at: 'emptyStop' };
  if (row.kind === 'zero') return { kind: 'zero', ...common, reading: after };
  return {
    kind: 'refill',
    ...common,
    before: readingOf(row.before_at, row.before_position_ratio) ?? { at: 'emptyStop' },
    after,
    flightS: row.flight_s,
    refillL: row.refill_l ?? 0,
    stateSdL: row.state_sd_l ?? 0,
    containerId: row.container_id,
  };
}
