import { createReadStream, type ReadStream } from 'node:fs';
import { open, stat } from 'node:fs/promises';
import type { Transform } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import { createGunzip } from 'node:zlib';
import { FileProblem } from './file-problem.ts';
import { findInZip, unpackZip } from './zip.ts';

export const chunkBytes = 1 << 20;

interface Opened {
  source: ReadStream;
  /** None, one (gzip, or zip that only stores) or two (zip that packs). */
  unpack: Transform[];
}

/**
 * Hand a file's content over piece by piece, unpacked where it is gzip or zip (by its first bytes, not by its name).
 * @param consume takes the pieces; awaited, so that a slow taker slows the reading. Returning false ends it early
 * @param readBytes told with each piece: bytes of the file itself read so far
 * @throws FileProblem where it is empty or its packing is cut short or damaged
 */
export async function readContent(
  path: string,
  consume: (chunk: Buffer, readBytes: number) => Promise<boolean> | boolean,
): Promise<{ sizeBytes: number }> {
  const sizeBytes = (await stat(path)).size;
  if (sizeBytes === 0) throw new FileProblem('The file is empty.');
  const { source, unpack } = await openPacked(path, sizeBytes);
  const take = async (chunks: AsyncIterable<Buffer>) => {
    for await (const chunk of chunks) if (!(await consume(chunk, source.bytesRead))) return;
  };
  const [first, second] = unpack;
  const packing = second === undefined ? 'gzip' : 'zip';
  try {
    if (first === undefined) await pipeline(source, take);
    else if (second === undefined) await pipeline(source, first, take);
    else await pipeline(source, first, second, take);
  } catch (error) {
    if (error instanceof FileProblem) throw error;
    const code = error instanceof Error && 'code' in error ? String(error.code) : '';
    if (code.startsWith('Z_'))
      throw new FileProblem(
        code === 'Z_BUF_ERROR'
          ? `The packed file (${packing}) ends before its end: it was cut short. Fetch it again.`
          : `The packed file (${packing}) is damaged. Fetch it again.`,
      );
    // The taker left early: the streams before it were told to stop.
    if (code === 'ERR_STREAM_PREMATURE_CLOSE') return { sizeBytes };
    throw error;
  }
  return { sizeBytes };
}

/** The first bytes of a file's content, unpacked, without byte-order mark. */
export async function readHead(path: string, mostBytes: number): Promise<Buffer> {
  const pieces: Buffer[] = [];
  let length = 0;
  await readContent(path, (chunk) => {
    pieces.push(chunk);
    length += chunk.length;
    return length < mostBytes;
  });
  return withoutMark(Buffer.concat(pieces).subarray(0, mostBytes));
}

export function withoutMark(bytes: Buffer): Buffer {
  return bytes[0] === 0xef && bytes[1] === 0xbb && bytes[2] === 0xbf ? bytes.subarray(3) : bytes;
}

async function openPacked(path: string, sizeBytes: number): Promise<Opened> {
  const file = await open(path);
  try {
    const { buffer: head } = await file.read(Buffer.alloc(4), 0, 4, 0);
    if (head[0] === 0x1f && head[1] === 0x8b)
      return {
        source: createReadStream(path, { highWaterMark: chunkBytes }),
        unpack: [createGunzip({ chunkSize: chunkBytes })],
      };
    if (head.readUInt32LE(0) === 0x04034b50) {
      const entry = await findInZip(file, sizeBytes);
      return {
        source: createReadStream(path, {
          highWaterMark: chunkBytes,
          start: entry.startByte,
          end: entry.startByte + entry.packedBytes - 1,
        }),
        unpack: unpackZip(entry, chunkBytes),
      };
    }
    return { source: createReadStream(path, { highWaterMark: chunkBytes }), unpack: [] };
  } finally {
    await file.close();
  }
}
