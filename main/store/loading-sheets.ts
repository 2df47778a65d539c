import type Database from 'better-sqlite3';
import type { LoadingInputs } from '../../shared-calc/loading/case-of.ts';
import type { SheetPaper } from '../../shared-calc/loading/sheet-changes.ts';
import { setWithdrawnBySerial } from './withdraw-serial.ts';

interface SheetRow {
  serial: number;
  loading_id: string;
  printed_on: string;
  paper: SheetPaper;
  inputs_json: string;
  withdrawn: number;
}

/** A loading sheet as it was printed. */
export interface LoadingSheetRecord {
  serial: number;
  loadingId: string;
  printedOn: string;
  paper: SheetPaper;
  inputs: LoadingInputs;
  withdrawn: boolean;
}

/** The sheets printed for an aeroplane, the latest first, withdrawn ones among them. */
export function readLoadingSheets(db: Database.Database, aircraftId: string): LoadingSheetRecord[] {
  return db
    .prepare<[string], SheetRow>(
      `SELECT loading_sheet.* FROM loading_sheet JOIN loading ON loading.id = loading_sheet.loading_id
       WHERE loading.aircraft_id = ? ORDER BY serial DESC`,
    )
    .all(aircraftId)
    .map((row) => ({
      serial: row.serial,
      loadingId: row.loading_id,
      printedOn: row.printed_on,
      paper: row.paper,
      // Written by appendLoadingSheet from a checked record and never changed.
      inputs: JSON.parse(row.inputs_json) as LoadingInputs,
      withdrawn: row.withdrawn === 1,
    }));
}

/** Append a sheet; gives its serial, which was never used before. */
export function appendLoadingSheet(
  db: Database.Database,
  sheet: Pick<LoadingSheetRecord, 'printedOn' | 'paper' | 'inputs'>,
): number {
  const { lastInsertRowid } = db
    .prepare('INSERT INTO loading_sheet (loading_id, printed_on, paper, inputs_json) VALUES (?, ?, ?, ?)')
    .run(sheet.inputs.loading.id, sheet.printedOn, sheet.paper, JSON.stringify(sheet.inputs));
  return Number(lastInsertRowid);
}

/** Withdraw a sheet or let it count again. Gives what it was before, or null where there is no such sheet. */
export function setLoadingSheetWithdrawn(
  db: Database.Database,
  serial: number,
  withdrawn: boolean,
): boolean | null {
  return setWithdrawnBySerial(db, 'loading_sheet', serial, withdrawn);
}
