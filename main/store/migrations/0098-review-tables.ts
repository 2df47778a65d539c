import type { Migration } from './define.ts';

export const reviewTables: Migration = {
  version: 98,
  brings: 'scenarios side by side, and lowest masses of envelopes that the manual states as least masses',
  up: (db) => {
    db.exec(`
      -- Read and written as a whole. Whom and what it names is kept when taken off its list, so that names go on holding.
      CREATE TABLE review_table (
        aircraft_id TEXT PRIMARY KEY REFERENCES aircraft (id),
        terms_json TEXT NOT NULL CHECK (json_valid(terms_json)),
        fuel_split TEXT NOT NULL CHECK (fuel_split IN ('even', 'capacity', 'order')),
        fuel_doubt_l REAL NOT NULL,
        rows_json TEXT NOT NULL CHECK (json_valid(rows_json)),
        columns_json TEXT NOT NULL CHECK (json_valid(columns_json))
      ) STRICT;

      -- The manual states the lowest mass as a least mass; else it is only where the manual's figures end.
      ALTER TABLE envelope ADD COLUMN lowest_is_limit INTEGER NOT NULL DEFAULT 0 CHECK (lowest_is_limit IN (0, 1));
    `);
  },
};
