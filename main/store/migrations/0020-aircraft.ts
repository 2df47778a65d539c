import type { Migration } from './define.ts';

export const aircraft: Migration = {
  version: 20,
  brings: 'aeroplanes: stations, tanks, envelopes and weighings',
  up: (db) => {
    db.exec(`
      -- Arms are metres aft of the datum. Removed rows stay, so that what refers to them and undo still hold.
      CREATE TABLE aircraft (
        id TEXT PRIMARY KEY,
        name TEXT NOT NULL,
        identification TEXT NOT NULL,
        datum_words TEXT NOT NULL,
        printed_mass TEXT NOT NULL CHECK (printed_mass IN ('kg', 'lb')),
        printed_arm TEXT NOT NULL CHECK (printed_arm IN ('m', 'cm', 'mm', 'in')),
        printed_volume TEXT NOT NULL CHECK (printed_volume IN ('L', 'US gal', 'imp gal')),
        mac_leading_edge_arm_m REAL,
        mac_length_m REAL,
        gear TEXT NOT NULL CHECK (gear IN ('nose wheel', 'tail wheel')),
        nose_or_tail_arm_m REAL,
        main_wheels_arm_m REAL,
        tail_end_arm_m REAL,
        max_ramp_kg REAL,
        max_take_off_kg REAL,
        max_landing_kg REAL,
        max_zero_fuel_kg REAL,
        left_right_most_kg REAL,
        oil_mass_kg REAL,
        oil_arm_m REAL,
        best_glide_ms REAL,
        best_glide_ratio REAL,
        fuel_flow_l_per_h REAL,
        taxi_fuel_l REAL NOT NULL,
        legal_reserve_min REAL NOT NULL,
        own_reserve_min REAL NOT NULL,
        limits_from TEXT NOT NULL CHECK (limits_from IN ('manual', 'measured', 'estimated')),
        limits_compared_on TEXT,
        performance_from TEXT NOT NULL CHECK (performance_from IN ('manual', 'measured', 'estimated')),
        performance_compared_on TEXT,
        removed INTEGER NOT NULL DEFAULT 0 CHECK (removed IN (0, 1)),
        CHECK ((mac_leading_edge_arm_m IS NULL) = (mac_length_m IS NULL)),
        CHECK ((oil_mass_kg IS NULL) = (oil_arm_m IS NULL))
      ) STRICT;

      CREATE TABLE station (
        id TEXT PRIMARY KEY,
        aircraft_id TEXT NOT NULL REFERENCES aircraft (id),
        position INTEGER NOT NULL,
        name TEXT NOT NULL,
        kind TEXT NOT NULL CHECK (kind IN ('seat', 'baggage', 'ballast', 'other')),
        -- A fixed station has both the same; a seat on rails its foremost and aftmost place.
        foremost_arm_m REAL NOT NULL,
        aftmost_arm_m REAL NOT NULL,
        adjustable INTEGER NOT NULL CHECK (adjustable IN (0, 1)),
        least_kg REAL,
        most_kg REAL,
        figures_from TEXT NOT NULL CHECK (figures_from IN ('manual', 'measured', 'estimated')),
        compared_on TEXT,
        removed INTEGER NOT NULL DEFAULT 0 CHECK (removed IN (0, 1))
      ) STRICT;
      CREATE INDEX station_of_aircraft ON station (aircraft_id);

      CREATE TABLE station_group (
        id TEXT PRIMARY KEY,
        aircraft_id TEXT NOT NULL REFERENCES aircraft (id),
        position INTEGER NOT NULL,
        name TEXT NOT NULL,
        empty_part_kg REAL NOT NULL,
        most_kg REAL NOT NULL
      ) STRICT;
      CREATE INDEX station_group_of_aircraft ON station_group (aircraft_id);

      CREATE TABLE station_group_member (
        group_id TEXT NOT NULL REFERENCES station_group (id) ON DELETE CASCADE,
        station_id TEXT NOT NULL REFERENCES station (id),
        position INTEGER NOT NULL,
        PRIMARY KEY (group_id, station_id)
      ) STRICT, WITHOUT ROWID;

      CREATE TABLE tank (
        id TEXT PRIMARY KEY,
        aircraft_id TEXT NOT NULL REFERENCES aircraft (id),
        position INTEGER NOT NULL,
        name TEXT NOT NULL,
        side TEXT NOT NULL CHECK (side IN ('left', 'right', 'centre')),
        -- All that it holds, the unusable included.
        capacity_l REAL NOT NULL,
        unusable_l REAL NOT NULL,
        arm_kind TEXT NOT NULL CHECK (arm_kind IN ('fixed', 'armTable', 'momentTable')),
        fixed_arm_m REAL,
        table_counts TEXT CHECK (table_counts IN ('usable', 'total')),
        table_density_kg_per_l REAL,
        fuel_kind TEXT NOT NULL,
        density_kg_per_l REAL NOT NULL,
        figures_from TEXT NOT NULL CHECK (figures_from IN ('manual', 'measured', 'estimated')),
        compared_on TEXT,
        removed INTEGER NOT NULL DEFAULT 0 CHECK (removed IN (0, 1)),
        CHECK ((arm_kind = 'fixed') = (fixed_arm_m IS NOT NULL)),
        CHECK ((arm_kind <> 'fixed') = (table_counts IS NOT NULL)),
        CHECK ((arm_kind = 'momentTable') = (table_density_kg_per_l IS NOT NULL))
      ) STRICT;
      CREATE INDEX tank_of_aircraft ON tank (aircraft_id);

      -- Arm or moment over contents, as the manual prints it.
      CREATE TABLE tank_knot (
        tank_id TEXT NOT NULL REFERENCES tank (id),
        position INTEGER NOT NULL,
        volume_l REAL NOT NULL,
        arm_m REAL,
        moment_kg_m REAL,
        PRIMARY KEY (tank_id, position),
        CHECK ((arm_m IS NULL) <> (moment_kg_m IS NULL))
      ) STRICT, WITHOUT ROWID;

      CREATE TABLE envelope (
        id TEXT PRIMARY KEY,
        aircraft_id TEXT NOT NULL REFERENCES aircraft (id),
        position INTEGER NOT NULL,
        name TEXT NOT NULL,
        category TEXT NOT NULL,
        phase TEXT NOT NULL CHECK (phase IN ('ramp', 'take-off', 'flight', 'landing', 'zero-fuel')),
        across TEXT NOT NULL CHECK (across IN ('arm', 'moment', 'mac')),
        figures_from TEXT NOT NULL CHECK (figures_from IN ('manual', 'measured', 'estimated')),
        compared_on TEXT
      ) STRICT;
      CREATE INDEX envelope_of_aircraft ON envelope (aircraft_id);

      -- In the coordinate in which the manual prints the envelope: edges are straight in that one.
      CREATE TABLE envelope_vertex (
        envelope_id TEXT NOT NULL REFERENCES envelope (id) ON DELETE CASCADE,
        position INTEGER NOT NULL,
        arm_m REAL,
        moment_kg_m REAL,
        mac_percent REAL,
        mass_kg REAL NOT NULL,
        PRIMARY KEY (envelope_id, position),
        CHECK ((arm_m IS NOT NULL) + (moment_kg_m IS NOT NULL) + (mac_percent IS NOT NULL) = 1)
      ) STRICT, WITHOUT ROWID;

      -- Never overwritten: a later one supersedes, a wrong one is withdrawn and stays readable.
      CREATE TABLE weighing (
        id TEXT PRIMARY KEY,
        aircraft_id TEXT NOT NULL REFERENCES aircraft (id),
        recorded_epoch_s REAL NOT NULL,
        weighed_on TEXT NOT NULL,
        how TEXT NOT NULL CHECK (how IN ('scales', 'maker', 'equipment change', 'other')),
        empty_mass_kg REAL NOT NULL,
        empty_arm_m REAL NOT NULL,
        mass_sd_kg REAL NOT NULL,
        arm_sd_m REAL NOT NULL,
        unusable_fuel_included INTEGER NOT NULL CHECK (unusable_fuel_included IN (0, 1)),
        oil_included INTEGER NOT NULL CHECK (oil_included IN (0, 1)),
        note TEXT NOT NULL,
        withdrawn INTEGER NOT NULL DEFAULT 0 CHECK (withdrawn IN (0, 1))
      ) STRICT;
      CREATE INDEX weighing_of_aircraft ON weighing (aircraft_id, weighed_on);

      CREATE TABLE weighing_scale (
        weighing_id TEXT NOT NULL REFERENCES weighing (id),
        position INTEGER NOT NULL,
        wheel TEXT NOT NULL,
        arm_m REAL NOT NULL,
        reading_kg REAL NOT NULL,
        tare_kg REAL NOT NULL,
        PRIMARY KEY (weighing_id, position)
      ) STRICT, WITHOUT ROWID;
    `);
  },
};
