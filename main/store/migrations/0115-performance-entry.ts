import type { Migration } from './define.ts';

export const performanceEntry: Migration = {
  version: 115,
  brings: "the day on which the manual's tables were entered",
  up: (db) => {
    db.exec(`
      -- The day on which a printed figure of the table was entered or changed last; NULL for tables from before this was kept.
      ALTER TABLE performance_table ADD COLUMN entered_on TEXT;
    `);
  },
};
