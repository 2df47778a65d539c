import { createHash } from 'node:crypto';
import { createReadStream, type ReadStream } from 'node:fs';
import { open, readdir, stat } from 'node:fs/promises';
import { basename, join } from 'node:path';
import { Transform, Writable } from 'node:stream';
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

/** Takes bytes as they lie in the file, packed: for a sum over them. */
export interface RawTaker {
  update(chunk: Buffer): unknown;
}

interface Opened {
  source: ReadStream;
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
 * @param consume takes the pieces; awaited, so that a slow taker slows the reading. Returning false ends it early
 * @param readBytes told with each piece: bytes of the file itself read so far
 * @param raw takes the bytes of the file itself
 * @throws FileProblem where it is empty or its packing is cut short or damaged
 */
export async function readContent(
  content: Content,
  consume: (chunk: Buffer, readBytes: number) => Promise<boolean> | boolean,
  raw?: RawTaker,
): Promise<{ sizeBytes: number }> {
  const sizeBytes = (await stat(content.path)).size;
  if (sizeBytes === 0) throw new FileProblem('The file is empty.');
  const { source, packing, unpack } = await openPacked(content, sizeBytes);
  const take = new Writable({
    highWaterMark: chunkBytes,
    write(chunk: Buffer, _encoding, done) {
      if (packing === 'none') raw?.update(chunk);
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
  const steps = packing === 'none' || raw === undefined ? unpack : [passing(raw), ...unpack];
  try {
    await pipeline([source, ...steps, take]);
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

/** SHA-256 over the bytes of a file as they lie there, packed. */
export async function sumOf(content: Content): Promise<string> {
  const { size } = await stat(content.path);
  const sum = createHash('sha256');
  const { source } = await openPacked(content, size);
  for await (const chunk of source as AsyncIterable<Buffer>) sum.update(chunk);
  return sum.digest('hex');
}

/** The taker has enough; no trouble. */
class LeftEarly extends Error {}

function passing(raw: RawTaker): Transform {
  return new Transform({
    highWaterMark: chunkBytes,
    transform(chunk: Buffer, _encoding, done) {
      raw.update(chunk);
      done(null, chunk);
    },
  });
}

/** The first bytes of a file's content, unpacked, without byte-order mark. */
export async function readHead(content: Content, mostBytes: number): Promise<Buffer> {
  const pieces: Buffer[] = [];
  let length = 0;
  await readContent(content, (chunk) => {
    pieces.push(chunk);
    length += chunk.length;
    return length < mostBytes;
  });
  return withoutMark(Buffer.concat(pieces).subarray(0, mostBytes));
}

export function withoutMark(bytes: Buffer): Buffer {
  return bytes[0] === 0xef && bytes[1] === 0xbb && bytes[2] === 0xbf ? bytes.subarray(3) : bytes;
}

async function openPacked({ path, entry: name }: Content, sizeBytes: number): Promise<Opened> {
  const file = await open(path);
  try {
    const { buffer: head } = await file.read(Buffer.alloc(4), 0, 4, 0);
    if (head[0] === 0x1f && head[1] === 0x8b)
      return {
        source: createReadStream(path, { highWaterMark: chunkBytes }),
        packing: 'gzip',
        unpack: [createGunzip({ chunkSize: chunkBytes })],
      };
    if (head.readUInt32LE(0) === zipMark) {
      const entry = await findInZip(file, sizeBytes, name);
      return {
        source: createReadStream(path, {
          highWaterMark: chunkBytes,
          start: entry.startByte,
          end: entry.startByte + entry.packedBytes - 1,
        }),
        packing: 'zip',
        unpack: [
          ...unpackZip(entry, chunkBytes),
          ...((await holdsGzip(file, entry)) ? [createGunzip({ chunkSize: chunkBytes })] : []),
        ],
      };
    }
    return { source: createReadStream(path, { highWaterMark: chunkBytes }), packing: 'none', unpack: [] };
  } finally {
    await file.close();
  }
}
