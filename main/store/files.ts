import { closeSync, fsyncSync, openSync, renameSync } from 'node:fs';
import { dirname } from 'node:path';

/** Put a finished file in its place, over whatever is there, so that a power cut leaves the one or the other. */
export function moveIntoPlace(from: string, to: string): void {
  renameSync(from, to);
  syncFolder(dirname(to));
}

/** Make a rename or a new name last. */
function syncFolder(folder: string): void {
  // Windows cannot open a folder; its file systems keep the order of renames by themselves.
  if (process.platform === 'win32') return;
  const handle = openSync(folder, 'r');
  try {
    fsyncSync(handle);
  } finally {
    closeSync(handle);
  }
}

/** The words of an error, for a sentence. */
export function wordsOf(error: unknown): string {
  return error instanceof Error ? error.message : String(error);
}

/** The code of an error of SQLite or the file system; '' where it has none. */
export function codeOf(error: unknown): string {
  return error instanceof Error && 'code' in error ? String(error.code) : '';
}

/** What kind of trouble an error of SQLite or the file system is, as a refusal's code. */
export function troubleOf(
  error: unknown,
): 'disk' | 'read-only' | 'library-busy' | 'library-damaged' | 'internal' {
  const code = codeOf(error);
  if (/^(SQLITE_FULL|ENOSPC|EDQUOT)/.test(code)) return 'disk';
  if (/^(EACCES|EPERM|EROFS|ENOTDIR|EISDIR|SQLITE_READONLY|SQLITE_CANTOPEN)/.test(code)) return 'read-only';
  if (code.startsWith('SQLITE_BUSY')) return 'library-busy';
  if (/^SQLITE_(CORRUPT|NOTADB)/.test(code)) return 'library-damaged';
  return 'internal';
}
