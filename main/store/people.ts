import type Database from 'better-sqlite3';
import type { PersonRecord } from '../../shared-calc/loading/records.ts';
import type { Kept } from './kept.ts';
import { putRow } from './put-row.ts';

interface PersonRow {
  id: string;
  name: string;
  kind: PersonRecord['kind'];
  mass_kg: number;
  known: PersonRecord['known'];
  known_on: string | null;
  sd_kg: number;
  bias_kg: number;
  note: string;
  removed: number;
}

/** The people and things on the list, by name; with `withRemoved` also those that older loadings still name. */
export function readPeople(db: Database.Database, withRemoved: boolean): Kept<PersonRecord>[] {
  return db
    .prepare<[number], PersonRow>(
      'SELECT * FROM person WHERE removed <= ? ORDER BY kind, name COLLATE NOCASE, id',
    )
    .all(withRemoved ? 1 : 0)
    .map(person);
}

export function readPerson(db: Database.Database, id: string): Kept<PersonRecord> | null {
  const row = db.prepare<[string], PersonRow>('SELECT * FROM person WHERE id = ?').get(id);
  return row === undefined ? null : person(row);
}

export function writePerson(db: Database.Database, { record, removed }: Kept<PersonRecord>): void {
  putRow(db, 'person', {
    id: record.id,
    name: record.name,
    kind: record.kind,
    mass_kg: record.massKg,
    known: record.known,
    known_on: record.knownOn,
    sd_kg: record.sdKg,
    bias_kg: record.biasKg,
    note: record.note,
    removed: removed ? 1 : 0,
  });
}

function person(row: PersonRow): Kept<PersonRecord> {
  const record: PersonRecord = {
    id: row.id,
    name: row.name,
    kind: row.kind,
    massKg: row.mass_kg,
    known: row.known,
    knownOn: row.known_on,
    sdKg: row.sd_kg,
    biasKg: row.bias_kg,
    note: row.note,
  };
  return { record, removed: row.removed === 1 };
}
