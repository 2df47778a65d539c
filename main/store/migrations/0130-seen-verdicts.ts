import type { Migration } from './define.ts';

export const seenVerdicts: Migration = {
  version: 130,
  brings:
    'verdicts as somebody looked at them last, so that a later change of one is told after a restart, too',
  up: (db) => {
    db.exec(`
      -- Read and written as a whole. What was said then, not what holds now: nothing is ever computed from it.
      CREATE TABLE seen_verdict (
        aircraft_id TEXT NOT NULL REFERENCES aircraft (id),
        about TEXT NOT NULL CHECK (about IN ('loadings', 'scenarios')),
        verdicts_json TEXT NOT NULL CHECK (json_valid(verdicts_json)),
        PRIMARY KEY (aircraft_id, about)
      ) STRICT;
    `);
  },
};
