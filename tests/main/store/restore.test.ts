import Database from 'better-sqlite3';
import { copyFileSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { makeBackup, type Backup } from '../../../main/store/backups.ts';
import { openNotices } from '../../../main/store/notices.ts';
import { openForReading, openLibrary } from '../../../main/store/open.ts';
import { replaceLibrary, restoreInto } from '../../../main/store/restore.ts';
import { readSetting, writeSetting } from '../../../main/store/settings.ts';
import { refused } from './refused.ts';
import { bytesOf, temporaryFolder } from './temporary-folder.ts';

const folder = temporaryFolder();
const nowEpochS = 1_790_000_000;

/** A library in which 'word' is 'new', with a backup in which it is 'old'. */
async function libraryWithBackup(): Promise<{ path: string; backup: Backup; db: Database.Database }> {
  const path = folder.join('mine.tarewing');
  const db = await openLibrary(path);
  writeSetting(db, 'word', 'old');
  const backup = await makeBackup(db, path, 'asked', nowEpochS);
  writeSetting(db, 'word', 'new');
  return { path, backup, db };
}

async function wordIn(path: string): Promise<unknown> {
  const db = await openLibrary(path);
  const word = readSetting.one(db, 'word');
  db.close();
  return word;
}

test('a backup restored into the open library is seen by every reader, and what was there is kept', async () => {
  const { path, backup, db } = await libraryWithBackup();
  const reader = openForReading(path);
  expect(readSetting.one(reader, 'word')).toBe('new');
  const { keptPath } = await restoreInto(db, path, backup.path, nowEpochS);
  expect(readSetting.one(reader, 'word')).toBe('old');
  expect(readSetting.one(db, 'word')).toBe('old');
  expect(openNotices(reader)[0]?.sentence).toContain(keptPath);
  writeSetting(db, 'after', 'works');
  expect(readSetting.one(reader, 'after')).toBe('works');
  expect(db.pragma('journal_mode', { simple: true })).toBe('wal');
  reader.close();
  db.close();
  expect(await wordIn(path)).toBe('old');
  expect(await wordIn(keptPath)).toBe('new');
});

test('a library too damaged to open is replaced by its backup, and its bytes are kept', async () => {
  const { path, backup, db } = await libraryWithBackup();
  db.close();
  writeFileSync(path, 'what the disk left of it');
  const { keptPath } = await replaceLibrary(path, backup.path, nowEpochS);
  expect(await wordIn(path)).toBe('old');
  expect(readFileSync(keptPath ?? '', 'utf8')).toBe('what the disk left of it');
});

test('the log of a killed program goes with the kept library and is not replayed into the restored one', async () => {
  const { path, backup, db } = await libraryWithBackup();
  const killed = folder.join('killed.tarewing');
  for (const end of ['', '-wal']) copyFileSync(path + end, killed + end);
  db.close();
  const { keptPath } = await replaceLibrary(killed, backup.path, nowEpochS);
  expect(await wordIn(killed)).toBe('old');
  expect(await wordIn(keptPath ?? '')).toBe('new');
});

test('a backup can be put where there is no library any more', async () => {
  const { backup, db } = await libraryWithBackup();
  db.close();
  const gone = folder.join('gone.tarewing');
  expect(await replaceLibrary(gone, backup.path, nowEpochS)).toEqual({ keptPath: null });
  expect(await wordIn(gone)).toBe('old');
});

test('two restores in one second keep both libraries', async () => {
  const { path, backup, db } = await libraryWithBackup();
  const first = await restoreInto(db, path, backup.path, nowEpochS);
  const second = await restoreInto(db, path, backup.path, nowEpochS);
  expect(second.keptPath).not.toBe(first.keptPath);
  db.close();
});

test.each([
  [
    'a damaged backup',
    (path: string) => {
      writeFileSync(path, readFileSync(path).subarray(0, 6000));
    },
    /is damaged/,
  ],
  [
    'a file that is none',
    (path: string) => {
      writeFileSync(path, 'text');
    },
    /is no Tarewing library/,
  ],
  [
    'a newer backup',
    (path: string) => {
      const db = new Database(path);
      db.pragma('user_version = 99990');
      db.close();
    },
    /its format is 99990/,
  ],
])('%s is refused, and the library is untouched', async (_title, spoil, says) => {
  const { path, backup, db } = await libraryWithBackup();
  spoil(backup.path);
  expect((await refused(() => restoreInto(db, path, backup.path, nowEpochS))).sentence).toMatch(says);
  db.close();
  const before = bytesOf(folder.path);
  expect((await refused(() => replaceLibrary(path, backup.path, nowEpochS))).sentence).toMatch(says);
  expect(bytesOf(folder.path)).toEqual(before);
});

test('neither a missing backup nor the library itself is restored', async () => {
  const { path, db } = await libraryWithBackup();
  expect((await refused(() => restoreInto(db, path, folder.join('none'), nowEpochS))).code).toBe('not-found');
  expect((await refused(() => restoreInto(db, path, path, nowEpochS))).code).toBe('input-refused');
  db.close();
  expect(readdirSync(folder.path).sort()).toEqual(['mine.tarewing', 'mine.tarewing-backups']);
});

test('nothing is restored under a running import; and a backup made during one comes back without its half', async () => {
  const { path, backup, db } = await libraryWithBackup();
  db.exec(`
    INSERT INTO weather_station (id, name, latitude_deg, longitude_deg, elevation_m, place_from)
      VALUES ('s', 'Strip', 40, -105, 1600, 'typed');
    INSERT INTO weather_import (station_id, file_name, begun_epoch_s) VALUES ('s', 'strip.csv', 1790000000);
  `);
  expect((await refused(() => restoreInto(db, path, backup.path, nowEpochS))).code).toBe('in-use');
  const during = await makeBackup(db, path, 'asked', nowEpochS);
  db.exec('DELETE FROM weather_import');
  await restoreInto(db, path, during.path, nowEpochS);
  expect(db.prepare('SELECT count(*) AS count FROM weather_import').get()).toEqual({ count: 0 });
  db.close();
});
