import type Database from 'better-sqlite3';
import type { DipstickRecord } from '../../shared-calc/fuel/dipstick/dipstick-record.ts';
import type { Kept } from './kept.ts';
import { putRow } from './put-row.ts';

interface DipstickRow {
  id: string;
  tank_id: string;
  kind: DipstickRecord['kind'];
  length_mm: number;
  read_to_mm: number;
  removed: number;
}

const recordOf = (row: DipstickRow): DipstickRecord => ({
  id: row.id,
  tankId: row.tank_id,
  kind: row.kind,
  lengthMm: row.length_mm,
  readToMm: row.read_to_mm,
});

/** The stick or tube of a tank; null where there is none. */
export function readDipstickOfTank(db: Database.Database, tankId: string): DipstickRecord | null {
  const row = db
    .prepare<[string], DipstickRow>(
      'SELECT * FROM dipstick WHERE tank_id = ? AND removed = 0 ORDER BY rowid DESC LIMIT 1',
    )
    .get(tankId);
  return row === undefined ? null : recordOf(row);
}

export function readDipstick(db: Database.Database, id: string): Kept<DipstickRecord> | null {
  const row = db.prepare<[string], DipstickRow>('SELECT * FROM dipstick WHERE id = ?').get(id);
  return row === undefined ? null : { record: recordOf(row), removed: row.removed === 1 };
}

export function writeDipstick(db: Database.Database, { record, removed }: Kept<DipstickRecord>): void {
  putRow(db, 'dipstick', {
    id: record.id,
    tank_id: record.tankId,
    kind: record.kind,
    length_mm: record.lengthMm,
    read_to_mm: record.readToMm,
    removed: removed ? 1 : 0,
  });
}
