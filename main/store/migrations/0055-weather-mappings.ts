import type { Migration } from './define.ts';

// How a person said that tables of one shape are to be read. Flag bits that observations gained since 50:
// 64 wind suspect by its source; 128 spike, 256 stuck (against the reports around it); 512 temperature in whole degrees.
export const weatherMappings: Migration = {
  version: 55,
  brings: 'how tables of weather are to be read, by the shape of their header',
  up: (db) => {
    db.exec(`
      CREATE TABLE weather_mapping (
        -- The header's names in lower case, in order, with unit separators (U+001F) between them.
        header_shape TEXT PRIMARY KEY,
        mapping_json TEXT NOT NULL CHECK (json_valid(mapping_json)),
        used_epoch_s REAL NOT NULL
      ) STRICT;
    `);
  },
};
