import Database from 'better-sqlite3';
import { accessSync, constants, existsSync, rmSync } from 'node:fs';
import { dirname } from 'node:path';
import { Refusal } from '../requests/problem.ts';
import { makeBackup } from './backups.ts';
import { codeOf, moveIntoPlace, troubleOf, wordsOf } from './files.ts';
import { applicationId } from './header.ts';
import { inspect, type Found } from './inspect.ts';
import { migrate, newestVersion, requireOrder } from './migrate.ts';
import { migrations } from './migrations/all.ts';
import type { Migration } from './migrations/define.ts';
import { addNotice } from './notices.ts';
import { readOnlyRefusal, refusalFor } from './refusals.ts';
import { schemaVersion } from './schema-version.ts';
import { sweepUnfinishedImports } from './weather-imports.ts';

export interface OpenOptions {
  nowEpochS?: () => number;
  /** The schema's steps; other ones in tests. */
  steps?: readonly Migration[];
  /** Hears every statement before it runs. */
  onStatement?: (sql: unknown) => void;
}

/**
 * Open a library for writing: look at it first, create it where there is none, back it up and migrate it where it
 * is older. The caller holds it (lock.ts). Why WAL and `synchronous = FULL`: README.md beside this file.
 *
 * @throws Refusal for a newer, damaged, foreign or read-only file, which is left byte for byte as it was.
 */
export async function openLibrary(path: string, options: OpenOptions = {}): Promise<Database.Database> {
  const steps = options.steps ?? migrations;
  const nowEpochS = options.nowEpochS ?? (() => Date.now() / 1000);
  requireOrder(steps);
  const found = look(path, newestVersion(steps));
  if (found.kind === 'nothing') create(path, steps);
  else if (found.kind !== 'library') throw refusalFor(path, found, newestVersion(steps));
  requireWritable(path);

  const db = connect(path, options);
  try {
    if (found.kind === 'library') {
      if (found.schemaVersion < newestVersion(steps)) await bringUpToDate(db, path, steps, nowEpochS());
      sweep(db, nowEpochS());
    }
    return db;
  } catch (error) {
    db.close();
    throw error;
  }
}

function look(path: string, knownVersion: number): Found {
  try {
    return inspect(path, knownVersion);
  } catch (error) {
    // Even to look at it, SQLite wants to write its side files.
    if (troubleOf(error) === 'read-only') throw readOnlyRefusal(path, wordsOf(error));
    throw error;
  }
}

/**
 * A second connection that can only look.
 * @throws Refusal for a file that is no library of today's format: its tables would be taken for something else
 */
export function openForReading(path: string): Database.Database {
  const db = new Database(path, { readonly: true, fileMustExist: true });
  try {
    db.pragma('busy_timeout = 2000');
    requireTodaysFormat(db, path);
    return db;
  } catch (error) {
    db.close();
    if (codeOf(error) === 'SQLITE_NOTADB')
      throw refusalFor(path, { kind: 'foreign', what: 'not an SQLite file' }, newestVersion(migrations));
    throw error;
  }
}

function requireTodaysFormat(db: Database.Database, path: string): void {
  const known = newestVersion(migrations);
  if (db.pragma('application_id', { simple: true }) !== applicationId)
    throw refusalFor(path, { kind: 'foreign', what: 'an SQLite file of another program' }, known);
  const version = schemaVersion(db);
  if (version > known) throw refusalFor(path, { kind: 'newer', schemaVersion: version }, known);
  if (version < known)
    throw new Refusal(
      'library-older',
      `${path} has the older format ${String(version)}; this version reads format ${String(known)}. It was not touched. Open it once in the window, which makes a backup and brings it up to date.`,
    );
}

function connect(path: string, options: OpenOptions): Database.Database {
  const db = new Database(path, {
    fileMustExist: true,
    ...(options.onStatement === undefined ? {} : { verbose: options.onStatement }),
  });
  try {
    db.pragma('journal_mode = WAL');
    db.pragma('synchronous = FULL');
    db.pragma('foreign_keys = ON');
    db.pragma('busy_timeout = 2000');
    return db;
  } catch (error) {
    db.close();
    throw error;
  }
}

/** Built aside and put in place whole: a library that was half created never lies at its path. */
function create(path: string, steps: readonly Migration[]): void {
  const folder = dirname(path);
  if (!existsSync(folder))
    throw new Refusal(
      'not-found',
      `The folder ${folder} does not exist, so no library was made. Make the folder or choose another place.`,
    );
  const aside = `${path}.new`;
  try {
    rmSync(aside, { force: true });
    const db = new Database(aside);
    try {
      db.pragma(`application_id = ${String(applicationId)}`);
      migrate(db, steps);
    } finally {
      db.close();
    }
    moveIntoPlace(aside, path);
  } catch (error) {
    if (troubleOf(error) === 'read-only') throw readOnlyRefusal(folder, wordsOf(error));
    rmSync(aside, { force: true });
    throw error;
  }
}

function requireWritable(path: string): void {
  for (const place of [path, dirname(path)])
    try {
      accessSync(place, constants.W_OK);
    } catch (error) {
      throw readOnlyRefusal(place, wordsOf(error));
    }
}

async function bringUpToDate(
  db: Database.Database,
  path: string,
  steps: readonly Migration[],
  nowEpochS: number,
): Promise<void> {
  const backup = await makeBackup(db, path, 'migration', nowEpochS);
  const report = migrate(db, steps);
  if (report === null) return;
  const cleared =
    report.forgottenChangesCount === 0
      ? ''
      : ` The list of changes was cleared (${String(report.forgottenChangesCount)}), so undo begins anew from here.`;
  addNotice(
    db,
    nowEpochS,
    `The library was brought from format ${String(report.fromVersion)} to ${String(report.toVersion)}: ${report.brought.join('; ')}.${cleared} A backup from before lies at ${backup.path}.`,
  );
}

/** What an import left that was ended by a crash. */
function sweep(db: Database.Database, nowEpochS: number): void {
  const sweptCount = sweepUnfinishedImports(db);
  if (sweptCount > 0)
    addNotice(
      db,
      nowEpochS,
      'The program ended while a weather file was being imported. What had been read of it was removed; everything else is as it was. Import the file again.',
    );
}
