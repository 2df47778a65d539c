import Database from 'better-sqlite3';
import { randomUUID } from 'node:crypto';
import { existsSync, mkdirSync, readdirSync, rmSync, statSync, utimesSync } from 'node:fs';
import { join } from 'node:path';
import { Refusal } from '../requests/problem.ts';
import {
  backupName,
  backupsFolder,
  parseBackupName,
  type BackupName,
  type BackupReason,
} from './backup-names.ts';
import { backupsToKeep } from './backup-rotation.ts';
import { moveIntoPlace, troubleOf, wordsOf } from './files.ts';
import { schemaVersion } from './schema-version.ts';

export interface Backup extends BackupName {
  path: string;
  sizeBytes: number;
}

/** The backups of a library, newest first. Works without opening anything, so on a library that cannot be opened. */
export function listBackups(libraryPath: string): Backup[] {
  const folder = backupsFolder(libraryPath);
  if (!existsSync(folder)) return [];
  return readdirSync(folder)
    .flatMap((name) => {
      const parsed = parseBackupName(name);
      const path = join(folder, name);
      return parsed === null ? [] : [{ ...parsed, path, sizeBytes: statSync(path).size }];
    })
    .sort((a, b) => b.madeEpochS - a.madeEpochS);
}

/**
 * Copy an open library by SQLite's own backup call, check the copy, give it its name, then let go of backups that
 * the rotation no longer keeps. Other work on the same connection goes on meanwhile.
 *
 * @throws Refusal when the copy cannot be made; nothing is left of it.
 */
export async function makeBackup(
  db: Database.Database,
  libraryPath: string,
  reason: BackupReason,
  nowEpochS: number,
  changedMs = lastChangedMs(libraryPath),
): Promise<Backup> {
  const folder = backupsFolder(libraryPath);
  const partial = join(folder, `unfinished-${randomUUID()}`);
  copying.add(partial);
  try {
    mkdirSync(folder, { recursive: true });
    sweepUnfinished(folder);
    await db.backup(partial);
    finishCopy(partial);
    // Only now, without a pause before the renaming: another backup may have taken the name meanwhile.
    const named: BackupName = { madeEpochS: Math.floor(nowEpochS), schemaVersion: schemaVersion(db), reason };
    while (existsSync(join(folder, backupName(named)))) named.madeEpochS += 1;
    const path = join(folder, backupName(named));
    if (changedMs !== null) utimesSync(partial, changedMs / 1000, changedMs / 1000);
    moveIntoPlace(partial, path);
    rotate(libraryPath, nowEpochS);
    return { ...named, path, sizeBytes: statSync(path).size };
  } catch (error) {
    removeIfThere(partial);
    throw new Refusal(
      troubleOf(error),
      `No backup could be made in ${folder} (${wordsOf(error)}). The library itself was not touched. Make room there or allow writing, and do it again.`,
    );
  } finally {
    copying.delete(partial);
  }
}

/** Copies that are under way: two may be, one made at start and one asked for. */
const copying = new Set<string>();

/** Make a copy stand by itself, without side files, and check that it is whole. */
export function finishCopy(path: string): void {
  const copy = new Database(path);
  try {
    copy.pragma('journal_mode = DELETE');
    const check = copy.pragma('quick_check(1)', { simple: true });
    if (check !== 'ok') throw new Error(`the copy fails SQLite's check: ${String(check)}`);
  } finally {
    copy.close();
  }
}

/**
 * When the library last changed, by its files; null where there is none. Ask before opening it.
 * A -wal that a killed program left counts.
 */
export function lastChangedMs(libraryPath: string): number | null {
  const library = statSync(libraryPath, { throwIfNoEntry: false });
  if (library === undefined) return null;
  const wal = statSync(`${libraryPath}-wal`, { throwIfNoEntry: false });
  return wal !== undefined && wal.size > 0 ? Math.max(library.mtimeMs, wal.mtimeMs) : library.mtimeMs;
}

/**
 * A backup at start, if no backup holds the library as it is: each backup carries the library's own
 * time of change as its file time, so that a clock that was set back hides nothing.
 *
 * @param changedMs what lastChangedMs gave before the library was opened
 * @returns null where none was needed
 */
export async function backUpAtStart(
  db: Database.Database,
  libraryPath: string,
  changedMs: number | null,
  nowEpochS: number,
): Promise<Backup | null> {
  if (changedMs === null) return null;
  const isKept = listBackups(libraryPath).some(
    ({ path }) => Math.abs(statSync(path).mtimeMs - changedMs) < fileTimeToleranceMs,
  );
  if (isKept) return null;
  return makeBackup(db, libraryPath, 'start', nowEpochS, changedMs);
}

/** Setting a file time goes through seconds as a fraction, which loses less than this. */
const fileTimeToleranceMs = 5;

function rotate(libraryPath: string, nowEpochS: number): void {
  const backups = listBackups(libraryPath);
  const keep = backupsToKeep(backups, nowEpochS);
  for (const backup of backups) if (!keep.has(backup)) rmSync(backup.path, { force: true });
}

/** What a program that was killed left half copied. */
function sweepUnfinished(folder: string): void {
  for (const name of readdirSync(folder))
    if (name.startsWith('unfinished-') && !copying.has(join(folder, name)))
      rmSync(join(folder, name), { force: true });
}

/** Tidying after a failure must not hide the failure. */
function removeIfThere(path: string): void {
  try {
    rmSync(path, { force: true });
  } catch {
    // It could not even be looked at, so there is nothing of ours there.
  }
}
