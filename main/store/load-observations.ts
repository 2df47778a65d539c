import type Database from 'better-sqlite3';
import {
  columnBlobs,
  columnNames,
  flag,
  missing,
  type ColumnName,
  type ObservationColumns,
} from './observation-columns.ts';

interface BlockRow extends Record<string, Buffer | number | null> {
  month_start_epoch_s: number;
  observation_count: number;
  minute_of_month: Buffer;
}

const finishedBlocks = `FROM observation_block b JOIN weather_import i ON i.id = b.import_id
       WHERE b.station_id = ? AND i.finished_epoch_s IS NOT NULL`;

/**
 * Every observation of a station from all finished imports, in order of time, as columns.
 *
 * Where imports overlap, of one minute that report counts which is usable for density altitude; among several, that
 * of the oldest import, and within it the first read. So an import never changes what an older one said, and taking
 * one back brings out what it stood over.
 */
export function loadObservations(db: Database.Database, stationId: string): ObservationColumns {
  const { total } = db
    .prepare<[string], { total: number }>(
      `SELECT coalesce(sum(b.observation_count), 0) AS total ${finishedBlocks}`,
    )
    .get(stationId) ?? { total: 0 };
  // One block at a time: all of them at once would hold the record a second time.
  const rows = db
    .prepare<[string], BlockRow>(
      `SELECT b.month_start_epoch_s, b.observation_count, b.minute_of_month, ${Object.values(columnBlobs)
        .map((blob) => `b.${blob}`)
        .join(', ')} ${finishedBlocks}
       ORDER BY b.month_start_epoch_s, b.import_id, b.part`,
    )
    .iterate(stationId);
  const all = allocate(total);
  let at = 0;
  let month = { startEpochS: NaN, from: 0, blocks: 0 };
  for (const row of rows) {
    if (row.month_start_epoch_s !== month.startEpochS) {
      at = month.from + tidyMonth(all, month.from, at, month.blocks > 1);
      month = { startEpochS: row.month_start_epoch_s, from: at, blocks: 0 };
    }
    at += copyBlock(row, all, at);
    month.blocks++;
  }
  at = month.from + tidyMonth(all, month.from, at, month.blocks > 1);
  return at === total ? all : cut(all, at);
}

function allocate(count: number): ObservationColumns {
  return {
    epochMinute: new Int32Array(count),
    ...(Object.fromEntries(columnNames.map((name) => [name, new Int16Array(count)])) as Record<
      ColumnName,
      Int16Array
    >),
  };
}

function copyBlock(row: BlockRow, all: ObservationColumns, at: number): number {
  const count = row.observation_count;
  const startMinute = row.month_start_epoch_s / 60;
  const minutes = row.minute_of_month;
  for (let i = 0; i < count; i++)
    all.epochMinute[at + i] = startMinute + (minutes[2 * i] ?? 0) + 256 * (minutes[2 * i + 1] ?? 0);
  for (const name of columnNames) {
    const blob = row[columnBlobs[name]];
    const target = all[name];
    if (blob instanceof Uint8Array)
      new Uint8Array(target.buffer, target.byteOffset + 2 * at, 2 * count).set(blob);
    else if (name !== 'flags') target.fill(missing, at, at + count);
  }
  return count;
}

/** Sort a month that came in several blocks, and keep one report a minute. Gives how many are left. */
function tidyMonth(all: ObservationColumns, from: number, to: number, severalBlocks: boolean): number {
  const { epochMinute } = all;
  let repeated = false;
  if (!severalBlocks) {
    for (let i = from + 1; i < to && !repeated; i++) repeated = epochMinute[i] === epochMinute[i - 1];
    if (!repeated) return to - from;
  }
  const order = Uint32Array.from({ length: to - from }, (_, i) => from + i);
  // Blocks were copied oldest import first, so that the place itself settles equal minutes.
  if (severalBlocks) order.sort((a, b) => (epochMinute[a] ?? 0) - (epochMinute[b] ?? 0) || a - b);
  const kept: number[] = [];
  for (let i = 0; i < order.length;) {
    const first = order[i] ?? 0;
    let chosen = first;
    let found = usableAt(all, first);
    for (i++; i < order.length && epochMinute[order[i] ?? 0] === epochMinute[first]; i++) {
      if (!found && usableAt(all, order[i] ?? 0)) {
        chosen = order[i] ?? 0;
        found = true;
      }
    }
    kept.push(chosen);
  }
  epochMinute.set(
    kept.map((place) => epochMinute[place] ?? 0),
    from,
  );
  for (const name of columnNames) {
    const column = all[name];
    column.set(
      kept.map((place) => column[place] ?? missing),
      from,
    );
  }
  return kept.length;
}

/** As in weather-import/tally.ts, over columns. */
export function usableAt(columns: ObservationColumns, i: number): boolean {
  return (
    columns.temperatureC100[i] !== missing &&
    columns.dewPointC100[i] !== missing &&
    ((columns.flags[i] ?? 0) & flag.dewPointAboveTemperature) === 0 &&
    (columns.stationPressureHpa100[i] !== missing ||
      columns.altimeterSettingHpa100[i] !== missing ||
      columns.seaLevelPressureHpa100[i] !== missing)
  );
}

function cut(all: ObservationColumns, count: number): ObservationColumns {
  return {
    epochMinute: all.epochMinute.subarray(0, count),
    ...(Object.fromEntries(columnNames.map((name) => [name, all[name].subarray(0, count)])) as Record<
      ColumnName,
      Int16Array
    >),
  };
}
