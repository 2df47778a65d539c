import type Database from 'better-sqlite3';
import type { FuelCardRecord } from '../../shared-calc/fuel/records.ts';
import { setWithdrawnBySerial } from './withdraw-serial.ts';

interface CardRow {
  serial: number;
  calibration_id: string;
  printed_on: string;
  reading: FuelCardRecord['reading'];
  withdrawn: number;
}

/** The cards printed for a tank, the latest first, withdrawn ones among them. */
export function readFuelCards(db: Database.Database, tankId: string): FuelCardRecord[] {
  return db
    .prepare<[string], CardRow>(
      `SELECT fuel_card.* FROM fuel_card JOIN calibration ON calibration.id = fuel_card.calibration_id
       WHERE calibration.tank_id = ? ORDER BY serial DESC`,
    )
    .all(tankId)
    .map((row) => ({
      serial: row.serial,
      calibrationId: row.calibration_id,
      printedOn: row.printed_on,
      reading: row.reading,
      withdrawn: row.withdrawn === 1,
    }));
}

/** Append a card; gives its serial, which was never used before. */
export function appendFuelCard(
  db: Database.Database,
  card: Omit<FuelCardRecord, 'serial' | 'withdrawn'>,
): number {
  const { lastInsertRowid } = db
    .prepare('INSERT INTO fuel_card (calibration_id, printed_on, reading) VALUES (?, ?, ?)')
    .run(card.calibrationId, card.printedOn, card.reading);
  return Number(lastInsertRowid);
}

/** Withdraw a card or let it count again. Gives what it was before, or null where there is no such card. */
export function setFuelCardWithdrawn(
  db: Database.Database,
  serial: number,
  withdrawn: boolean,
): boolean | null {
  return setWithdrawnBySerial(db, 'fuel_card', serial, withdrawn);
}
