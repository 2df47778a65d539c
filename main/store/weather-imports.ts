import type Database from 'better-sqlite3';
import type { Skipped } from '../weather-import/problems.ts';
import {
  columnBlobs,
  columnNames,
  missing,
  type ColumnName,
  type MonthBlock,
  type Nature,
} from './observation-columns.ts';

export interface ImportStart {
  stationId: string;
  fileName: string;
  begunEpochS: number;
  /** The same for all files that are imported by one act. */
  batchId: string;
}

/** Begin an import. Nobody sees it, or anything in it, until finishImport. */
export function beginImport(db: Database.Database, start: ImportStart): number {
  const { lastInsertRowid } = db
    .prepare(
      'INSERT INTO weather_import (station_id, file_name, begun_epoch_s, batch_id) VALUES (?, ?, ?, ?)',
    )
    .run(start.stationId, start.fileName, start.begunEpochS, start.batchId);
  return Number(lastInsertRowid);
}

const insertBlockSql = `INSERT INTO observation_block
  (station_id, month_start_epoch_s, import_id, part, observation_count, minute_of_month, ${Object.values(columnBlobs).join(', ')})
  VALUES (?, ?, ?, ?, ?, ?, ${columnNames.map(() => '?').join(', ')})`;

/**
 * Put a few months away in one short transaction.
 * @returns how many of their observations the station does not have yet, from finished imports or from the files of the
 * same act that were read before
 */
export function addBlocks(
  db: Database.Database,
  importId: number,
  stationId: string,
  blocks: readonly MonthBlock[],
): number {
  const insert = db.prepare(insertBlockSql);
  const before = db.prepare<[number, string, number], BlockRow>(blocksBeforeSql);
  let newCount = 0;
  db.transaction(() => {
    for (const block of blocks) {
      const rows = before.all(importId, stationId, block.monthStartEpochS);
      newCount += countNew(block, rows.map(storedMonth));
      insert.run(
        stationId,
        block.monthStartEpochS,
        importId,
        block.part,
        block.observationCount,
        bytesOf(block.minuteOfMonth),
        ...columnNames.map((name) => {
          const column = block.columns[name];
          return column === null ? null : bytesOf(column);
        }),
      );
    }
  }).immediate();
  return newCount;
}

export interface ImportEnd {
  finishedEpochS: number;
  kind: string;
  nature: Nature;
  observationCount: number;
  newCount: number;
  firstEpochS: number | null;
  lastEpochS: number | null;
  skippedJson: string;
  /** null where it could not be taken: the file is then read again when it comes again. */
  contentSha256: string | null;
  contentBytes: number;
  /** How the file was read, as importOfContent compares it. */
  readAsJson: string;
  stationsInFile: number;
}

/** Make imports visible, whole and all together, in one step. */
export function finishImports(
  db: Database.Database,
  imports: readonly { importId: number; end: ImportEnd }[],
): void {
  const finish = db.prepare(
    `UPDATE weather_import SET finished_epoch_s = :finishedEpochS, kind = :kind, nature = :nature,
       observation_count = :observationCount, new_count = :newCount, first_epoch_s = :firstEpochS,
       last_epoch_s = :lastEpochS, skipped_json = :skippedJson, content_sha256 = :contentSha256,
       content_bytes = :contentBytes, read_as_json = :readAsJson, stations_in_file = :stationsInFile
     WHERE id = :importId`,
  );
  db.transaction(() => {
    for (const { importId, end } of imports) finish.run({ importId, ...end });
  }).immediate();
}

/**
 * Take an import away whole, and its station where nothing else stands on it.
 * Other imports are complete in themselves, so nothing of theirs goes with it, even where they overlapped.
 */
export function removeImport(db: Database.Database, importId: number): void {
  db.transaction(() => {
    const row = db
      .prepare<[number], { station_id: string }>('SELECT station_id FROM weather_import WHERE id = ?')
      .get(importId);
    if (row === undefined) return;
    db.prepare('DELETE FROM observation_block WHERE import_id = ?').run(importId);
    db.prepare('DELETE FROM weather_import WHERE id = ?').run(importId);
    db.prepare(
      `DELETE FROM weather_station WHERE id = :id
         AND NOT EXISTS (SELECT 1 FROM weather_import WHERE station_id = :id)
         AND NOT EXISTS (SELECT 1 FROM field WHERE weather_station_id = :id)`,
    ).run({ id: row.station_id });
  }).immediate();
}

/** Take away, in one step, every import of an act: of one that was cancelled, or of one that is taken back. */
export function removeBatch(db: Database.Database, batchId: string): void {
  db.transaction(() => {
    for (const id of db
      .prepare<[string], number>('SELECT id FROM weather_import WHERE batch_id = ?')
      .pluck()
      .all(batchId))
      removeImport(db, id);
  }).immediate();
}

/** True while an import is running: what a crash left is swept before anything else. */
export function hasUnfinishedImport(db: Database.Database): boolean {
  return db.prepare('SELECT 1 FROM weather_import WHERE finished_epoch_s IS NULL').get() !== undefined;
}

/** Remove what an import left behind that was ended by a crash. Called when a library is opened for writing. */
export function sweepUnfinishedImports(db: Database.Database): number {
  const unfinished = db
    .prepare<[], { id: number }>('SELECT id FROM weather_import WHERE finished_epoch_s IS NULL')
    .all();
  for (const { id } of unfinished) removeImport(db, id);
  return unfinished.length;
}

export interface FinishedImport {
  importId: number;
  /** Shared by the files that were imported by one act; null for imports from before there were such acts. */
  batchId: string | null;
  stationId: string;
  stationName: string;
  kind: string;
  nature: Nature;
  fileName: string;
  finishedEpochS: number;
  observationCount: number;
  /** Observations that no older import had. */
  newCount: number;
  firstEpochS: number | null;
  lastEpochS: number | null;
  skipped: Skipped[];
}

interface ImportRow {
  id: number;
  batch_id: string | null;
  station_id: string;
  station_name: string;
  kind: string;
  nature: Nature;
  file_name: string;
  finished_epoch_s: number;
  observation_count: number;
  new_count: number;
  first_epoch_s: number | null;
  last_epoch_s: number | null;
  skipped_json: string;
}

/** Every finished import, newest first. */
export function finishedImports(db: Database.Database): FinishedImport[] {
  return db
    .prepare<[], ImportRow>(
      `SELECT i.*, s.name AS station_name FROM weather_import i JOIN weather_station s ON s.id = i.station_id
       WHERE i.finished_epoch_s IS NOT NULL ORDER BY i.id DESC`,
    )
    .all()
    .map((row) => ({
      importId: row.id,
      batchId: row.batch_id,
      stationId: row.station_id,
      stationName: row.station_name,
      kind: row.kind,
      nature: row.nature,
      fileName: row.file_name,
      finishedEpochS: row.finished_epoch_s,
      observationCount: row.observation_count,
      newCount: row.new_count,
      firstEpochS: row.first_epoch_s,
      lastEpochS: row.last_epoch_s,
      skipped: JSON.parse(row.skipped_json) as Skipped[],
    }));
}

/** A finished import of the very same bytes. */
export interface KnownContent {
  importId: number;
  stationId: string;
  stationName: string;
  fileName: string;
  finishedEpochS: number;
  observationCount: number;
  readAsJson: string;
  stationsInFile: number;
}

/** Whether any finished import is of a file of that many bytes: only then is a sum over them worth its time. */
export function hasImportOfSize(db: Database.Database, contentBytes: number): boolean {
  return (
    db
      .prepare('SELECT 1 FROM weather_import WHERE content_bytes = ? AND finished_epoch_s IS NOT NULL')
      .get(contentBytes) !== undefined
  );
}

/** The finished imports of a file with this sum, oldest first. */
export function importsOfContent(db: Database.Database, contentSha256: string): KnownContent[] {
  return db
    .prepare<[string], KnownContent>(
      `SELECT i.id AS importId, i.station_id AS stationId, s.name AS stationName, i.file_name AS fileName,
         i.finished_epoch_s AS finishedEpochS, i.observation_count AS observationCount,
         i.read_as_json AS readAsJson, i.stations_in_file AS stationsInFile
       FROM weather_import i JOIN weather_station s ON s.id = i.station_id
       WHERE i.content_sha256 = ? AND i.finished_epoch_s IS NOT NULL ORDER BY i.id`,
    )
    .all(contentSha256);
}

type BlockRow = { observation_count: number; minute_of_month: Buffer } & Record<string, Buffer | null>;

interface StoredMonth {
  count: number;
  minutes: Uint16Array;
  columns: Record<ColumnName, Int16Array | null>;
}

/** Blocks of a station's month from finished imports or from files of the same act that were read before. */
const blocksBeforeSql = `SELECT b.observation_count, b.minute_of_month, ${Object.values(columnBlobs)
  .map((blob) => `b.${blob}`)
  .join(', ')}
  FROM observation_block b JOIN weather_import i ON i.id = b.import_id
  JOIN weather_import own ON own.id = ?
  WHERE b.station_id = ? AND b.month_start_epoch_s = ? AND i.id <> own.id
    AND (i.finished_epoch_s IS NOT NULL OR i.batch_id = own.batch_id)`;

function storedMonth(row: BlockRow): StoredMonth {
  return {
    count: row.observation_count,
    minutes: new Uint16Array(copyOf(row.minute_of_month)),
    columns: Object.fromEntries(
      columnNames.map((name) => {
        const blob = row[columnBlobs[name]];
        return [name, blob == null ? null : new Int16Array(copyOf(blob))];
      }),
    ) as StoredMonth['columns'],
  };
}

/** How many observations of a block none of the stored months has with the same minute and the same values. */
function countNew(block: MonthBlock, stored: readonly StoredMonth[]): number {
  if (stored.length === 0) return block.observationCount;
  let known = 0;
  const places = stored.map(() => 0);
  for (let i = 0; i < block.observationCount; i++) {
    const minute = block.minuteOfMonth[i] ?? 0;
    const found = stored.some((month, which) => {
      let at = places[which] ?? 0;
      while (at < month.count && (month.minutes[at] ?? 0) < minute) at++;
      places[which] = at;
      for (; at < month.count && month.minutes[at] === minute; at++)
        if (sameValues(block.columns, i, month.columns, at)) return true;
      return false;
    });
    if (found) known++;
  }
  return block.observationCount - known;
}

function sameValues(
  a: Record<ColumnName, Int16Array | null>,
  i: number,
  b: Record<ColumnName, Int16Array | null>,
  j: number,
): boolean {
  for (const name of columnNames) {
    const absent = name === 'flags' ? 0 : missing;
    if ((a[name]?.[i] ?? absent) !== (b[name]?.[j] ?? absent)) return false;
  }
  return true;
}

function bytesOf(column: Uint16Array | Int16Array): Buffer {
  return Buffer.from(column.buffer, column.byteOffset, column.byteLength);
}

/** A blob's bytes in a buffer of their own, so that 16-bit views may be laid over it. */
function copyOf(blob: Buffer): ArrayBuffer {
  const own = new ArrayBuffer(blob.length);
  new Uint8Array(own).set(blob);
  return own;
}

/** The finished imports of a station: enough to know whether anything about its observations has changed. */
export function importsOfStation(
  db: Database.Database,
  stationId: string,
): { importId: number; nature: Nature; finishedEpochS: number }[] {
  return db
    .prepare<[string], { importId: number; nature: Nature; finishedEpochS: number }>(
      `SELECT id AS importId, nature, finished_epoch_s AS finishedEpochS FROM weather_import
       WHERE station_id = ? AND finished_epoch_s IS NOT NULL ORDER BY id`,
    )
    .all(stationId);
}
