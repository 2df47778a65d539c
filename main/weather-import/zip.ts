import type { FileHandle } from 'node:fs/promises';
import { Transform } from 'node:stream';
import { constants, crc32, createInflateRaw, inflateRawSync } from 'node:zlib';
import { FileProblem } from './file-problem.ts';

// The files in a zip archive. Source: PKWARE APPNOTE.TXT 6.3, sections 4.3.7, 4.3.12 and 4.3.16.

const endMark = 0x06054b50;
const entryMark = 0x02014b50;
const localMark = 0x04034b50;
const endBytes = 22;
const longestCommentBytes = 65_535;
const stored = 0;
const deflated = 8;
/** What 32 bits cannot hold is written elsewhere (zip64). */
const elsewhere = 0xffff_ffff;

export interface ZipEntry {
  name: string;
  method: number;
  crc: number;
  packedBytes: number;
  unpackedBytes: number;
  startByte: number;
}

interface ListedEntry extends ZipEntry {
  encrypted: boolean;
}

/**
 * The files of an archive in their order; folders and what archivers add of their own (__MACOSX) do not count.
 * @throws FileProblem where there is none, or where the archive is damaged or over 4 GB
 */
export async function filesInZip(file: FileHandle, sizeBytes: number): Promise<ListedEntry[]> {
  const tailBytes = Math.min(sizeBytes, endBytes + longestCommentBytes);
  const tail = await bytesAt(file, sizeBytes - tailBytes, tailBytes);
  let end = tail.length - endBytes;
  while (end >= 0 && tail.readUInt32LE(end) !== endMark) end--;
  if (end < 0) throw damaged();
  const directoryBytes = tail.readUInt32LE(end + 12);
  const directoryStart = tail.readUInt32LE(end + 16);
  if (directoryStart === elsewhere) throw new FileProblem('The zip archive is over 4 GB; unpack it first.');
  if (directoryStart + directoryBytes > sizeBytes) throw damaged();

  const directory = await bytesAt(file, directoryStart, directoryBytes);
  const entries: ListedEntry[] = [];
  for (let at = 0; at + 46 <= directory.length;) {
    if (directory.readUInt32LE(at) !== entryMark) throw damaged();
    const nameBytes = directory.readUInt16LE(at + 28);
    const name = directory.subarray(at + 46, at + 46 + nameBytes).toString('utf8');
    if (!name.endsWith('/') && !name.startsWith('__MACOSX/'))
      entries.push({
        name,
        encrypted: (directory.readUInt16LE(at + 8) & 1) !== 0,
        method: directory.readUInt16LE(at + 10),
        crc: directory.readUInt32LE(at + 16),
        packedBytes: directory.readUInt32LE(at + 20),
        unpackedBytes: directory.readUInt32LE(at + 24),
        startByte: directory.readUInt32LE(at + 42),
      });
    at += 46 + nameBytes + directory.readUInt16LE(at + 30) + directory.readUInt16LE(at + 32);
  }
  if (entries.length === 0) throw new FileProblem('The zip archive has no file in it.');
  return entries;
}

/**
 * One file of an archive, ready to be unpacked.
 * @param name as filesInZip gives it; left out, the only one
 * @throws FileProblem where there are several and none is named, and where it is damaged, encrypted or over 4 GB
 */
export async function findInZip(file: FileHandle, sizeBytes: number, name?: string): Promise<ZipEntry> {
  const entries = await filesInZip(file, sizeBytes);
  if (name === undefined && entries.length > 1)
    throw new FileProblem(
      `The zip archive has ${String(entries.length)} files in it (${entries
        .slice(0, 3)
        .map((each) => each.name)
        .join(', ')}${entries.length > 3 ? ' ...' : ''}). Say which one is meant.`,
    );
  const entry = name === undefined ? entries[0] : entries.find((each) => each.name === name);
  if (entry === undefined) throw new FileProblem(`The zip archive has no file '${String(name)}' in it.`);
  if (entry.encrypted) throw new FileProblem('The zip archive is encrypted; unpack it first.');
  if (entry.method !== stored && entry.method !== deflated)
    throw new FileProblem('The zip archive is packed in a way that is not known here; unpack it first.');
  if (entry.packedBytes === elsewhere || entry.unpackedBytes === elsewhere)
    throw new FileProblem('The zip archive is over 4 GB; unpack it first.');
  if (entry.unpackedBytes === 0) throw new FileProblem('The file in the zip archive is empty.');

  const local = await bytesAt(file, entry.startByte, 30);
  if (local.length < 30 || local.readUInt32LE(0) !== localMark) throw damaged();
  const startByte = entry.startByte + 30 + local.readUInt16LE(26) + local.readUInt16LE(28);
  if (entry.packedBytes === 0 || startByte + entry.packedBytes > sizeBytes) throw damaged();
  return { ...entry, startByte };
}

/** Whether an entry holds a gzip file: packed twice, as archives of yearly files are. */
export async function holdsGzip(file: FileHandle, entry: ZipEntry): Promise<boolean> {
  const packed = await bytesAt(file, entry.startByte, Math.min(entry.packedBytes, 512));
  try {
    const head =
      entry.method === stored ? packed : inflateRawSync(packed, { finishFlush: constants.Z_SYNC_FLUSH });
    return head[0] === 0x1f && head[1] === 0x8b;
  } catch {
    // Damaged: unpacking it says so.
    return false;
  }
}

/** Streams from an entry's bytes to its content, which is checked by its sum. */
export function unpackZip(entry: ZipEntry, chunkBytes: number): Transform[] {
  let sum = 0;
  let length = 0;
  const checked = new Transform({
    highWaterMark: chunkBytes,
    transform(chunk: Buffer, _encoding, done) {
      sum = crc32(chunk, sum);
      length += chunk.length;
      done(null, chunk);
    },
    flush(done) {
      done(
        sum === entry.crc && length === entry.unpackedBytes
          ? null
          : new FileProblem(
              'The packed file (zip) is damaged: its content does not match its sum. Fetch it again.',
            ),
      );
    },
  });
  return entry.method === deflated ? [createInflateRaw({ chunkSize: chunkBytes }), checked] : [checked];
}

function damaged(): FileProblem {
  return new FileProblem('The packed file (zip) is damaged or cut short. Fetch it again.');
}

async function bytesAt(file: FileHandle, position: number, length: number): Promise<Buffer> {
  const { buffer, bytesRead } = await file.read(Buffer.alloc(length), 0, length, position);
  return buffer.subarray(0, bytesRead);
}
