import type { Migration } from './define.ts';

export const fuelCards: Migration = {
  version: 65,
  brings: 'fuel cards that were printed, by their serial',
  up: (db) => {
    db.exec(`
      CREATE TABLE fuel_card (
        -- Counts up over the whole library and is never used twice: it is on paper.
        serial INTEGER PRIMARY KEY AUTOINCREMENT,
        calibration_id TEXT NOT NULL REFERENCES calibration (id),
        printed_on TEXT NOT NULL,
        reading TEXT NOT NULL CHECK (reading IN ('needleOnMark', 'nearestDivision')),
        withdrawn INTEGER NOT NULL DEFAULT 0 CHECK (withdrawn IN (0, 1))
      ) STRICT;
      CREATE INDEX fuel_card_of_calibration ON fuel_card (calibration_id);
    `);
  },
};
