import type Database from 'better-sqlite3';
import type { ListedAirport } from '../airports/airport-list.ts';
import type { Kept } from './kept.ts';
import { putRow } from './put-row.ts';

/** One direction of a runway. */
export interface RunwayEnd {
  /** As painted: '09', '27L'. */
  ident: string;
  /** Direction of take-off from this end, true. */
  trueHeadingDeg: number;
  /** Part of the length before the landing threshold. */
  displacedThresholdM: number;
}

export interface RunwayRecord {
  id: string;
  lengthM: number;
  /** null where not known. */
  widthM: number | null;
  surface: string;
  /** Uphill when rolled from the first end, as a ratio; downhill is negative. null where not known. */
  slopeRatio: number | null;
  ends: [RunwayEnd, RunwayEnd];
  /** Its number among the runways of the field's listed figures; null for one by hand. */
  listedId: number | null;
}

export interface FieldRecord {
  id: string;
  name: string;
  identifier: string | null;
  latitudeDeg: number;
  longitudeDeg: number;
  elevationM: number;
  /** IANA name: 'America/Denver'. */
  timeZone: string;
  /** The station whose observations stand for the field's air. */
  weatherStationId: string | null;
  /** The figures of the list of airports from which it was taken, as they were then; null for one by hand. */
  listed: ListedAirport | null;
  runways: RunwayRecord[];
}

interface FieldRow {
  id: string;
  name: string;
  identifier: string | null;
  latitude_deg: number;
  longitude_deg: number;
  elevation_m: number;
  time_zone: string;
  weather_station_id: string | null;
  listed_json: string | null;
  removed: number;
}

interface RunwayRow {
  id: string;
  length_m: number;
  width_m: number | null;
  surface: string;
  slope_ratio: number | null;
  first_ident: string;
  first_true_heading_deg: number;
  first_displaced_threshold_m: number;
  second_ident: string;
  second_true_heading_deg: number;
  second_displaced_threshold_m: number;
  listed_id: number | null;
}

/** The fields with their runways, by name. */
export function readFields(db: Database.Database): FieldRecord[] {
  return db
    .prepare<[], FieldRow>('SELECT * FROM field WHERE removed = 0 ORDER BY name COLLATE NOCASE, id')
    .all()
    .map((row) => field(db, row).record);
}

/** A field, removed or not; null where there never was one. */
export function readField(db: Database.Database, id: string): Kept<FieldRecord> | null {
  const row = db.prepare<[string], FieldRow>('SELECT * FROM field WHERE id = ?').get(id);
  return row === undefined ? null : field(db, row);
}

/** Write a field as a whole; runways that it no longer has are kept as removed. */
export function writeField(db: Database.Database, { record, removed }: Kept<FieldRecord>): void {
  putRow(db, 'field', {
    id: record.id,
    name: record.name,
    identifier: record.identifier,
    latitude_deg: record.latitudeDeg,
    longitude_deg: record.longitudeDeg,
    elevation_m: record.elevationM,
    time_zone: record.timeZone,
    weather_station_id: record.weatherStationId,
    listed_json: record.listed === null ? null : JSON.stringify(record.listed),
    removed: removed ? 1 : 0,
  });
  db.prepare('UPDATE runway SET removed = 1 WHERE field_id = ?').run(record.id);
  record.runways.forEach(({ ends: [first, second], ...runway }, position) => {
    putRow(db, 'runway', {
      id: runway.id,
      field_id: record.id,
      position,
      length_m: runway.lengthM,
      width_m: runway.widthM,
      surface: runway.surface,
      slope_ratio: runway.slopeRatio,
      first_ident: first.ident,
      first_true_heading_deg: first.trueHeadingDeg,
      first_displaced_threshold_m: first.displacedThresholdM,
      second_ident: second.ident,
      second_true_heading_deg: second.trueHeadingDeg,
      second_displaced_threshold_m: second.displacedThresholdM,
      listed_id: runway.listedId,
      removed: 0,
    });
  });
}

function field(db: Database.Database, row: FieldRow): Kept<FieldRecord> {
  const runways = db
    .prepare<[string], RunwayRow>('SELECT * FROM runway WHERE field_id = ? AND removed = 0 ORDER BY position')
    .all(row.id)
    .map((each): RunwayRecord => ({
      id: each.id,
      lengthM: each.length_m,
      widthM: each.width_m,
      surface: each.surface,
      slopeRatio: each.slope_ratio,
      ends: [
        {
          ident: each.first_ident,
          trueHeadingDeg: each.first_true_heading_deg,
          displacedThresholdM: each.first_displaced_threshold_m,
        },
        {
          ident: each.second_ident,
          trueHeadingDeg: each.second_true_heading_deg,
          displacedThresholdM: each.second_displaced_threshold_m,
        },
      ],
      listedId: each.listed_id,
    }));
  return {
    record: {
      id: row.id,
      name: row.name,
      identifier: row.identifier,
      latitudeDeg: row.latitude_deg,
      longitudeDeg: row.longitude_deg,
      elevationM: row.elevation_m,
      timeZone: row.time_zone,
      weatherStationId: row.weather_station_id,
      listed: row.listed_json === null ? null : (JSON.parse(row.listed_json) as ListedAirport),
      runways,
    },
    removed: row.removed === 1,
  };
}
