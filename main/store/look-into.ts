import Database from 'better-sqlite3';
import { existsSync, rmSync } from 'node:fs';

export interface Look {
  db: Database.Database;
  close(): void;
}

/**
 * Look into a file with a connection that cannot write, and leave nothing behind: SQLite makes a -shm and a -wal
 * beside a WAL file even for a reader. A -wal that was there (the last program died) is read and left as it is.
 * Only while this process holds the library, or for a file that no program has open.
 */
export function startLook(path: string): Look {
  const madeByUs = ['-shm', '-wal'].map((end) => path + end).filter((side) => !existsSync(side));
  const db = new Database(path, { readonly: true, fileMustExist: true });
  return {
    db,
    close: () => {
      db.close();
      for (const side of madeByUs) rmSync(side, { force: true });
    },
  };
}

/** startLook for as long as one function runs. */
export function lookInto<T>(path: string, look: (db: Database.Database) => T): T {
  const { db, close } = startLook(path);
  try {
    return look(db);
  } finally {
    close();
  }
}
