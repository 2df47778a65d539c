import type { Migration } from './define.ts';

// Each column of a block is a blob of little-endian 16-bit integers, one an observation; -32768 is 'not reported',
// and a whole blob of NULL means that nothing in the block was. Value = (integer + offset) / 100, in the unit that
// the view's name ends in; what is not in hundredths is named below.
const hundredths: [blob: string, view: string, offset: number][] = [
  ['temperature_c100', 'temperature_c', 0],
  ['dew_point_c100', 'dew_point_c', 0],
  ['altimeter_setting_hpa100_less_100000', 'altimeter_setting_hpa', 100_000],
  ['sea_level_pressure_hpa100_less_100000', 'sea_level_pressure_hpa', 100_000],
  ['station_pressure_hpa100_less_80000', 'station_pressure_hpa', 80_000],
  ['wind_speed_ms100', 'wind_speed_ms', 0],
  ['gust_ms100', 'gust_ms', 0],
];

// SQLite has no function from bytes to numbers. The place of a byte in the list of all 256 is the byte itself.
const everyByte = Array.from({ length: 256 }, (_, byte) => byte.toString(16).padStart(2, '0')).join('');
const unsigned = (blob: string) =>
  `((instr(bytes.every, substr(b.${blob}, 2 * place.key + 2, 1)) - 1) * 256
      + instr(bytes.every, substr(b.${blob}, 2 * place.key + 1, 1)) - 1)`;
const signed = (blob: string) => `nullif((${unsigned(blob)} + 32768) % 65536 - 32768, -32768)`;

export const weather: Migration = {
  version: 50,
  brings: 'weather stations, imports, observations, fields and runways',
  up: (db) => {
    db.exec(`
      CREATE TABLE weather_station (
        id TEXT PRIMARY KEY,
        -- USAF and WBAN number in NOAA's station list ('725300-94846'); NULL where a person gave the place.
        list_key TEXT UNIQUE,
        name TEXT NOT NULL,
        identifier TEXT,
        latitude_deg REAL NOT NULL CHECK (latitude_deg BETWEEN -90 AND 90),
        longitude_deg REAL NOT NULL CHECK (longitude_deg BETWEEN -180 AND 180),
        elevation_m REAL NOT NULL CHECK (elevation_m BETWEEN -500 AND 6000),
        place_from TEXT NOT NULL CHECK (place_from IN ('station list', 'typed', 'file'))
      ) STRICT;

      -- An import is invisible until finished_epoch_s is set; what never finished is swept at the next start.
      CREATE TABLE weather_import (
        id INTEGER PRIMARY KEY AUTOINCREMENT,
        station_id TEXT NOT NULL REFERENCES weather_station (id),
        kind TEXT,
        -- What the values are: only 'observed' ever answers how many days in ten.
        nature TEXT CHECK (nature IN ('observed', 'typical year', 'averages', 'model')),
        file_name TEXT NOT NULL,
        begun_epoch_s REAL NOT NULL,
        finished_epoch_s REAL,
        observation_count INTEGER NOT NULL DEFAULT 0,
        new_count INTEGER NOT NULL DEFAULT 0,
        first_epoch_s INTEGER,
        last_epoch_s INTEGER,
        -- What was left out and why: [{"reason", "count", "examples": [{"line", "text"}]}].
        skipped_json TEXT NOT NULL DEFAULT '[]' CHECK (json_valid(skipped_json)),
        CHECK (finished_epoch_s IS NULL OR (kind IS NOT NULL AND nature IS NOT NULL))
      ) STRICT;

      -- One row a station, month (UTC) and import; observations in order of time. The view 'observation' decodes it.
      -- More parts than one where a file came back to a month that had been put away already.
      CREATE TABLE observation_block (
        id INTEGER PRIMARY KEY,
        station_id TEXT NOT NULL REFERENCES weather_station (id),
        month_start_epoch_s INTEGER NOT NULL,
        import_id INTEGER NOT NULL REFERENCES weather_import (id),
        part INTEGER NOT NULL,
        observation_count INTEGER NOT NULL CHECK (observation_count > 0),
        -- Unsigned: 31 days have 44 640 minutes.
        minute_of_month BLOB NOT NULL,
        ${hundredths.map(([blob]) => `${blob} BLOB`).join(',\n        ')},
        -- Degrees true from which it blows; 0 with no speed is calm; -1 variable, or a speed without direction.
        wind_from_deg BLOB,
        -- Bits: 1 special report; 2 temperature or dew point, 8 a pressure, 16 wind was out of range and is left out;
        -- 4 dew point above temperature (both kept); 32 suspect by its source.
        flags BLOB,
        UNIQUE (station_id, month_start_epoch_s, import_id, part)
      ) STRICT;
      CREATE INDEX observation_block_import ON observation_block (import_id);

      -- Every stored report of finished imports, in plain units. Where imports overlap, a moment can appear twice:
      -- the program then reads, of one minute, the first usable report of the oldest import.
      CREATE VIEW observation AS
      SELECT
        b.station_id,
        b.import_id,
        b.month_start_epoch_s + 60 * ${unsigned('minute_of_month')} AS epoch_s,
        ${hundredths.map(([blob, view, offset]) => `(${signed(blob)} + ${String(offset)}) / 100.0 AS ${view}`).join(',\n        ')},
        ${signed('wind_from_deg')} AS wind_from_deg,
        coalesce(${signed('flags')}, 0) AS flags
      FROM observation_block b
      JOIN weather_import i ON i.id = b.import_id AND i.finished_epoch_s IS NOT NULL
      JOIN (SELECT x'${everyByte}' AS every) bytes
      -- Counts 0, 1, ... up to the block's last observation: a list of as many zeros, of which only the keys serve.
      JOIN json_each('[' || substr(replace(hex(zeroblob(b.observation_count)), '00', '0,'), 1, 2 * b.observation_count - 1) || ']') place;

      CREATE TABLE field (
        id TEXT PRIMARY KEY,
        name TEXT NOT NULL,
        identifier TEXT,
        latitude_deg REAL NOT NULL CHECK (latitude_deg BETWEEN -90 AND 90),
        longitude_deg REAL NOT NULL CHECK (longitude_deg BETWEEN -180 AND 180),
        elevation_m REAL NOT NULL CHECK (elevation_m BETWEEN -500 AND 6000),
        time_zone TEXT NOT NULL,
        weather_station_id TEXT REFERENCES weather_station (id),
        removed INTEGER NOT NULL DEFAULT 0 CHECK (removed IN (0, 1))
      ) STRICT;

      -- A runway is both of its directions; headings are true. An end's displaced threshold is part of the length.
      CREATE TABLE runway (
        id TEXT PRIMARY KEY,
        field_id TEXT NOT NULL REFERENCES field (id),
        position INTEGER NOT NULL,
        length_m REAL NOT NULL CHECK (length_m > 0),
        width_m REAL CHECK (width_m > 0),
        surface TEXT NOT NULL,
        first_ident TEXT NOT NULL,
        first_true_heading_deg REAL NOT NULL CHECK (first_true_heading_deg >= 0 AND first_true_heading_deg < 360),
        first_displaced_threshold_m REAL NOT NULL CHECK (first_displaced_threshold_m >= 0),
        second_ident TEXT NOT NULL,
        second_true_heading_deg REAL NOT NULL CHECK (second_true_heading_deg >= 0 AND second_true_heading_deg < 360),
        second_displaced_threshold_m REAL NOT NULL CHECK (second_displaced_threshold_m >= 0),
        removed INTEGER NOT NULL DEFAULT 0 CHECK (removed IN (0, 1))
      ) STRICT;
      CREATE INDEX runway_field ON runway (field_id);
    `);
  },
};
