import type Database from 'better-sqlite3';
import type { Value } from './csv.ts';
import { describedTables } from './tables.ts';

export interface TableToExport {
  name: string;
  columns: string[];
  /** A view shows rows of other tables once more. */
  isView: boolean;
}

/** The tables and views that an export writes, by name; what is left out, and SQLite's own, are not among them. */
export function tablesToExport(db: Database.Database): TableToExport[] {
  return tableNames(db)
    .filter(({ name }) => !('leftOut' in (describedTables[name] ?? {})))
    .map(({ name, type }) => ({ name, columns: columnsOf(db, name), isView: type === 'view' }));
}

/** Every table and view of the library, by name. */
export function tableNames(db: Database.Database): { name: string; type: 'table' | 'view' }[] {
  return db
    .prepare<[], { name: string; type: 'table' | 'view' }>(
      "SELECT name, type FROM sqlite_schema WHERE type IN ('table', 'view') AND name NOT LIKE 'sqlite_%' ORDER BY name",
    )
    .all();
}

function columnsOf(db: Database.Database, table: string): string[] {
  return db
    .prepare<[string], { name: string }>('SELECT name FROM pragma_table_info(?)')
    .all(table)
    .map(({ name }) => name);
}

/** Reads the rows of one table as arrays, in the order of its columns and of its key. */
export function rowsStatement(db: Database.Database, table: string): Database.Statement<[], Value[]> {
  const keys = db
    .prepare<[string], { name: string }>('SELECT name FROM pragma_table_info(?) WHERE pk > 0 ORDER BY pk')
    .all(table)
    .map(({ name }) => quoted(name));
  const order = keys.length === 0 ? '' : ` ORDER BY ${keys.join(', ')}`;
  return db.prepare<[], Value[]>(`SELECT * FROM ${quoted(table)}${order}`).raw();
}

/** A name as SQL wants it. */
function quoted(name: string): string {
  return `"${name.replaceAll('"', '""')}"`;
}
