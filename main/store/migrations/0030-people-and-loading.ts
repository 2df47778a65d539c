import type { Migration } from './define.ts';

export const peopleAndLoading: Migration = {
  version: 30,
  brings: 'people, things and loadings',
  up: (db) => {
    db.exec(`
      CREATE TABLE person (
        id TEXT PRIMARY KEY,
        name TEXT NOT NULL,
        kind TEXT NOT NULL CHECK (kind IN ('person', 'thing')),
        mass_kg REAL NOT NULL,
        known TEXT NOT NULL CHECK (known IN ('weighed', 'stated', 'standard')),
        known_on TEXT,
        sd_kg REAL NOT NULL,
        bias_kg REAL NOT NULL,
        note TEXT NOT NULL,
        removed INTEGER NOT NULL DEFAULT 0 CHECK (removed IN (0, 1))
      ) STRICT;

      CREATE TABLE loading (
        id TEXT PRIMARY KEY,
        aircraft_id TEXT NOT NULL REFERENCES aircraft (id),
        name TEXT NOT NULL,
        category TEXT NOT NULL,
        burn_kind TEXT NOT NULL CHECK (burn_kind IN ('sequence', 'together', 'alternate')),
        burn_every_min REAL,
        return_into_tank_id TEXT REFERENCES tank (id),
        return_pump_l_per_h REAL,
        taxi_l REAL NOT NULL,
        climb_l REAL NOT NULL,
        climb_min REAL NOT NULL,
        cruise_l_per_h REAL NOT NULL,
        landing_after_s REAL,
        reserve_min REAL NOT NULL,
        changed_epoch_s REAL NOT NULL,
        removed INTEGER NOT NULL DEFAULT 0 CHECK (removed IN (0, 1)),
        CHECK ((return_into_tank_id IS NULL) = (return_pump_l_per_h IS NULL))
      ) STRICT;
      CREATE INDEX loading_of_aircraft ON loading (aircraft_id);

      -- A mass typed for this loading alone stands before the person's own.
      CREATE TABLE loading_item (
        loading_id TEXT NOT NULL REFERENCES loading (id),
        id TEXT NOT NULL,
        position INTEGER NOT NULL,
        station_id TEXT NOT NULL REFERENCES station (id),
        seat_arm_m REAL,
        person_id TEXT REFERENCES person (id),
        typed_name TEXT,
        typed_mass_kg REAL,
        typed_known TEXT CHECK (typed_known IN ('weighed', 'stated', 'standard')),
        typed_sd_kg REAL,
        typed_bias_kg REAL,
        PRIMARY KEY (loading_id, id),
        CHECK (person_id IS NOT NULL OR typed_mass_kg IS NOT NULL),
        CHECK ((typed_mass_kg IS NULL) = (typed_name IS NULL)),
        CHECK ((typed_mass_kg IS NULL) = (typed_known IS NULL)),
        CHECK ((typed_mass_kg IS NULL) = (typed_sd_kg IS NULL)),
        CHECK ((typed_mass_kg IS NULL) = (typed_bias_kg IS NULL))
      ) STRICT, WITHOUT ROWID;

      -- Usable litres.
      CREATE TABLE loading_fuel (
        loading_id TEXT NOT NULL REFERENCES loading (id),
        tank_id TEXT NOT NULL REFERENCES tank (id),
        position INTEGER NOT NULL,
        low_l REAL NOT NULL,
        best_l REAL NOT NULL,
        high_l REAL NOT NULL,
        PRIMARY KEY (loading_id, tank_id)
      ) STRICT, WITHOUT ROWID;

      CREATE TABLE loading_burn (
        loading_id TEXT NOT NULL REFERENCES loading (id),
        position INTEGER NOT NULL,
        tank_id TEXT NOT NULL REFERENCES tank (id),
        PRIMARY KEY (loading_id, position)
      ) STRICT, WITHOUT ROWID;
    `);
  },
};
