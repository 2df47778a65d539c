import type Database from 'better-sqlite3';

/**
 * Withdraw something printed under a serial, or let it count again.
 * @returns what it was before, or null where nothing has this serial
 */
export function setWithdrawnBySerial(
  db: Database.Database,
  table: 'fuel_card' | 'loading_sheet',
  serial: number,
  withdrawn: boolean,
): boolean | null {
  const before = db
    .prepare<[number], number>(`SELECT withdrawn FROM ${table} WHERE serial = ?`)
    .pluck()
    .get(serial);
  if (before === undefined) return null;
  db.prepare(`UPDATE ${table} SET withdrawn = ? WHERE serial = ?`).run(withdrawn ? 1 : 0, serial);
  return before === 1;
}
