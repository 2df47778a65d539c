import type Database from 'better-sqlite3';
import { copyFileSync, existsSync, realpathSync, rmSync } from 'node:fs';
import { basename, dirname, extname, join } from 'node:path';
import { Refusal } from '../requests/problem.ts';
import { timeForNames } from './backup-names.ts';
import { finishCopy } from './backups.ts';
import { moveIntoPlace, troubleOf, wordsOf } from './files.ts';
import { inspect } from './inspect.ts';
import { startLook } from './look-into.ts';
import { migrate, newestVersion } from './migrate.ts';
import { migrations } from './migrations/all.ts';
import { addNotice } from './notices.ts';
import { refusalFor } from './refusals.ts';
import { hasUnfinishedImport, sweepUnfinishedImports } from './weather-imports.ts';

export interface Restored {
  /** Where the library as it was before now lies; null where there was none. */
  keptPath: string | null;
}

/**
 * Put a backup in the place of a library that is not open anywhere: also of one that cannot be opened. What lay
 * there is kept beside it, with its write-ahead log. A power cut leaves the one or the other whole.
 * The caller holds the library (lock.ts); opening it afterwards brings an older backup up to date.
 *
 * @throws Refusal when the backup is no sound library of this or an older format; the library is untouched.
 */
export async function replaceLibrary(
  libraryPath: string,
  backupPath: string,
  nowEpochS: number,
): Promise<Restored> {
  requireRestorable(libraryPath, backupPath);
  const restoring = `${libraryPath}.restoring`;
  try {
    rmSync(restoring, { force: true });
    await copyLibrary(backupPath, restoring);
    finishCopy(restoring);
    let keptPath: string | null = null;
    if (existsSync(libraryPath)) {
      keptPath = keptName(libraryPath, nowEpochS);
      for (const end of ['-wal', ''])
        if (existsSync(libraryPath + end)) copyFileSync(libraryPath + end, keptPath + end);
    }
    // The old log must not be replayed into the restored file; it lies beside the kept one.
    for (const end of ['-wal', '-shm']) rmSync(libraryPath + end, { force: true });
    moveIntoPlace(restoring, libraryPath);
    return { keptPath };
  } catch (error) {
    rmSync(restoring, { force: true });
    throw notRestored(error);
  }
}

/**
 * Put a backup's content into the open library, in one transaction: readers see the old or the new. The library as
 * it was is kept beside it; a backup of an older format is brought up to date.
 *
 * @throws Refusal as replaceLibrary does
 */
export async function restoreInto(
  db: Database.Database,
  libraryPath: string,
  backupPath: string,
  nowEpochS: number,
): Promise<{ keptPath: string }> {
  requireRestorable(libraryPath, backupPath);
  if (hasUnfinishedImport(db))
    throw new Refusal(
      'in-use',
      'A weather file is being imported. Nothing was changed. Wait for it or cancel it, and restore the backup then.',
    );
  const keptPath = keptName(libraryPath, nowEpochS);
  const aside = `${libraryPath}.restoring`;
  try {
    await db.backup(aside);
    finishCopy(aside);
    moveIntoPlace(aside, keptPath);
    await copyLibrary(backupPath, libraryPath);
  } catch (error) {
    rmSync(aside, { force: true });
    throw notRestored(error);
  }
  const report = migrate(db, migrations);
  // The backup may have been made while a file was being imported.
  sweepUnfinishedImports(db);
  const brought =
    report === null
      ? ''
      : ` It was brought from format ${String(report.fromVersion)} to ${String(report.toVersion)}, and undo begins anew from here.`;
  addNotice(
    db,
    nowEpochS,
    `The backup ${basename(backupPath)} was restored.${brought} The library as it was before lies at ${keptPath}.`,
  );
  return { keptPath };
}

function requireRestorable(libraryPath: string, backupPath: string): void {
  if (
    existsSync(backupPath) &&
    existsSync(libraryPath) &&
    realpathSync(backupPath) === realpathSync(libraryPath)
  )
    throw new Refusal(
      'input-refused',
      `${backupPath} is the open library itself, not a backup. Nothing was changed. Choose one of its backups.`,
    );
  const known = newestVersion(migrations);
  const found = inspect(backupPath, known);
  if (found.kind === 'nothing')
    throw new Refusal(
      'not-found',
      `There is no file ${backupPath}. Nothing was changed. Choose another backup.`,
    );
  if (found.kind !== 'library') throw refusalFor(backupPath, found, known);
}

/** All pages in one step: into an open library it is one transaction, and no save waits between two steps. */
async function copyLibrary(from: string, to: string): Promise<void> {
  const { db, close } = startLook(from);
  try {
    await db.backup(to, { progress: () => 0x7fff_ffff });
  } finally {
    close();
  }
}

function keptName(libraryPath: string, nowEpochS: number): string {
  const end = extname(libraryPath);
  for (let epochS = nowEpochS; ; epochS++) {
    const path = join(
      dirname(libraryPath),
      `${basename(libraryPath, end)} before restoring ${timeForNames(epochS)}${end}`,
    );
    if (!existsSync(path)) return path;
  }
}

function notRestored(error: unknown): Refusal {
  return new Refusal(
    troubleOf(error),
    `The backup could not be restored (${wordsOf(error)}). The library is as it was. Make room or allow writing beside it, and do it again.`,
  );
}
