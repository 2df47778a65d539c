import type Database from 'better-sqlite3';
import type { FigureSource, StationGroupRecord, StationRecord } from '../../shared-calc/loading/records.ts';
import { putRow } from './put-row.ts';

type Db = Database.Database;

interface StationRow {
  id: string;
  name: string;
  kind: StationRecord['kind'];
  foremost_arm_m: number;
  aftmost_arm_m: number;
  adjustable: number;
  lateral_arm_m: number | null;
  least_kg: number | null;
  most_kg: number | null;
  figures_from: FigureSource['from'];
  compared_on: string | null;
}

export function readStations(db: Db, aircraftId: string): StationRecord[] {
  return db
    .prepare<[string], StationRow>(
      'SELECT * FROM station WHERE aircraft_id = ? AND removed = 0 ORDER BY position',
    )
    .all(aircraftId)
    .map((row) => ({
      id: row.id,
      name: row.name,
      kind: row.kind,
      arm:
        row.adjustable === 1
          ? { kind: 'adjustable', foremostM: row.foremost_arm_m, aftmostM: row.aftmost_arm_m }
          : { kind: 'fixed', armM: row.foremost_arm_m },
      ...(row.lateral_arm_m === null ? {} : { lateralArmM: row.lateral_arm_m }),
      leastKg: row.least_kg,
      mostKg: row.most_kg,
      source: { from: row.figures_from, comparedOn: row.compared_on },
    }));
}

export function writeStations(db: Db, aircraftId: string, stations: readonly StationRecord[]): void {
  db.prepare('UPDATE station SET removed = 1 WHERE aircraft_id = ?').run(aircraftId);
  stations.forEach((station, position) => {
    const { arm } = station;
    putRow(db, 'station', {
      id: station.id,
      aircraft_id: aircraftId,
      position,
      name: station.name,
      kind: station.kind,
      foremost_arm_m: arm.kind === 'fixed' ? arm.armM : arm.foremostM,
      aftmost_arm_m: arm.kind === 'fixed' ? arm.armM : arm.aftmostM,
      adjustable: arm.kind === 'adjustable' ? 1 : 0,
      lateral_arm_m: station.lateralArmM ?? null,
      least_kg: station.leastKg,
      most_kg: station.mostKg,
      figures_from: station.source.from,
      compared_on: station.source.comparedOn,
      removed: 0,
    });
  });
}

export function readGroups(db: Db, aircraftId: string): StationGroupRecord[] {
  const members = db
    .prepare<[string], string>(
      'SELECT station_id FROM station_group_member WHERE group_id = ? ORDER BY position',
    )
    .pluck();
  return db
    .prepare<[string], { id: string; name: string; empty_part_kg: number; most_kg: number }>(
      'SELECT * FROM station_group WHERE aircraft_id = ? ORDER BY position',
    )
    .all(aircraftId)
    .map((row) => ({
      id: row.id,
      name: row.name,
      stationIds: members.all(row.id),
      emptyPartKg: row.empty_part_kg,
      mostKg: row.most_kg,
    }));
}

// Nothing refers to groups and envelopes, so they are simply written anew.
export function writeGroups(db: Db, aircraftId: string, groups: readonly StationGroupRecord[]): void {
  db.prepare('DELETE FROM station_group WHERE aircraft_id = ?').run(aircraftId);
  groups.forEach((group, position) => {
    putRow(db, 'station_group', {
      id: group.id,
      aircraft_id: aircraftId,
      position,
      name: group.name,
      empty_part_kg: group.emptyPartKg,
      most_kg: group.mostKg,
    });
    const insert = db.prepare(
      'INSERT INTO station_group_member (group_id, station_id, position) VALUES (?, ?, ?)',
    );
    group.stationIds.forEach((stationId, index) => insert.run(group.id, stationId, index));
  });
}

/** Stations that the aeroplane had once; loadings may still name them. */
export function removedStations(db: Db, aircraftId: string): { id: string; name: string }[] {
  return db
    .prepare<[string], { id: string; name: string }>(
      'SELECT id, name FROM station WHERE aircraft_id = ? AND removed = 1',
    )
    .all(aircraftId);
}
