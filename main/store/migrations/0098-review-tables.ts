import type { Migration } from './define.ts';

export const reviewTables: Migration = {
  version: 98,
  brings: 'scenarios side by side: the review table of each aeroplane',
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
    `);
  },
};
