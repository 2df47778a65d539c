import { expect, test } from 'vitest';
import { chosenFiles, droppedFiles } from '../../../../renderer/screens/weather/droppedFiles.ts';

const file = (name: string) => new File(['x'], name);
// Entries as the File and Directory Entries API gives them: a reader hands over a hundred at a time.
const fileEntry = (name: string) => ({
  name,
  isFile: true,
  isDirectory: false,
  file: (done: (file: File) => void) => {
    done(file(name));
  },
});
const folderEntry = (name: string, entries: readonly object[]) => ({
  name,
  isFile: false,
  isDirectory: true,
  createReader: () => {
    let at = 0;
    return {
      readEntries: (done: (some: readonly object[]) => void) => {
        done(entries.slice(at, (at += 100)));
      },
    };
  },
});
const transfer = (entries: readonly object[], files: readonly File[] = []) =>
  ({ items: entries.map((entry) => ({ webkitGetAsEntry: () => entry })), files }) as unknown as DataTransfer;

test('every file of dropped folders and their folders is taken, hidden ones are not', async () => {
  const years = Array.from({ length: 130 }, (_, at) => fileEntry(`${String(1900 + at)}.gz`));
  const files = await droppedFiles(
    transfer([
      fileEntry('alone.csv'),
      folderEntry('years', [...years, fileEntry('.DS_Store'), folderEntry('more', [fileEntry('2030.gz')])]),
      folderEntry('.git', [fileEntry('HEAD')]),
    ]),
  );
  expect(files.map(({ name }) => name)).toEqual(['alone.csv', ...years.map(({ name }) => name), '2030.gz']);
});

test('a drop without entries has its files, and none has none', async () => {
  expect((await droppedFiles(transfer([], [file('a.csv')]))).map(({ name }) => name)).toEqual(['a.csv']);
  expect(await droppedFiles(null)).toEqual([]);
});

test('a chosen folder is taken without its hidden files', () => {
  const list = [file('a.gz'), file('.hidden')] as unknown as FileList;
  expect(chosenFiles(list).map(({ name }) => name)).toEqual(['a.gz']);
  expect(chosenFiles(null)).toEqual([]);
});
