import type { Migration } from './define.ts';

export const importBatches: Migration = {
  version: 80,
  brings:
    'imports of many files at once, files told when they come again, fields taken from a list of airports',
  up: (db) => {
    db.exec(`
      -- Files imported by one act share it, and can be taken back by one.
      ALTER TABLE weather_import ADD COLUMN batch_id TEXT;
      -- SHA-256 and size of the file's own bytes, packed as they are; the same again add nothing.
      ALTER TABLE weather_import ADD COLUMN content_sha256 TEXT;
      ALTER TABLE weather_import ADD COLUMN content_bytes INTEGER;
      -- How it was read, as JSON: the readers' revision and what a person had to say about the file.
      ALTER TABLE weather_import ADD COLUMN read_as_json TEXT CHECK (read_as_json IS NULL OR json_valid(read_as_json));
      -- How many stations the file has rows of; one import takes those of one.
      ALTER TABLE weather_import ADD COLUMN stations_in_file INTEGER;
      CREATE INDEX weather_import_batch ON weather_import (batch_id);

      -- The figures of the bundled list of airports as they were when the field was taken from it; NULL for one by hand.
      -- A figure of the field that differs from them was corrected by a person.
      ALTER TABLE field ADD COLUMN listed_json TEXT CHECK (listed_json IS NULL OR json_valid(listed_json));
      -- The runway's number in those figures.
      ALTER TABLE runway ADD COLUMN listed_id INTEGER;
    `);
  },
};
