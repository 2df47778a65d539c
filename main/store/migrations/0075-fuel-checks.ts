import type { Migration } from './define.ts';

export const fuelChecks: Migration = {
  version: 75,
  brings: 'checks of a gauge by refills and at its zero, and dipsticks calibrated by the same pours',
  up: (db) => {
    db.exec(`
      -- Rows are added, never changed but for being withdrawn.
      CREATE TABLE fuel_check (
        id TEXT PRIMARY KEY,
        tank_id TEXT NOT NULL REFERENCES tank (id),
        recorded_epoch_s REAL NOT NULL,
        checked_on TEXT NOT NULL,
        -- A flight between two readings and the refill after it, or the reading with no usable fuel left.
        kind TEXT NOT NULL CHECK (kind IN ('refill', 'zero')),
        attitude TEXT NOT NULL CHECK (attitude IN ('ground', 'level flight')),
        -- A position is 0 at the empty stop and 1 at the full one. At the zero there is one reading: the one after.
        before_at TEXT CHECK (before_at IN ('scale', 'emptyStop', 'fullStop')),
        before_position_ratio REAL,
        after_at TEXT NOT NULL CHECK (after_at IN ('scale', 'emptyStop', 'fullStop')),
        after_position_ratio REAL,
        -- NULL where it was not written down.
        flight_s REAL,
        refill_l REAL,
        -- How closely the state is met each time it is filled to: a standard deviation.
        state_sd_l REAL,
        -- NULL for a fuel station's pump.
        container_id TEXT REFERENCES container (id),
        note TEXT NOT NULL,
        withdrawn INTEGER NOT NULL DEFAULT 0 CHECK (withdrawn IN (0, 1)),
        CHECK ((kind = 'refill') = (before_at IS NOT NULL)),
        CHECK ((kind = 'refill') = (refill_l IS NOT NULL)),
        CHECK ((kind = 'refill') = (state_sd_l IS NOT NULL)),
        CHECK ((before_at IS 'scale') = (before_position_ratio IS NOT NULL)),
        CHECK ((after_at IS 'scale') = (after_position_ratio IS NOT NULL))
      ) STRICT;
      CREATE INDEX fuel_check_of_tank ON fuel_check (tank_id);

      -- Checks that are part of an adopted curve's data.
      CREATE TABLE calibration_check (
        calibration_id TEXT NOT NULL REFERENCES calibration (id),
        check_id TEXT NOT NULL REFERENCES fuel_check (id),
        PRIMARY KEY (calibration_id, check_id)
      ) STRICT, WITHOUT ROWID;

      CREATE TABLE dipstick (
        id TEXT PRIMARY KEY,
        tank_id TEXT NOT NULL REFERENCES tank (id),
        kind TEXT NOT NULL CHECK (kind IN ('dipstick', 'sight tube')),
        -- Millimetres from its lowest mark to its highest, and to what it is read.
        length_mm REAL NOT NULL,
        read_to_mm REAL NOT NULL,
        removed INTEGER NOT NULL DEFAULT 0 CHECK (removed IN (0, 1))
      ) STRICT;
      CREATE INDEX dipstick_of_tank ON dipstick (tank_id);

      -- What stick or tube showed after the same pour; NULL where it was not read. 0 is dry.
      ALTER TABLE pour ADD COLUMN stick_mm REAL CHECK (stick_mm >= 0);
    `);
  },
};
