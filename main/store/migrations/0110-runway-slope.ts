import type { Migration } from './define.ts';

export const runwaySlope: Migration = {
  version: 110,
  brings: 'slopes of runways',
  up: (db) => {
    db.exec(`
      -- Uphill when rolled from the first end, as a ratio; NULL where it is not known.
      ALTER TABLE runway ADD COLUMN slope_ratio REAL CHECK (slope_ratio IS NULL OR slope_ratio BETWEEN -0.1 AND 0.1);
    `);
  },
};
