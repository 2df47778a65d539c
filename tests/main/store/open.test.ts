import Database from 'better-sqlite3';
import { execFileSync } from 'node:child_process';
import {
  chmodSync,
  copyFileSync,
  existsSync,
  mkdirSync,
  readFileSync,
  truncateSync,
  writeFileSync,
} from 'node:fs';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { applicationId, readHeader } from '../../../main/store/header.ts';
import { newestVersion } from '../../../main/store/migrate.ts';
import { migrations } from '../../../main/store/migrations/all.ts';
import { openForReading, openLibrary } from '../../../main/store/open.ts';
import { readSetting, writeSetting } from '../../../main/store/settings.ts';
import { refused } from './refused.ts';
import { bytesOf, temporaryFolder } from './temporary-folder.ts';

const folder = temporaryFolder();
const known = newestVersion(migrations);

async function soundLibrary(name = 'mine.tarewing'): Promise<string> {
  const path = folder.join(name);
  const db = await openLibrary(path);
  // Enough that the file has many pages, so that damage in the middle hits data.
  for (let index = 0; index < 50; index++) writeSetting(db, `key.k${String(index)}`, 'x'.repeat(3000));
  db.close();
  return path;
}

test('a new library is made whole, is known by its header, and keeps what is written', async () => {
  const path = await soundLibrary();
  expect(readHeader(path)).toMatchObject({ isSqlite: true, applicationId, schemaVersion: known });
  const db = await openLibrary(path);
  expect(db.pragma('journal_mode', { simple: true })).toBe('wal');
  // 2 is FULL (SQLite's documentation of PRAGMA synchronous).
  expect(db.pragma('synchronous', { simple: true })).toBe(2);
  expect(db.pragma('foreign_keys', { simple: true })).toBe(1);
  expect(readSetting.one(db, 'key.k7')).toHaveLength(3000);
  db.close();
  expect(Object.keys(bytesOf(folder.path))).toEqual(['mine.tarewing']);
});

test('every table is strict', async () => {
  const db = await openLibrary(await soundLibrary());
  const loose = db
    .prepare(
      "SELECT name FROM pragma_table_list WHERE schema = 'main' AND type = 'table' AND strict = 0 AND name NOT LIKE 'sqlite_%'",
    )
    .all();
  expect(loose).toEqual([]);
  db.close();
});

test('opening and closing without a change leaves every byte as it was', async () => {
  const path = await soundLibrary();
  const before = bytesOf(folder.path);
  (await openLibrary(path)).close();
  expect(bytesOf(folder.path)).toEqual(before);
});

test('what a program killed in the middle left half made is swept, not opened', async () => {
  writeFileSync(folder.join('mine.tarewing.new'), 'half');
  await soundLibrary();
  expect(existsSync(folder.join('mine.tarewing.new'))).toBe(false);
});

interface Refused {
  title: string;
  make(path: string): void;
  code: string;
  says: RegExp;
}

const refusals: Refused[] = [
  {
    title: 'a library of a newer program, naming both formats',
    make: (path) => {
      const db = new Database(path);
      db.pragma('user_version = 99990');
      db.close();
    },
    code: 'library-newer',
    says: new RegExp(
      `its format is 99990, and this version knows formats up to ${String(known)}\\. It was not touched`,
    ),
  },
  {
    title: 'a library of which the end is missing',
    make: (path) => {
      truncateSync(path, readFileSync(path).length - 5000);
    },
    code: 'library-damaged',
    says: /is damaged: it is cut short \(\d+ of \d+ bytes\)\. It was not touched\. Restore a backup/,
  },
  {
    title: 'a library with a hole in the middle',
    make: (path) => {
      const bytes = readFileSync(path);
      bytes.fill(0xa5, 8192, bytes.length - 4096);
      writeFileSync(path, bytes);
    },
    code: 'library-damaged',
    says: /is damaged: it (fails SQLite's check|cannot be read).*It was not touched/s,
  },
  {
    title: 'an empty file, which is not the same as none',
    make: (path) => {
      writeFileSync(path, '');
    },
    code: 'library-damaged',
    says: /is empty \(0 bytes\)\. It was not touched/,
  },
  {
    title: 'a file of zeros, as a crash of the system leaves it',
    make: (path) => {
      writeFileSync(path, Buffer.alloc(8192));
    },
    code: 'library-damaged',
    says: /begins with nothing but zeros/,
  },
  {
    title: 'a text file',
    make: (path) => {
      writeFileSync(path, 'Dear diary, today we flew to the lake and back.\n'.repeat(20));
    },
    code: 'library-foreign',
    says: /is not an SQLite file, so it is no Tarewing library\. It was not touched\. Choose another file/,
  },
  {
    title: 'an SQLite file of another program',
    make: (path) => {
      writeFileSync(path, '');
      const db = new Database(path);
      db.exec('CREATE TABLE bookmark (url TEXT); PRAGMA user_version = 10');
      db.close();
    },
    code: 'library-foreign',
    says: /is an SQLite file of another program/,
  },
  {
    title: 'a folder in its place',
    make: (path) => {
      execFileSync('rm', [path]);
      mkdirSync(path);
    },
    code: 'library-foreign',
    says: /is not a file/,
  },
];

test.each(refusals)('refuses $title, and touches nothing', async ({ make, code, says }) => {
  const path = await soundLibrary();
  make(path);
  const before = bytesOf(folder.path);
  const problem = await refused(() => openLibrary(path));
  expect(problem.code).toBe(code);
  expect(problem.sentence).toMatch(says);
  expect(bytesOf(folder.path)).toEqual(before);
});

test('a newer format that only the write-ahead log of a killed program knows is refused, and the log is kept', async () => {
  const path = await soundLibrary();
  const db = new Database(path);
  db.pragma('user_version = 99990');
  const killed = folder.join('killed.tarewing');
  for (const end of ['', '-wal']) copyFileSync(path + end, killed + end);
  db.close();
  expect(readHeader(killed).schemaVersion).toBe(known);
  const before = bytesOf(folder.path);
  expect(await refused(() => openLibrary(killed))).toMatchObject({
    code: 'library-newer',
    sentence: expect.stringContaining('99990') as string,
  });
  expect(bytesOf(folder.path)).toEqual(before);
});

test('what a killed program had committed to its write-ahead log is there at the next start', async () => {
  const path = await soundLibrary();
  const db = await openLibrary(path);
  writeSetting(db, 'last.word', 'committed');
  const killed = folder.join('killed.tarewing');
  for (const end of ['', '-wal']) copyFileSync(path + end, killed + end);
  db.close();
  const again = await openLibrary(killed);
  expect(readSetting.one(again, 'last.word')).toBe('committed');
  again.close();
});

test('a missing folder is refused, not made', async () => {
  expect(await refused(() => openLibrary(folder.join('none', 'mine.tarewing')))).toMatchObject({
    code: 'not-found',
    sentence: expect.stringContaining('does not exist, so no library was made') as string,
  });
});

test.each([
  ['an existing library in', 'mine.tarewing'],
  ['a new library for', 'new.tarewing'],
])('%s a folder that may only be read is refused, and touched in nothing', async (_title, name) => {
  await soundLibrary();
  chmodSync(folder.join('mine.tarewing'), 0o444);
  chmodSync(folder.path, 0o555);
  const before = bytesOf(folder.path);
  // The super-user may write everywhere, so the attempt runs in a process that gives that up first.
  const script = fileURLToPath(new URL('open-unprivileged.ts', import.meta.url));
  const answer: unknown = JSON.parse(
    execFileSync(process.execPath, [script, folder.join(name)], { encoding: 'utf8' }),
  );
  expect(answer).toMatchObject({
    code: 'read-only',
    sentence: expect.stringContaining('It was not touched. Allow writing') as string,
  });
  expect(bytesOf(folder.path)).toEqual(before);
  chmodSync(folder.path, 0o755);
});

test.each([
  ['a newer library', 99_990, 'library-newer', /its format is 99990/],
  ['an older library', 10, 'library-older', /older format 10.*Open it once in the window/],
])('a reader refuses %s instead of mistaking its tables', async (_title, version, code, says) => {
  const path = await soundLibrary();
  const db = new Database(path);
  db.pragma(`user_version = ${String(version)}`);
  db.close();
  const problem = await refused(() => openForReading(path));
  expect(problem.code).toBe(code);
  expect(problem.sentence).toMatch(says);
});

test('a reader refuses what is no library', async () => {
  const path = folder.join('diary.tarewing');
  writeFileSync(path, 'Dear diary, today we flew to the lake and back.\n'.repeat(20));
  expect((await refused(() => openForReading(path))).code).toBe('library-foreign');
});
