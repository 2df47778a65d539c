import { createHash } from 'node:crypto';
import { createReadStream } from 'node:fs';
import { open, readdir, stat } from 'node:fs/promises';
import { basename, join } from 'node:path';
import { Writable, type Transform } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import { createGunzip } from 'node:zlib';
import { FileProblem } from './file-problem.ts';
import { filesInZip, findInZip, holdsGzip, unpackZip } from './zip.ts';

export const chunkBytes = 1 << 20;
const zipMark = 0x04034b50;

/** One weather file: a file, or one of the files inside a zip archive. */
export interface Content {
  path: string;
  /** Its name inside the archive; left out where the file is no archive, or holds just one. */
  entry?: string | undefined;
}

/** What a dropped file or folder turns out to hold. */
export interface ListedContent {
  path: string;
  /** null for a file that is no archive of several. */
  entry: string | null;
  /** For people: 'years.zip: 2012.csv'. */
  fileName: string;
  /** Bytes of the file itself, packed as they are. */
  sizeBytes: number;
}

interface Opened {
  /** Where in the file its content lies, packed. */
  range: Range;
  packing: 'none' | 'gzip' | 'zip';
  /** None for plain files; else what turns the file's bytes into its content. */
  unpack: Transform[];
}

/** So deep and so many files of a folder are looked at: more was dropped by mistake. */
const mostFiles = 5000;

/**
 * Every weather file that a path stands for: itself, the files of an archive, or those of a folder and its folders.
 * Hidden files are left out. What cannot be opened stands for itself, so that its own reading says why.
 */
export async function contentsOf(path: string): Promise<ListedContent[]> {
  const found = await stat(path).catch(() => null);
  if (found?.isDirectory() === true) {
    const names = (await readdir(path, { recursive: true, withFileTypes: true }))
      .filter((each) => each.isFile() && !each.name.startsWith('.'))
      .map((each) => join(each.parentPath, each.name))
      .sort()
      .slice(0, mostFiles);
    const contents: ListedContent[] = [];
    for (const name of names) contents.push(...(await contentsOf(name)));
    return contents;
  }
  const alone = { path, entry: null, fileName: basename(path), sizeBytes: found?.size ?? 0 };
  if (alone.sizeBytes < 4) return [alone];
  const file = await open(path).catch(() => null);
  if (file === null) return [alone];
  try {
    const { buffer: head } = await file.read(Buffer.alloc(4), 0, 4, 0);
    if (head.readUInt32LE(0) !== zipMark) return [alone];
    const entries = (await filesInZip(file, alone.sizeBytes)).filter(
      ({ name }) => !(name.split('/').at(-1) ?? '').startsWith('.'),
    );
    if (entries.length < 2) return [alone];
    return entries.map(({ name, packedBytes }) => ({
      path,
      entry: name,
      fileName: `${alone.fileName}: ${name}`,
      sizeBytes: packedBytes,
    }));
  } catch {
    return [alone];
  } finally {
    await file.close();
  }
}

/** What a file is called for people. */
export function nameOf({ path, entry }: Content): string {
  return entry === undefined ? basename(path) : `${basename(path)}: ${entry}`;
}

/**
 * Hand a file's content over piece by piece, unpacked where it is gzip or zip (by its first bytes, not by its name).
 * @param consume takes the pieces; awaited, so that a slow taker slows the reading. Returning false ends it early. A
 *   piece is written over by a later one: what has to stay must be copied
 * @param readBytes told with each piece: bytes of the file itself read so far
 * @throws FileProblem where it is empty or its packing is cut short or damaged
 */
export async function readContent(
  content: Content,
  consume: (chunk: Buffer, readBytes: number) => Promise<boolean> | boolean,
): Promise<{ sizeBytes: number }> {
  const sizeBytes = (await stat(content.path)).size;
  if (sizeBytes === 0) throw new FileProblem('The file is empty.');
  const { range, packing, unpack } = await openPacked(content, sizeBytes);
  if (packing === 'none') {
    await readPieces(content.path, range, consume);
    return { sizeBytes };
  }
  const source = createReadStream(content.path, {
    highWaterMark: chunkBytes,
    start: range.startByte,
    end: range.endByte - 1,
  });
  const take = new Writable({
    highWaterMark: chunkBytes,
    write(chunk: Buffer, _encoding, done) {
      Promise.resolve(consume(chunk, source.bytesRead)).then(
        (goOn) => {
          done(goOn ? null : new LeftEarly());
        },
        (error: unknown) => {
          done(error instanceof Error ? error : new Error(String(error)));
        },
      );
    },
  });
  try {
    await pipeline([source, ...unpack, take]);
  } catch (error) {
    if (error instanceof FileProblem) throw error;
    const code = error instanceof Error && 'code' in error ? String(error.code) : '';
    if (code.startsWith('Z_'))
      throw new FileProblem(
        code === 'Z_BUF_ERROR'
          ? `The packed file (${packing}) ends before its end: it was cut short. Fetch it again.`
          : `The packed file (${packing}) is damaged. Fetch it again.`,
      );
    if (error instanceof LeftEarly) return { sizeBytes };
    throw error;
  }
  return { sizeBytes };
}

/** Whether a content is a file as it lies there, unpacked, and at least so long. */
export async function isPlainFile(content: Content, leastBytes: number): Promise<boolean> {
  const found = await stat(content.path);
  if (!found.isFile() || content.entry !== undefined || found.size < Math.max(1, leastBytes)) return false;
  return (await openPacked(content, found.size)).packing === 'none';
}

/** SHA-256 over the bytes of a file as they lie there, packed; null where it cannot be read or the signal came. */
export async function sumOf(content: Content, signal?: AbortSignal): Promise<string | null> {
  try {
    const { size } = await stat(content.path);
    const { range } = await openPacked(content, size);
    const sum = createHash('sha256');
    await readPieces(content.path, range, (piece) => {
      sum.update(piece);
      return signal?.aborted !== true;
    });
    return signal?.aborted === true ? null : sum.digest('hex');
  } catch {
    return null;
  }
}

interface Range {
  startByte: number;
  endByte: number;
}

/** A file's bytes piece by piece in two buffers: while one is taken, the next is read into the other. */
async function readPieces(
  path: string,
  { startByte, endByte }: Range,
  take: (piece: Buffer, readBytes: number) => Promise<boolean> | boolean,
): Promise<void> {
  const file = await open(path);
  try {
    const buffers = [Buffer.allocUnsafe(chunkBytes), Buffer.allocUnsafe(chunkBytes)] as const;
    let at = startByte;
    const read = async (buffer: Buffer): Promise<Buffer> => {
      const { bytesRead } = await file.read(buffer, 0, Math.min(chunkBytes, endByte - at), at);
      return buffer.subarray(0, bytesRead);
    };
    let coming = read(buffers[0]);
    for (let turn = 1; ; turn++) {
      const piece = await coming;
      if (piece.length === 0) return;
      at += piece.length;
      coming = read(buffers[(turn % 2) as 0 | 1]);
      // Awaited above in the next turn; where there is none, nobody waits for it.
      coming.catch(() => undefined);
      if (!(await take(piece, at - startByte))) return;
    }
  } finally {
    await file.close();
  }
}

/** The taker has enough; no trouble. */
class LeftEarly extends Error {}

/** The first bytes of a file's content, unpacked, without byte-order mark. */
export async function readHead(content: Content, mostBytes: number): Promise<Buffer> {
  const pieces: Buffer[] = [];
  let length = 0;
  await readContent(content, (chunk) => {
    pieces.push(Buffer.from(chunk));
    length += chunk.length;
    return length < mostBytes;
  });
  return withoutMark(Buffer.concat(pieces).subarray(0, mostBytes));
}

export function withoutMark(bytes: Buffer): Buffer {
  return bytes[0] === 0xef && bytes[1] === 0xbb && bytes[2] === 0xbf ? bytes.subarray(3) : bytes;
}

async function openPacked({ path, entry: name }: Content, sizeBytes: number): Promise<Opened> {
  const whole = { startByte: 0, endByte: sizeBytes };
  const file = await open(path);
  try {
    const { buffer: head } = await file.read(Buffer.alloc(4), 0, 4, 0);
    if (head[0] === 0x1f && head[1] === 0x8b)
      return { range: whole, packing: 'gzip', unpack: [createGunzip({ chunkSize: chunkBytes })] };
    if (head.readUInt32LE(0) === zipMark) {
      const entry = await findInZip(file, sizeBytes, name);
      return {
        range: { startByte: entry.startByte, endByte: entry.startByte + entry.packedBytes },
        packing: 'zip',
        unpack: [
          ...unpackZip(entry, chunkBytes),
          ...((await holdsGzip(file, entry)) ? [createGunzip({ chunkSize: chunkBytes })] : []),
        ],
      };
    }
    return { range: whole, packing: 'none', unpack: [] };
  } finally {
    await file.close();
  }
}
