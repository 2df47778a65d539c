import type { Migration } from './define.ts';

export const bandedCurves: Migration = {
  version: 60,
  brings: 'adopted curves with their band: what to plan on, the best estimate, what may be there',
  up: (db) => {
    db.exec(`
      -- A curve adopted by 'logSlopeRefits' keeps its places here; calibration_knot holds those without a band.
      CREATE TABLE calibration_band (
        calibration_id TEXT NOT NULL REFERENCES calibration (id),
        position INTEGER NOT NULL,
        position_ratio REAL NOT NULL,
        -- 5, 50 and 95 % with the needle exactly there.
        low_l REAL NOT NULL,
        best_l REAL NOT NULL,
        high_l REAL NOT NULL,
        -- 5 and 95 % for a reading to the nearest division.
        read_low_l REAL NOT NULL,
        read_high_l REAL NOT NULL,
        PRIMARY KEY (calibration_id, position)
      ) STRICT, WITHOUT ROWID;

      ALTER TABLE calibration ADD COLUMN aside_count INTEGER NOT NULL DEFAULT 0;
      ALTER TABLE calibration ADD COLUMN few_rows INTEGER NOT NULL DEFAULT 0 CHECK (few_rows IN (0, 1));
    `);
  },
};
