import type { Migration } from './define.ts';

export const lateralArmsAndFuelKinds: Migration = {
  version: 100,
  brings: 'lateral arms and limits, and fuels by their kind and temperature',
  up: (db) => {
    db.exec(`
      -- Lateral arms are metres to the right of the manual's own line, negative to the left; NULL where none was entered.
      -- NULL across: the manual gives none at all.
      ALTER TABLE aircraft ADD COLUMN lateral_across TEXT CHECK (lateral_across IN ('arm', 'moment'));
      ALTER TABLE aircraft ADD COLUMN lateral_left_arm_m REAL;
      ALTER TABLE aircraft ADD COLUMN lateral_right_arm_m REAL;
      ALTER TABLE aircraft ADD COLUMN lateral_left_moment_kg_m REAL;
      ALTER TABLE aircraft ADD COLUMN lateral_right_moment_kg_m REAL;
      ALTER TABLE aircraft ADD COLUMN oil_lateral_arm_m REAL;
      ALTER TABLE station ADD COLUMN lateral_arm_m REAL;
      ALTER TABLE tank ADD COLUMN lateral_arm_m REAL;
      ALTER TABLE weighing ADD COLUMN lateral_arm_m REAL;
      ALTER TABLE weighing ADD COLUMN lateral_arm_sd_m REAL;
      ALTER TABLE weighing_scale ADD COLUMN lateral_arm_m REAL;

      -- NULL where the typed density counts.
      ALTER TABLE tank ADD COLUMN blend_kind TEXT CHECK (blend_kind IN ('avgas', 'motor gasoline', 'own'));
      ALTER TABLE tank ADD COLUMN blend_ethanol_percent REAL
        CHECK ((blend_kind IS 'motor gasoline') = (blend_ethanol_percent IS NOT NULL));
      ALTER TABLE tank ADD COLUMN blend_at_15c_kg_per_l REAL
        CHECK ((blend_kind IS 'own') = (blend_at_15c_kg_per_l IS NOT NULL));
      -- NULL where nobody measured it.
      ALTER TABLE loading_fuel ADD COLUMN temperature_c REAL;
    `);
  },
};
