import type { Migration } from './define.ts';

export const loadingSheets: Migration = {
  version: 95,
  brings: 'loading sheets that were printed, by their serial, with all that each was made from',
  up: (db) => {
    db.exec(`
      CREATE TABLE loading_sheet (
        -- Counts up over the whole library and is never used twice: it is on paper.
        serial INTEGER PRIMARY KEY AUTOINCREMENT,
        loading_id TEXT NOT NULL REFERENCES loading (id),
        printed_on TEXT NOT NULL,
        paper TEXT NOT NULL CHECK (paper IN ('A4', 'US Letter')),
        -- Aeroplane, weighing, loading and people as they were: the sheet can be read again, and what changed since is found.
        inputs_json TEXT NOT NULL CHECK (json_valid(inputs_json)),
        withdrawn INTEGER NOT NULL DEFAULT 0 CHECK (withdrawn IN (0, 1))
      ) STRICT;
      CREATE INDEX loading_sheet_of_loading ON loading_sheet (loading_id);
    `);
  },
};
