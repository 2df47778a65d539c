import type { Migration } from './define.ts';

export const loadingByGauge: Migration = {
  version: 86,
  brings: 'loadings that keep what a tank’s gauge read, and the curve by which it was taken',
  up: (db) => {
    db.exec(`
      -- NULL where litres were typed.
      ALTER TABLE loading_fuel ADD COLUMN gauge_reading_at TEXT
        CHECK (gauge_reading_at IN ('scale', 'emptyStop', 'fullStop'));
      ALTER TABLE loading_fuel ADD COLUMN gauge_position_ratio REAL
        CHECK ((gauge_reading_at IS 'scale') = (gauge_position_ratio IS NOT NULL));
      ALTER TABLE loading_fuel ADD COLUMN calibration_id TEXT REFERENCES calibration (id)
        CHECK ((calibration_id IS NULL) = (gauge_reading_at IS NULL));
    `);
  },
};
