import Database from 'better-sqlite3';
import { clearHistory } from './history.ts';
import { migrations } from './migrations/all.ts';
import { schemaVersion } from './schema-version.ts';

/** Written into the file's header, so that a library is known for what it is: 'TARE' in ASCII. */
export const applicationId = 0x54415245;

/**
 * Open a library for writing, creating or migrating it as needed.
 *
 * WAL lets readers go on while something is written. `synchronous = FULL`: a saved figure survives a power cut,
 * which NORMAL does not promise in WAL mode; saves are small and rare, so the price (one sync each) is not felt.
 */
export function openLibrary(path: string): Database.Database {
  const db = new Database(path);
  db.pragma('journal_mode = WAL');
  db.pragma('synchronous = FULL');
  db.pragma('foreign_keys = ON');
  db.pragma('busy_timeout = 2000');
  db.pragma(`application_id = ${String(applicationId)}`);
  migrate(db);
  return db;
}

/** A second connection that can only look. */
export function openForReading(path: string): Database.Database {
  const db = new Database(path, { readonly: true, fileMustExist: true });
  db.pragma('busy_timeout = 2000');
  return db;
}

function migrate(db: Database.Database): void {
  const from = schemaVersion(db);
  for (const migration of migrations) {
    if (migration.version <= from) continue;
    db.transaction(() => {
      migration.up(db);
      db.pragma(`user_version = ${String(migration.version)}`);
      if (from > 0) clearHistory(db);
    }).immediate();
  }
}
