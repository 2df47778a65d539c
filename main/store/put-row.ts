import type Database from 'better-sqlite3';

/**
 * Insert a row, or overwrite the one with the same id. Unlike INSERT OR REPLACE it deletes nothing, so that what
 * refers to the row keeps holding.
 * @param table a table with the primary key `id`, named in our own code, never by input
 * @param row   every column with its value
 */
export function putRow(
  db: Database.Database,
  table: string,
  row: { id: string } & Record<string, string | number | null>,
): void {
  const columns = Object.keys(row);
  const updates = columns
    .filter((column) => column !== 'id')
    .map((column) => `${column} = excluded.${column}`);
  db.prepare(
    `INSERT INTO ${table} (${columns.join(', ')}) VALUES (${columns.map((column) => `@${column}`).join(', ')})
     ON CONFLICT (id) DO UPDATE SET ${updates.join(', ')}`,
  ).run(row);
}
