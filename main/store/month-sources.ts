import type Database from 'better-sqlite3';

/** What one import brought to one month of a station's record. */
export interface MonthSource {
  monthStartEpochS: number;
  importId: number;
  observationCount: number;
}

/** Which finished imports have observations in which months (UTC), in order of time and of import. */
export function monthSources(db: Database.Database, stationId: string): MonthSource[] {
  return db
    .prepare<[string], MonthSource>(
      `SELECT b.month_start_epoch_s AS monthStartEpochS, b.import_id AS importId,
         SUM(b.observation_count) AS observationCount
       FROM observation_block b JOIN weather_import i ON i.id = b.import_id AND i.finished_epoch_s IS NOT NULL
       WHERE b.station_id = ? GROUP BY b.month_start_epoch_s, b.import_id
       ORDER BY b.month_start_epoch_s, b.import_id`,
    )
    .all(stationId);
}
