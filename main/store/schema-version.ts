import type Database from 'better-sqlite3';

/** The version of the last migration that ran on this file; 0 for a new one. */
export function schemaVersion(db: Database.Database): number {
  return db.pragma('user_version', { simple: true }) as number;
}
