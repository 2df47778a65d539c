import type { Migration } from './define.ts';

export const dividedMoments: Migration = {
  version: 105,
  brings: 'moments as manuals print them, divided by 100 or 1000',
  up: (db) => {
    db.exec(`
      -- NULL: printed whole. Figures are kept whole in either case.
      ALTER TABLE aircraft ADD COLUMN printed_moment_per INTEGER CHECK (printed_moment_per IN (100, 1000));
    `);
  },
};
