import type { Migration } from './define.ts';

export const notices: Migration = {
  version: 15,
  brings: 'notices about the library itself',
  up: (db) => {
    db.exec(`
      -- What happened to the file as a whole and has to be told: a migration, a restored backup, a swept import.
      CREATE TABLE notice (
        seq INTEGER PRIMARY KEY AUTOINCREMENT,
        at_epoch_s REAL NOT NULL,
        sentence TEXT NOT NULL,
        dismissed INTEGER NOT NULL DEFAULT 0 CHECK (dismissed IN (0, 1))
      ) STRICT;
    `);
  },
};
