import type { Migration } from './define.ts';

export const settingsAndChanges: Migration = {
  version: 10,
  brings: 'settings and the list of changes',
  up: (db) => {
    db.exec(`
      CREATE TABLE setting (
        key TEXT PRIMARY KEY,
        value_json TEXT NOT NULL CHECK (json_valid(value_json))
      ) STRICT, WITHOUT ROWID;

      -- What undo and redo walk: each change with the request that takes it back.
      CREATE TABLE change_record (
        seq INTEGER PRIMARY KEY AUTOINCREMENT,
        at_epoch_s REAL NOT NULL,
        named TEXT NOT NULL,
        screen TEXT NOT NULL,
        forward_json TEXT NOT NULL CHECK (json_valid(forward_json)),
        inverse_json TEXT NOT NULL CHECK (json_valid(inverse_json)),
        undone INTEGER NOT NULL CHECK (undone IN (0, 1))
      ) STRICT;
    `);
  },
};
