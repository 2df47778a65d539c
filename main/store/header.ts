import { closeSync, openSync, readSync } from 'node:fs';

/** Written into the file's header, so that a library is known for what it is: 'TARE' in ASCII. */
export const applicationId = 0x54415245;

/** What the first 100 bytes of a file say (SQLite's "Database File Format", section 1.3). */
export interface Header {
  isSqlite: boolean;
  startsWithZeros: boolean;
  pageSizeBytes: number;
  /** Pages as counted by the header; null where an old SQLite left it stale. */
  pageCount: number | null;
  schemaVersion: number;
  applicationId: number;
}

const magic = 'SQLite format 3\0';
const headerBytes = 100;

/**
 * Read a file's header by its bytes, without SQLite.
 * Only for a file that nobody in this process has open in SQLite: on POSIX, closing this second handle would
 * drop SQLite's locks on it.
 */
export function readHeader(path: string): Header {
  const bytes = Buffer.alloc(headerBytes);
  const file = openSync(path, 'r');
  try {
    readSync(file, bytes, 0, headerBytes, 0);
  } finally {
    closeSync(file);
  }
  const pageSize = bytes.readUInt16BE(16);
  const isCountFresh = bytes.readUInt32BE(24) === bytes.readUInt32BE(92);
  return {
    isSqlite: bytes.toString('latin1', 0, 16) === magic,
    startsWithZeros: bytes.every((byte) => byte === 0),
    pageSizeBytes: pageSize === 1 ? 65536 : pageSize,
    pageCount: isCountFresh ? bytes.readUInt32BE(28) : null,
    schemaVersion: bytes.readUInt32BE(60),
    applicationId: bytes.readUInt32BE(68),
  };
}
