import type Database from 'better-sqlite3';

export interface WeatherStation {
  id: string;
  /** USAF and WBAN number in NOAA's list, or null where a person gave the place. */
  listKey: string | null;
  name: string;
  identifier: string | null;
  latitudeDeg: number;
  longitudeDeg: number;
  elevationM: number;
  placeFrom: 'station list' | 'typed' | 'file';
}

interface Row {
  id: string;
  list_key: string | null;
  name: string;
  identifier: string | null;
  latitude_deg: number;
  longitude_deg: number;
  elevation_m: number;
  place_from: WeatherStation['placeFrom'];
}

export function weatherStation(db: Database.Database, id: string): WeatherStation | null {
  const row = db.prepare<[string], Row>('SELECT * FROM weather_station WHERE id = ?').get(id);
  return row === undefined ? null : fromRow(row);
}

export function weatherStationOfList(db: Database.Database, listKey: string): WeatherStation | null {
  const row = db.prepare<[string], Row>('SELECT * FROM weather_station WHERE list_key = ?').get(listKey);
  return row === undefined ? null : fromRow(row);
}

/** The station outside the list whose place came from records under this identifier. */
export function weatherStationOfRecords(db: Database.Database, identifier: string): WeatherStation | null {
  const row = db
    .prepare<[string], Row>(
      "SELECT * FROM weather_station WHERE list_key IS NULL AND place_from = 'file' AND identifier = ?",
    )
    .get(identifier);
  return row === undefined ? null : fromRow(row);
}

export function insertWeatherStation(db: Database.Database, station: WeatherStation): void {
  db.prepare(
    `INSERT INTO weather_station (id, list_key, name, identifier, latitude_deg, longitude_deg, elevation_m, place_from)
     VALUES (?, ?, ?, ?, ?, ?, ?, ?)`,
  ).run(
    station.id,
    station.listKey,
    station.name,
    station.identifier,
    station.latitudeDeg,
    station.longitudeDeg,
    station.elevationM,
    station.placeFrom,
  );
}

export interface StationWithRecord extends WeatherStation {
  /** Observations stored, overlaps counted as often as they were imported. */
  observationCount: number;
  firstEpochS: number;
  lastEpochS: number;
}

/** Stations that have anything to show: at least one finished import with observations. */
export function stationsWithRecords(db: Database.Database): StationWithRecord[] {
  return db
    .prepare<[], Row & { observation_count: number; first_epoch_s: number; last_epoch_s: number }>(
      `SELECT s.*, SUM(i.new_count) AS observation_count, MIN(i.first_epoch_s) AS first_epoch_s,
              MAX(i.last_epoch_s) AS last_epoch_s
       FROM weather_station s JOIN weather_import i ON i.station_id = s.id
       WHERE i.finished_epoch_s IS NOT NULL AND i.observation_count > 0
       GROUP BY s.id ORDER BY s.name, s.id`,
    )
    .all()
    .map((row) => ({
      ...fromRow(row),
      observationCount: row.observation_count,
      firstEpochS: row.first_epoch_s,
      lastEpochS: row.last_epoch_s,
    }));
}

function fromRow(row: Row): WeatherStation {
  return {
    id: row.id,
    listKey: row.list_key,
    name: row.name,
    identifier: row.identifier,
    latitudeDeg: row.latitude_deg,
    longitudeDeg: row.longitude_deg,
    elevationM: row.elevation_m,
    placeFrom: row.place_from,
  };
}
