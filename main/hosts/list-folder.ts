import { readdirSync, statSync } from 'node:fs';
import { dirname, extname, join, resolve } from 'node:path';
import type { Folder } from '../requests/host.ts';
import { Refusal } from '../requests/problem.ts';
import { libraryExtension } from './library-place.ts';

/**
 * The folders and library files in a folder, for choosing a library in both hosts alike: a browser never tells
 * a page where a chosen file lies. Hidden folders are left out.
 * @throws Refusal where the folder cannot be read
 */
export function listFolder(folderPath: string): Folder {
  const path = resolve(folderPath);
  let entries;
  try {
    entries = readdirSync(path, { withFileTypes: true });
  } catch {
    throw new Refusal('file-refused', `The folder ${path} cannot be read.`);
  }
  const visible = entries
    .filter((entry) => !entry.name.startsWith('.'))
    .sort((a, b) => a.name.localeCompare(b.name));
  const parent = dirname(path);
  return {
    path,
    parentPath: parent === path ? null : parent,
    folders: visible
      .filter((entry) => entry.isDirectory())
      .map(({ name }) => ({ name, path: join(path, name) })),
    libraries: visible
      .filter((entry) => entry.isFile() && extname(entry.name) === libraryExtension)
      .map(({ name }) => {
        const { size, mtimeMs } = statSync(join(path, name));
        return { name, path: join(path, name), sizeBytes: size, changedEpochS: mtimeMs / 1000 };
      }),
  };
}
