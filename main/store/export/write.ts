import type Database from 'better-sqlite3';
import { closeSync, existsSync, mkdirSync, openSync, rmSync, writeFileSync, writeSync } from 'node:fs';
import { basename, extname, join } from 'node:path';
import { Refusal } from '../../requests/problem.ts';
import { timeForNames } from '../backup-names.ts';
import { codeOf, troubleOf, wordsOf } from '../files.ts';
import { startLook } from '../look-into.ts';
import { openForReading } from '../open.ts';
import { schemaVersion } from '../schema-version.ts';
import { csvLine, type Value } from './csv.ts';
import { exportReadme, type WrittenTable } from './readme.ts';
import { rowsStatement, tablesToExport, type TableToExport } from './read-tables.ts';

export interface ExportOptions {
  nowEpochS: number;
  signal?: AbortSignal;
  /** Hears the table that is being written and how many rows are written so far, of all tables. */
  progress?: (table: string, rowsCount: number) => void;
}

export interface Exported {
  /** The new folder that holds the files. */
  folder: string;
  files: WrittenTable[];
}

/**
 * Write everything in an open library into a new folder inside `into`: a state of one instant, read on a connection
 * of its own, so that saves go on meanwhile.
 *
 * @throws Refusal 'cancelled', 'disk' or 'read-only'; then nothing is left of the export.
 */
export async function exportLibrary(
  libraryPath: string,
  into: string,
  options: ExportOptions,
): Promise<Exported> {
  const db = openForReading(libraryPath);
  try {
    return await writeAll(db, libraryPath, into, options);
  } finally {
    db.close();
  }
}

/**
 * The same for a file that cannot be opened as a library, being damaged or newer: what can be read is written, the
 * README.txt says where reading stopped, and the file is left as it is. Only while no program has it open.
 *
 * @throws Refusal 'library-damaged' where nothing at all can be read
 */
export async function salvageLibrary(
  libraryPath: string,
  into: string,
  options: ExportOptions,
): Promise<Exported> {
  let look;
  try {
    look = startLook(libraryPath);
  } catch (error) {
    throw nothingReadable(libraryPath, error);
  }
  try {
    return await writeAll(look.db, libraryPath, into, options);
  } catch (error) {
    if (troubleOf(error) === 'library-damaged') throw nothingReadable(libraryPath, error);
    throw error;
  } finally {
    look.close();
  }
}

async function writeAll(
  db: Database.Database,
  libraryPath: string,
  into: string,
  options: ExportOptions,
): Promise<Exported> {
  db.exec('BEGIN');
  const tables = tablesToExport(db);
  const folder = newFolder(libraryPath, into, options.nowEpochS);
  try {
    const json = openSync(join(folder, 'library.json'), 'wx');
    const files: WrittenTable[] = [];
    let rowsCount = 0;
    let isFirst = true;
    try {
      const head = {
        application: 'Tarewing',
        format: schemaVersion(db),
        exportedEpochS: Math.floor(options.nowEpochS),
      };
      writeSync(json, `${JSON.stringify(head).slice(0, -1)},"tables":{`);
      for (const table of tables) {
        const before = rowsCount;
        const written = await writeTable(db, table, folder, json, isFirst, (count) => {
          rowsCount = before + count;
          options.signal?.throwIfAborted();
          options.progress?.(table.name, rowsCount);
        });
        files.push(written);
        isFirst &&= table.isView;
      }
      writeSync(json, '\n}}\n');
    } finally {
      closeSync(json);
    }
    writeFileSync(
      join(folder, 'README.txt'),
      exportReadme(libraryPath, schemaVersion(db), options.nowEpochS, files),
    );
    return { folder, files };
  } catch (error) {
    rmSync(folder, { recursive: true, force: true });
    if (options.signal?.aborted === true)
      throw new Refusal(
        'cancelled',
        'The export was stopped, and nothing was left of it. The library was not touched.',
      );
    throw notWritten(into, error);
  }
}

const rowsAtOnceCount = 2000;

async function writeTable(
  db: Database.Database,
  { name, columns, isView }: TableToExport,
  folder: string,
  json: number,
  isFirst: boolean,
  heard: (rowsCount: number) => void,
): Promise<WrittenTable> {
  const file = `${name}.csv`;
  const csv = openSync(join(folder, file), 'wx');
  let rowsCount = 0;
  let stoppedBy: string | null = null;
  try {
    writeSync(csv, csvLine(columns));
    if (!isView) writeSync(json, `${isFirst ? '' : ','}\n${JSON.stringify(name)}:[`);
    const rows = readTolerantly(db, name, (words) => (stoppedBy = words));
    let lines = '';
    let objects = '';
    for (const row of rows) {
      lines += csvLine(row);
      if (!isView) objects += `${rowsCount === 0 ? '' : ','}\n${JSON.stringify(objectOf(columns, row))}`;
      rowsCount++;
      if (rowsCount % rowsAtOnceCount === 0) {
        writeSync(csv, lines);
        writeSync(json, objects);
        lines = '';
        objects = '';
        heard(rowsCount);
        // Lets saves and a cancel through between two chunks.
        await new Promise((resolve) => setImmediate(resolve));
      }
    }
    writeSync(csv, lines);
    writeSync(json, objects);
    if (!isView) writeSync(json, ']');
    heard(rowsCount);
  } finally {
    closeSync(csv);
  }
  return { file, table: name, columns, rowsCount, stoppedBy };
}

/** The rows up to where a damaged file can no longer be read. */
function* readTolerantly(
  db: Database.Database,
  table: string,
  stopped: (words: string) => void,
): Generator<Value[]> {
  try {
    yield* rowsStatement(db, table).iterate();
  } catch (error) {
    if (!codeOf(error).startsWith('SQLITE_')) throw error;
    stopped(wordsOf(error));
  }
}

function objectOf(columns: readonly string[], row: readonly Value[]): Record<string, unknown> {
  return Object.fromEntries(
    columns.map((column, index) => {
      const value = row[index] ?? null;
      return [column, Buffer.isBuffer(value) ? value.toString('base64') : value];
    }),
  );
}

function newFolder(libraryPath: string, into: string, nowEpochS: number): string {
  if (!existsSync(into))
    throw new Refusal('not-found', `There is no folder ${into}. Nothing was written. Choose another folder.`);
  const title = `${basename(libraryPath, extname(libraryPath))} export`;
  for (let epochS = nowEpochS; ; epochS++) {
    const folder = join(into, `${title} ${timeForNames(epochS)}`);
    if (existsSync(folder)) continue;
    try {
      mkdirSync(folder);
      return folder;
    } catch (error) {
      throw notWritten(into, error);
    }
  }
}

function notWritten(into: string, error: unknown): unknown {
  const trouble = troubleOf(error);
  // Trouble with the library itself is not the folder's.
  if (trouble !== 'disk' && trouble !== 'read-only') return error;
  return new Refusal(
    trouble,
    `The export could not be written into ${into} (${wordsOf(error)}). Nothing was left of it, and the library was not touched. Choose another folder, or make room.`,
  );
}

function nothingReadable(libraryPath: string, error: unknown): Refusal {
  return new Refusal(
    'library-damaged',
    `Nothing could be read from ${libraryPath} (${wordsOf(error)}). It was not touched. Restore a backup.`,
  );
}
