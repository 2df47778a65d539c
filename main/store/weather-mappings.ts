import type Database from 'better-sqlite3';
import { mappingSchema, type Mapping } from '../weather-import/mapped/mapping.ts';

/** How tables of this shape were read last; null where none was, or where what was kept is no longer understood. */
export function mappingOfShape(db: Database.Database, shape: string): Mapping | null {
  const json = db
    .prepare<[string], string>('SELECT mapping_json FROM weather_mapping WHERE header_shape = ?')
    .pluck()
    .get(shape);
  if (json === undefined) return null;
  const { data } = mappingSchema.safeParse(JSON.parse(json));
  return data ?? null;
}

/** Remember how a table was read, for the next one of its shape. */
export function rememberMapping(
  db: Database.Database,
  shape: string,
  mapping: Mapping,
  usedEpochS: number,
): void {
  db.prepare(
    `INSERT INTO weather_mapping (header_shape, mapping_json, used_epoch_s) VALUES (?, ?, ?)
     ON CONFLICT (header_shape) DO UPDATE SET mapping_json = excluded.mapping_json, used_epoch_s = excluded.used_epoch_s`,
  ).run(shape, JSON.stringify(mapping), usedEpochS);
}
