import Database from 'better-sqlite3';
import { existsSync, readFileSync, realpathSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { Refusal } from '../requests/problem.ts';
import { troubleOf, wordsOf } from './files.ts';

/** Who holds a library, as the holder wrote it beside the file. */
export interface HolderNote {
  pid: number;
  /** The kind of host: a window of its own, a browser's window, a script. */
  host: 'electron' | 'loopback' | 'script';
  /** Where its window can be found; null where there is none, or not yet. */
  address: string | null;
  sinceEpochS: number;
}

/** `note` is null where the file is held but the note is missing or cannot be read. */
export interface Holder {
  note: HolderNote | null;
}

export interface Hold {
  held: true;
  /** Rewrite the note, when the address is known. */
  rewrite(note: HolderNote): void;
  /** Let go; the operating system does it too when the process dies, however it dies. */
  release(): void;
}

export interface NotHeld {
  held: false;
  by: Holder;
}

/** A probe of whoHolds takes a read lock for an instant; a holder must outwait it. */
const outwaitProbesMs = 250;

// A dropped handle would be collected, closed and so unlocked behind its owner's back.
const handles = new Set<Database.Database>();

/**
 * Hold a library for this process alone, before it is opened for writing. Held elsewhere is an answer, not an
 * error: the caller sends the person to that window.
 *
 * The hold is an exclusive transaction on an empty SQLite file beside the library, so it is the operating
 * system's own lock on every system that SQLite runs on, and dies with the process (a kill as well). The empty
 * file stays when the hold ends: removing it would let two processes lock two files of one name.
 *
 * @throws Refusal 'read-only' when nothing can be written beside the library, 'not-found' without that folder.
 */
export function holdLibrary(libraryPath: string, note: HolderNote): Hold | NotHeld {
  const path = oneNameOf(libraryPath);
  let lock: Database.Database;
  try {
    lock = new Database(lockPath(path), { timeout: outwaitProbesMs });
  } catch (error) {
    throw cannotHold(libraryPath, error);
  }
  try {
    lock.exec('BEGIN EXCLUSIVE');
  } catch (error) {
    lock.close();
    if (isBusy(error)) return { held: false, by: { note: readNote(path) } };
    throw cannotHold(libraryPath, error);
  }
  try {
    writeNote(path, note);
  } catch (error) {
    lock.close();
    throw cannotHold(libraryPath, error);
  }
  handles.add(lock);
  return {
    held: true,
    rewrite: (newer) => {
      writeNote(path, newer);
    },
    release: () => {
      if (!handles.delete(lock)) return;
      rmSync(notePath(path), { force: true });
      lock.close();
    },
  };
}

/** Who holds the library now, or null. A note left behind by a killed process counts for nothing. */
export function whoHolds(libraryPath: string): Holder | null {
  const path = oneNameOf(libraryPath);
  if (!existsSync(lockPath(path))) return null;
  let lock: Database.Database;
  try {
    lock = new Database(lockPath(path), { readonly: true, fileMustExist: true, timeout: 0 });
  } catch {
    return null;
  }
  try {
    lock.prepare('SELECT count(*) FROM sqlite_schema').get();
    return null;
  } catch (error) {
    if (isBusy(error)) return { note: readNote(path) };
    throw error;
  } finally {
    lock.close();
  }
}

/** The file that is locked. Never read it through `fs`: on POSIX, closing any handle of it drops the lock. */
export function lockPath(libraryPath: string): string {
  return `${libraryPath}.lock`;
}

/** The readable note beside the lock. */
export function notePath(libraryPath: string): string {
  return `${libraryPath}.lock.json`;
}

/** One name for a library, whatever link or relative path leads to it. */
function oneNameOf(libraryPath: string): string {
  try {
    return existsSync(libraryPath)
      ? realpathSync(libraryPath)
      : join(realpathSync(dirname(libraryPath)), basename(libraryPath));
  } catch {
    throw new Refusal(
      'not-found',
      `The folder ${dirname(libraryPath)} does not exist, so no library can be kept there. Nothing was changed. Make the folder or choose another place.`,
    );
  }
}

function writeNote(path: string, note: HolderNote): void {
  // Written aside and renamed, so that a reader never sees half of it; for this user's eyes only.
  const aside = `${notePath(path)}.${String(process.pid)}`;
  writeFileSync(aside, `${JSON.stringify(note, null, 1)}\n`, { mode: 0o600 });
  renameSync(aside, notePath(path));
}

function readNote(path: string): HolderNote | null {
  try {
    const note: unknown = JSON.parse(readFileSync(notePath(path), 'utf8'));
    return isNote(note) ? note : null;
  } catch {
    return null;
  }
}

function isNote(value: unknown): value is HolderNote {
  return (
    typeof value === 'object' &&
    value !== null &&
    'pid' in value &&
    typeof value.pid === 'number' &&
    'host' in value &&
    (value.host === 'electron' || value.host === 'loopback' || value.host === 'script') &&
    'address' in value &&
    (value.address === null || typeof value.address === 'string') &&
    'sinceEpochS' in value &&
    typeof value.sinceEpochS === 'number'
  );
}

function isBusy(error: unknown): boolean {
  return troubleOf(error) === 'library-busy';
}

function cannotHold(libraryPath: string, error: unknown): Refusal {
  return new Refusal(
    'read-only',
    `Nothing can be written beside ${libraryPath} (${wordsOf(error)}), so the library cannot be opened for changes. Nothing was changed. Allow writing in that folder, or copy the library to another one.`,
  );
}
