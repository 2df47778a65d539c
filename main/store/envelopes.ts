import type Database from 'better-sqlite3';
import type { EnvelopeRecord, FigureSource } from '../../shared-calc/loading/records.ts';
import { putRow } from './put-row.ts';

type Db = Database.Database;

interface EnvelopeRow {
  id: string;
  name: string;
  category: string;
  phase: EnvelopeRecord['phase'];
  across: EnvelopeRecord['across'];
  figures_from: FigureSource['from'];
  compared_on: string | null;
  lowest_is_limit: number;
}

export function readEnvelopes(db: Db, aircraftId: string): EnvelopeRecord[] {
  const vertices = db.prepare<[string], { across: number; massKg: number }>(
    `SELECT coalesce(arm_m, moment_kg_m, mac_percent) AS across, mass_kg AS massKg
     FROM envelope_vertex WHERE envelope_id = ? ORDER BY position`,
  );
  return db
    .prepare<[string], EnvelopeRow>('SELECT * FROM envelope WHERE aircraft_id = ? ORDER BY position')
    .all(aircraftId)
    .map((row) => ({
      id: row.id,
      name: row.name,
      category: row.category,
      phase: row.phase,
      across: row.across,
      vertices: vertices.all(row.id),
      ...(row.lowest_is_limit === 1 ? { lowestIsLimit: true } : {}),
      source: { from: row.figures_from, comparedOn: row.compared_on },
    }));
}

const vertexColumn = { arm: 'arm_m', moment: 'moment_kg_m', mac: 'mac_percent' } as const;

export function writeEnvelopes(db: Db, aircraftId: string, envelopes: readonly EnvelopeRecord[]): void {
  db.prepare('DELETE FROM envelope WHERE aircraft_id = ?').run(aircraftId);
  envelopes.forEach((envelope, position) => {
    putRow(db, 'envelope', {
      id: envelope.id,
      aircraft_id: aircraftId,
      position,
      name: envelope.name,
      category: envelope.category,
      phase: envelope.phase,
      across: envelope.across,
      figures_from: envelope.source.from,
      compared_on: envelope.source.comparedOn,
      lowest_is_limit: envelope.lowestIsLimit === true ? 1 : 0,
    });
    const insert = db.prepare(
      `INSERT INTO envelope_vertex (envelope_id, position, ${vertexColumn[envelope.across]}, mass_kg) VALUES (?, ?, ?, ?)`,
    );
    envelope.vertices.forEach((vertex, index) =>
      insert.run(envelope.id, index, vertex.across, vertex.massKg),
    );
  });
}
