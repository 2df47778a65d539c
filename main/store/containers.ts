import type Database from 'better-sqlite3';
import type { ContainerRecord } from '../../shared-calc/fuel/records.ts';
import type { Kept } from './kept.ts';
import { putRow } from './put-row.ts';

interface ContainerRow {
  id: string;
  name: string;
  nominal_l: number | null;
  how: ContainerRecord['how'];
  scale_sd_ratio: number;
  pour_sd_l: number;
  density_kg_per_l: number | null;
  density_at_c: number | null;
  removed: number;
}

/** The containers on the list, by name; with `withRemoved` also those that older tests still name. */
export function readContainers(db: Database.Database, withRemoved: boolean): Kept<ContainerRecord>[] {
  return db
    .prepare<[number], ContainerRow>(
      'SELECT * FROM container WHERE removed <= ? ORDER BY name COLLATE NOCASE, id',
    )
    .all(withRemoved ? 1 : 0)
    .map(containerOf);
}

export function readContainer(db: Database.Database, id: string): Kept<ContainerRecord> | null {
  const row = db.prepare<[string], ContainerRow>('SELECT * FROM container WHERE id = ?').get(id);
  return row === undefined ? null : containerOf(row);
}

export function writeContainer(db: Database.Database, { record, removed }: Kept<ContainerRecord>): void {
  putRow(db, 'container', {
    id: record.id,
    name: record.name,
    nominal_l: record.nominalL,
    how: record.how,
    scale_sd_ratio: record.scaleSdRatio,
    pour_sd_l: record.pourSdL,
    density_kg_per_l: record.weighed?.densityKgPerL ?? null,
    density_at_c: record.weighed?.temperatureC ?? null,
    removed: removed ? 1 : 0,
  });
}

function containerOf(row: ContainerRow): Kept<ContainerRecord> {
  return {
    record: {
      id: row.id,
      name: row.name,
      nominalL: row.nominal_l,
      how: row.how,
      scaleSdRatio: row.scale_sd_ratio,
      pourSdL: row.pour_sd_l,
      weighed:
        row.density_kg_per_l === null || row.density_at_c === null
          ? null
          : { densityKgPerL: row.density_kg_per_l, temperatureC: row.density_at_c },
    },
    removed: row.removed === 1,
  };
}
