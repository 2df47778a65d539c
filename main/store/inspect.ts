import { statSync } from 'node:fs';
import { troubleOf, wordsOf } from './files.ts';
import { applicationId, readHeader } from './header.ts';
import { lookInto } from './look-into.ts';
import { schemaVersion } from './schema-version.ts';

/** What a path holds, as data; the sentences are in refusals.ts. */
export type Found =
  | { kind: 'nothing' }
  | { kind: 'library'; schemaVersion: number }
  | { kind: 'newer'; schemaVersion: number }
  /** Another program's file; `what` completes "it is ...". */
  | { kind: 'foreign'; what: string }
  /** A library, or what is left of one; `why` completes "..., because it ...". */
  | { kind: 'damaged'; why: string };

/**
 * Say what lies at a path without writing a byte to it or leaving one beside it.
 * A library is read through once (SQLite's quick check: 16 ms for 18 MB that the system has cached).
 * Only while this process holds the library, or for a file that no program has open.
 *
 * @param knownVersion the newest schema that this program knows
 */
export function inspect(path: string, knownVersion: number): Found {
  const stat = statSync(path, { throwIfNoEntry: false });
  if (stat === undefined) return { kind: 'nothing' };
  if (!stat.isFile()) return { kind: 'foreign', what: 'not a file' };
  if (stat.size === 0) return { kind: 'damaged', why: 'is empty (0 bytes)' };
  const header = readHeader(path);
  if (header.startsWithZeros) return { kind: 'damaged', why: 'begins with nothing but zeros' };
  if (!header.isSqlite) return { kind: 'foreign', what: 'not an SQLite file' };

  // The newest state may still lie in a -wal that a killed program left; then the header alone is not the truth.
  const hasLeftovers = (statSync(`${path}-wal`, { throwIfNoEntry: false })?.size ?? 0) > 0;
  if (!hasLeftovers) {
    if (header.applicationId !== applicationId)
      return { kind: 'foreign', what: 'an SQLite file of another program' };
    const expectedBytes = (header.pageCount ?? 0) * header.pageSizeBytes;
    if (stat.size < expectedBytes)
      return {
        kind: 'damaged',
        why: `is cut short (${String(stat.size)} of ${String(expectedBytes)} bytes)`,
      };
    if (header.schemaVersion > knownVersion) return { kind: 'newer', schemaVersion: header.schemaVersion };
  }
  try {
    return lookInto<Found>(path, (db) => {
      if (db.pragma('application_id', { simple: true }) !== applicationId)
        return { kind: 'foreign', what: 'an SQLite file of another program' };
      const version = schemaVersion(db);
      if (version > knownVersion) return { kind: 'newer', schemaVersion: version };
      if (version === 0) return { kind: 'damaged', why: 'has no tables of a library' };
      const check = db.pragma('quick_check(1)', { simple: true });
      if (check !== 'ok') return { kind: 'damaged', why: `fails SQLite's check (${String(check)})` };
      return { kind: 'library', schemaVersion: version };
    });
  } catch (error) {
    if (troubleOf(error) === 'library-damaged')
      return { kind: 'damaged', why: `cannot be read (${wordsOf(error)})` };
    throw error;
  }
}
