import type Database from 'better-sqlite3';
import type {
  FuelSplit,
  ReviewTableRecord,
  ReviewTerms,
} from '../../shared-calc/loading/review-table/table-record.ts';

interface TableRow {
  aircraft_id: string;
  terms_json: string;
  fuel_split: FuelSplit;
  fuel_doubt_l: number;
  rows_json: string;
  columns_json: string;
}

/** The review table of an aeroplane; null where none was begun. */
export function readReviewTable(db: Database.Database, aircraftId: string): ReviewTableRecord | null {
  const row = db
    .prepare<[string], TableRow>('SELECT * FROM review_table WHERE aircraft_id = ?')
    .get(aircraftId);
  if (row === undefined) return null;
  return {
    aircraftId,
    terms: JSON.parse(row.terms_json) as ReviewTerms,
    split: row.fuel_split,
    fuelDoubtL: row.fuel_doubt_l,
    rows: JSON.parse(row.rows_json) as ReviewTableRecord['rows'],
    columns: JSON.parse(row.columns_json) as ReviewTableRecord['columns'],
  };
}

/** Keep the whole table as given; null keeps none. */
export function writeReviewTable(
  db: Database.Database,
  aircraftId: string,
  table: ReviewTableRecord | null,
): void {
  db.prepare('DELETE FROM review_table WHERE aircraft_id = ?').run(aircraftId);
  if (table === null) return;
  db.prepare(
    `INSERT INTO review_table (aircraft_id, terms_json, fuel_split, fuel_doubt_l, rows_json, columns_json)
     VALUES (?, ?, ?, ?, ?, ?)`,
  ).run(
    aircraftId,
    JSON.stringify(table.terms),
    table.split,
    table.fuelDoubtL,
    JSON.stringify(table.rows),
    JSON.stringify(table.columns),
  );
}
