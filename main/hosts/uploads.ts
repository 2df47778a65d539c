import { randomUUID } from 'node:crypto';
import { createWriteStream, mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Readable } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import { Refusal } from '../requests/problem.ts';

/** Large enough for decades of any station's reports, small enough not to fill a disk by mistake. */
export const uploadLimitBytes = 4 * 1024 ** 3;

/** Files that a person chose in a browser, which tells no path: copies in a private folder until the program ends. */
export interface Uploads {
  /**
   * Keep a file under its own name.
   * @returns the path of the copy
   * @throws Refusal for a name that is none, or a file over the limit
   */
  keep(name: string, content: Readable, limitBytes?: number): Promise<string>;
  clear(): void;
}

export function makeUploads(): Uploads {
  let folder: string | null = null;
  return {
    async keep(name, content, limitBytes = uploadLimitBytes) {
      if (!isPlainName(name))
        throw new Refusal('file-refused', `'${name}' is not the name of a file. Nothing was read.`);
      // mkdtemp makes a folder that only its owner can enter.
      folder ??= mkdtempSync(join(tmpdir(), 'tarewing-files-'));
      const own = join(folder, randomUUID());
      mkdirSync(own);
      const path = join(own, name);
      let bytes = 0;
      try {
        await pipeline(
          content,
          async function* (parts: AsyncIterable<Buffer>) {
            for await (const part of parts) {
              bytes += part.length;
              if (bytes > limitBytes)
                throw new Refusal(
                  'file-refused',
                  `${name} is larger than ${String(Math.round(limitBytes / 1024 ** 2))} MB. Nothing was read.`,
                );
              yield part;
            }
          },
          createWriteStream(path, { mode: 0o600 }),
        );
      } catch (error) {
        rmSync(own, { recursive: true, force: true });
        throw error;
      }
      return path;
    },
    clear() {
      if (folder !== null) rmSync(folder, { recursive: true, force: true, maxRetries: 3 });
      folder = null;
    },
  };
}

/** One step of a path: no separators of any system, no control characters, not a folder's own names. */
function isPlainName(name: string): boolean {
  return name.length > 0 && name.length <= 200 && !/[\\/:\p{Cc}]/u.test(name) && !/^\.+$/.test(name);
}
