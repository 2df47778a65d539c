import type { Migration } from './define.ts';

export const fillTestDetails: Migration = {
  version: 85,
  brings:
    'fill tests with how well their start is known, what was corrected, and pinned values; the curves behind a band',
  up: (db) => {
    db.exec(`
      -- Of fuel that is weighed: its density, and the temperature that the density is for.
      ALTER TABLE container ADD COLUMN density_kg_per_l REAL;
      ALTER TABLE container ADD COLUMN density_at_c REAL
        CHECK ((density_kg_per_l IS NULL) = (density_at_c IS NULL));

      ALTER TABLE fill_test ADD COLUMN supply_v REAL;
      -- Whether fuel could run to another tank or to the engine during the test.
      ALTER TABLE fill_test ADD COLUMN feeds TEXT CHECK (feeds IN ('shut', 'open'));
      -- How far the curve may bend, where a person fixed it: standard deviation of the logarithm of its slope.
      ALTER TABLE fill_test ADD COLUMN smoothness_ratio REAL;

      -- NULL: as is usual for such a start.
      ALTER TABLE fill_run ADD COLUMN start_sd_l REAL;
      ALTER TABLE fill_run ADD COLUMN ends_at TEXT CHECK (ends_at IN ('brim', 'gaugeStopped'));

      -- What was written down, where the row was corrected in the curve afterwards.
      ALTER TABLE pour ADD COLUMN written_volume_l REAL;
      ALTER TABLE pour ADD COLUMN written_reading_at TEXT
        CHECK (written_reading_at IN ('scale', 'emptyStop', 'fullStop'));
      ALTER TABLE pour ADD COLUMN written_position_ratio REAL
        CHECK ((written_reading_at IS 'scale') = (written_position_ratio IS NOT NULL));

      CREATE TABLE gauge_pin (
        id TEXT PRIMARY KEY,
        test_id TEXT NOT NULL REFERENCES fill_test (id),
        position INTEGER NOT NULL,
        position_ratio REAL NOT NULL,
        usable_l REAL NOT NULL,
        sd_l REAL NOT NULL,
        note TEXT NOT NULL
      ) STRICT;
      CREATE INDEX gauge_pin_of_test ON gauge_pin (test_id);

      -- What a person did to an adopted curve that its rows do not say.
      ALTER TABLE calibration ADD COLUMN corrected_count INTEGER NOT NULL DEFAULT 0;
      ALTER TABLE calibration ADD COLUMN pinned_count INTEGER NOT NULL DEFAULT 0;
      ALTER TABLE calibration ADD COLUMN smoothness_ratio REAL;

      -- The curves behind an adopted band, one a row, at the positions of calibration_band in their order.
      CREATE TABLE calibration_refit (
        calibration_id TEXT NOT NULL REFERENCES calibration (id),
        refit INTEGER NOT NULL,
        volumes_l_json TEXT NOT NULL CHECK (json_valid(volumes_l_json)),
        -- By container: the error of its scale that goes with this curve, in standard deviations.
        container_errors_json TEXT NOT NULL CHECK (json_valid(container_errors_json)),
        PRIMARY KEY (calibration_id, refit)
      ) STRICT, WITHOUT ROWID;
    `);
  },
};
