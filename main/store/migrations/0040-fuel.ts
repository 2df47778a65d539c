import type { Migration } from './define.ts';

export const fuel: Migration = {
  version: 40,
  brings: 'fuel: containers, fill tests and adopted curves of a gauge',
  up: (db) => {
    db.exec(`
      CREATE TABLE container (
        id TEXT PRIMARY KEY,
        name TEXT NOT NULL,
        nominal_l REAL,
        how TEXT NOT NULL CHECK (how IN ('marked', 'weighed', 'meter')),
        -- Its own error, common to all pours from it, and the error of each pour: standard deviations.
        scale_sd_ratio REAL NOT NULL,
        pour_sd_l REAL NOT NULL,
        removed INTEGER NOT NULL DEFAULT 0 CHECK (removed IN (0, 1))
      ) STRICT;

      CREATE TABLE fill_test (
        id TEXT PRIMARY KEY,
        tank_id TEXT NOT NULL REFERENCES tank (id),
        tested_on TEXT NOT NULL,
        attitude TEXT NOT NULL CHECK (attitude IN ('ground', 'level flight')),
        power TEXT NOT NULL CHECK (power IN ('battery', 'engine running')),
        fuel_kind TEXT NOT NULL,
        fuel_temperature_c REAL,
        -- The scale as it is printed on the gauge, from its empty to its full stop; the step is what can be read.
        scale_kind TEXT NOT NULL CHECK (scale_kind IN ('fractions', 'volume', 'bars', 'percent', 'numbers')),
        scale_unit TEXT CHECK (scale_unit IN ('L', 'US gal', 'imp gal')),
        scale_at_empty_printed REAL,
        scale_at_full_printed REAL,
        scale_step_printed REAL,
        scale_divisions INTEGER,
        precautions_json TEXT NOT NULL CHECK (json_valid(precautions_json)),
        note TEXT NOT NULL,
        removed INTEGER NOT NULL DEFAULT 0 CHECK (removed IN (0, 1)),
        CHECK ((scale_kind = 'volume') = (scale_unit IS NOT NULL)),
        CHECK ((scale_kind IN ('volume', 'numbers')) = (scale_at_empty_printed IS NOT NULL)),
        CHECK ((scale_at_empty_printed IS NULL) = (scale_at_full_printed IS NULL)),
        CHECK ((scale_kind IN ('fractions', 'bars')) = (scale_divisions IS NOT NULL)),
        CHECK ((scale_kind IN ('volume', 'numbers', 'percent')) = (scale_step_printed IS NOT NULL))
      ) STRICT;
      CREATE INDEX fill_test_of_tank ON fill_test (tank_id);

      CREATE TABLE fill_run (
        id TEXT PRIMARY KEY,
        test_id TEXT NOT NULL REFERENCES fill_test (id),
        position INTEGER NOT NULL,
        direction TEXT NOT NULL CHECK (direction IN ('filling', 'draining')),
        -- Drained until the engine's feed ran dry, drained at the sump, or a stated usable quantity.
        start_from TEXT NOT NULL CHECK (start_from IN ('engineFeed', 'sump', 'known')),
        start_usable_l REAL,
        container_id TEXT REFERENCES container (id),
        CHECK ((start_from = 'known') = (start_usable_l IS NOT NULL))
      ) STRICT;
      CREATE INDEX fill_run_of_test ON fill_run (test_id);

      CREATE TABLE pour (
        id TEXT PRIMARY KEY,
        run_id TEXT NOT NULL REFERENCES fill_run (id) ON DELETE CASCADE,
        position INTEGER NOT NULL,
        at_epoch_s REAL NOT NULL,
        volume_l REAL NOT NULL,
        -- NULL until it is read. A position is 0 at the empty stop and 1 at the full one.
        reading_at TEXT CHECK (reading_at IN ('scale', 'emptyStop', 'fullStop')),
        position_ratio REAL,
        aside_reason TEXT,
        CHECK ((reading_at IS 'scale') = (position_ratio IS NOT NULL))
      ) STRICT;
      CREATE INDEX pour_of_run ON pour (run_id);

      -- Adopted curves. Rows are added, never changed but for being withdrawn.
      CREATE TABLE calibration (
        id TEXT PRIMARY KEY,
        tank_id TEXT NOT NULL REFERENCES tank (id),
        recorded_epoch_s REAL NOT NULL,
        adopted_on TEXT NOT NULL,
        method TEXT NOT NULL,
        method_version INTEGER NOT NULL,
        scale_json TEXT NOT NULL CHECK (json_valid(scale_json)),
        resolution_ratio REAL NOT NULL,
        usable_capacity_l REAL NOT NULL,
        off_empty_least_l REAL NOT NULL,
        at_empty_most_l REAL NOT NULL,
        reading_count INTEGER NOT NULL,
        withdrawn INTEGER NOT NULL DEFAULT 0 CHECK (withdrawn IN (0, 1))
      ) STRICT;
      CREATE INDEX calibration_of_tank ON calibration (tank_id);

      CREATE TABLE calibration_knot (
        calibration_id TEXT NOT NULL REFERENCES calibration (id),
        position INTEGER NOT NULL,
        position_ratio REAL NOT NULL,
        low_l REAL NOT NULL,
        high_l REAL NOT NULL,
        PRIMARY KEY (calibration_id, position)
      ) STRICT, WITHOUT ROWID;

      CREATE TABLE calibration_test (
        calibration_id TEXT NOT NULL REFERENCES calibration (id),
        test_id TEXT NOT NULL REFERENCES fill_test (id),
        PRIMARY KEY (calibration_id, test_id)
      ) STRICT, WITHOUT ROWID;
    `);
  },
};
