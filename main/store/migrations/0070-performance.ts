import type { Migration } from './define.ts';

export const performance: Migration = {
  version: 70,
  brings: "the manual's tables for take-off, landing and climb",
  up: (db) => {
    db.exec(`
      -- What these pages of the manual print in, wind limits, and the one figure of a manual without a table.
      CREATE TABLE performance (
        aircraft_id TEXT PRIMARY KEY REFERENCES aircraft (id),
        printed_altitude TEXT NOT NULL CHECK (printed_altitude IN ('ft', 'm')),
        printed_temperature TEXT NOT NULL CHECK (printed_temperature IN ('degC', 'degF')),
        printed_distance TEXT NOT NULL CHECK (printed_distance IN ('m', 'ft')),
        printed_climb_rate TEXT NOT NULL CHECK (printed_climb_rate IN ('ft/min', 'm/s')),
        printed_speed TEXT NOT NULL CHECK (printed_speed IN ('kt', 'mph', 'km/h')),
        demonstrated_crosswind_ms REAL,
        own_crosswind_ms REAL,
        own_tailwind_ms REAL,
        wind_from TEXT NOT NULL CHECK (wind_from IN ('manual', 'measured', 'estimated')),
        wind_compared_on TEXT,
        sea_level_ground_roll_m REAL,
        sea_level_over_obstacle_m REAL,
        sea_level_mass_kg REAL,
        sea_level_safety_ratio REAL,
        sea_level_safety_source TEXT,
        sea_level_reading_sd_ratio REAL,
        sea_level_from TEXT CHECK (sea_level_from IN ('manual', 'measured', 'estimated')),
        sea_level_compared_on TEXT,
        CHECK ((sea_level_ground_roll_m IS NULL) = (sea_level_over_obstacle_m IS NULL)
          AND (sea_level_ground_roll_m IS NULL) = (sea_level_mass_kg IS NULL)
          AND (sea_level_ground_roll_m IS NULL) = (sea_level_safety_ratio IS NULL)
          AND (sea_level_ground_roll_m IS NULL) = (sea_level_safety_source IS NULL)
          AND (sea_level_ground_roll_m IS NULL) = (sea_level_reading_sd_ratio IS NULL)
          AND (sea_level_ground_roll_m IS NULL) = (sea_level_from IS NULL))
      ) STRICT, WITHOUT ROWID;

      CREATE TABLE performance_table (
        aircraft_id TEXT NOT NULL REFERENCES performance (aircraft_id) ON DELETE CASCADE,
        of TEXT NOT NULL CHECK (of IN ('takeOff', 'landing', 'climb')),
        words TEXT NOT NULL,
        -- Null for a climb.
        surface TEXT CHECK (surface IN ('paved', 'dryGrass')),
        wind_margin TEXT CHECK (wind_margin IN ('none', 'included')),
        -- At lift-off or over the threshold.
        speed_ms REAL,
        safety_ratio REAL,
        safety_source TEXT,
        fits TEXT CHECK (fits IN ('overObstacle', 'groundRoll')),
        reading_sd_ratio REAL NOT NULL,
        figures_from TEXT NOT NULL CHECK (figures_from IN ('manual', 'measured', 'estimated')),
        compared_on TEXT,
        PRIMARY KEY (aircraft_id, of),
        CHECK ((of = 'climb') = (surface IS NULL) AND (of = 'climb') = (wind_margin IS NULL)
          AND (of = 'climb') = (safety_ratio IS NULL) AND (of = 'climb') = (safety_source IS NULL)
          AND (of = 'climb') = (fits IS NULL))
      ) STRICT, WITHOUT ROWID;

      -- A printed row. Null is a place on an axis that the table does not have, or a figure left blank.
      CREATE TABLE performance_row (
        aircraft_id TEXT NOT NULL,
        of TEXT NOT NULL,
        position INTEGER NOT NULL,
        mass_kg REAL,
        pressure_altitude_m REAL,
        temperature_c REAL,
        headwind_ms REAL,
        ground_roll_m REAL,
        over_obstacle_m REAL,
        climb_rate_ms REAL,
        speed_ms REAL,
        -- 1 where a person was asked and said that the manual prints it so.
        as_printed INTEGER NOT NULL CHECK (as_printed IN (0, 1)),
        PRIMARY KEY (aircraft_id, of, position),
        FOREIGN KEY (aircraft_id, of) REFERENCES performance_table (aircraft_id, of) ON DELETE CASCADE
      ) STRICT, WITHOUT ROWID;

      CREATE TABLE performance_note (
        aircraft_id TEXT NOT NULL,
        of TEXT NOT NULL,
        position INTEGER NOT NULL,
        counts TEXT NOT NULL CHECK (counts IN ('headwind', 'tailwind', 'aboveStandard', 'slope', 'dryGrass', 'wetGrass', 'wetPaved', 'softGround')),
        -- Metres a second, degrees Celsius or a slope as a ratio; null for a surface.
        per_amount REAL,
        most_amount REAL,
        change_ratio REAL NOT NULL,
        share_of TEXT NOT NULL CHECK (share_of IN ('each', 'groundRoll', 'overObstacle')),
        PRIMARY KEY (aircraft_id, of, position),
        FOREIGN KEY (aircraft_id, of) REFERENCES performance_table (aircraft_id, of) ON DELETE CASCADE
      ) STRICT, WITHOUT ROWID;
    `);
  },
};
