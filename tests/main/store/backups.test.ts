import { mkdirSync, readdirSync, statSync, utimesSync, writeFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { backupName, backupsFolder, parseBackupName } from '../../../main/store/backup-names.ts';
import { backUpAtStart, lastChangedMs, listBackups, makeBackup } from '../../../main/store/backups.ts';
import { openLibrary } from '../../../main/store/open.ts';
import { readSetting, writeSetting } from '../../../main/store/settings.ts';
import { refused } from './refused.ts';
import { temporaryFolder } from './temporary-folder.ts';

const folder = temporaryFolder();
const nowEpochS = Date.UTC(2026, 10, 25, 14, 56, 32) / 1000;

/** One start of the program, as the writing thread does it. */
async function start(path: string, atEpochS: number, change?: string): Promise<boolean> {
  const changedMs = lastChangedMs(path);
  const db = await openLibrary(path);
  const backup = await backUpAtStart(db, path, changedMs, atEpochS);
  if (change !== undefined) writeSetting(db, 'word', change);
  db.close();
  return backup !== null;
}

test('a backup is a library of its own, without side files, named by time, format and reason', async () => {
  const path = folder.join('mine.tarewing');
  const db = await openLibrary(path);
  writeSetting(db, 'word', 'saved');
  const backup = await makeBackup(db, path, 'asked', nowEpochS);
  db.close();
  expect(listBackups(path)).toEqual([backup]);
  expect(readdirSync(backupsFolder(path))).toEqual([
    `2026-11-25T14-56-32Z v${String(backup.schemaVersion)} asked.tarewing`,
  ]);
  const copy = await openLibrary(backup.path);
  expect(readSetting.one(copy, 'word')).toBe('saved');
  copy.close();
});

test('a backup is made at start when something changed since the last one, and not otherwise', async () => {
  const path = folder.join('mine.tarewing');
  expect(await start(path, nowEpochS, 'one')).toBe(false);
  expect(await start(path, nowEpochS + 10)).toBe(true);
  expect(await start(path, nowEpochS + 20)).toBe(false);
  expect(await start(path, nowEpochS + 30, 'two')).toBe(false);
  // A clock that was set back does not hide the change.
  expect(await start(path, nowEpochS - 90_000)).toBe(true);
  expect(await start(path, nowEpochS + 40)).toBe(false);
});

test('a save on the same connection during a backup is not lost and does not spoil the copy', async () => {
  const path = folder.join('mine.tarewing');
  const db = await openLibrary(path);
  // Many steps of the copy: it moves 100 pages of 4 kB at a time.
  for (let index = 0; index < 600; index++) writeSetting(db, `k${String(index)}`, 'x'.repeat(8000));
  const running = makeBackup(db, path, 'asked', nowEpochS);
  await new Promise((resolve) => setImmediate(resolve));
  writeSetting(db, 'word', 'meanwhile');
  const backup = await running;
  db.close();
  const copy = await openLibrary(backup.path);
  expect(copy.pragma('integrity_check', { simple: true })).toBe('ok');
  expect(Object.keys(readSetting.all(copy)).length).toBeGreaterThanOrEqual(600);
  copy.close();
});

test('two backups at once are two whole backups', async () => {
  const path = folder.join('mine.tarewing');
  const db = await openLibrary(path);
  for (let index = 0; index < 300; index++) writeSetting(db, `k${String(index)}`, 'x'.repeat(8000));
  await Promise.all([makeBackup(db, path, 'start', nowEpochS), makeBackup(db, path, 'start', nowEpochS)]);
  db.close();
  expect(listBackups(path)).toHaveLength(2);
  for (const backup of listBackups(path)) {
    const copy = await openLibrary(backup.path);
    expect(Object.keys(readSetting.all(copy))).toHaveLength(300);
    copy.close();
  }
});

test('where no backup can be made, the sentence says so and nothing is left of it', async () => {
  const path = folder.join('mine.tarewing');
  const db = await openLibrary(path);
  writeFileSync(backupsFolder(path), 'a file where the folder should be');
  const problem = await refused(() => makeBackup(db, path, 'asked', nowEpochS));
  expect(problem.sentence).toMatch(/^No backup could be made in .* The library itself was not touched\./);
  db.close();
});

test('a stranger in the folder of backups is neither listed nor removed, and a half one is swept', async () => {
  const path = folder.join('mine.tarewing');
  const db = await openLibrary(path);
  mkdirSync(backupsFolder(path));
  for (const name of ['notes.txt', 'unfinished-4711']) writeFileSync(`${backupsFolder(path)}/${name}`, 'x');
  const backup = await makeBackup(db, path, 'asked', nowEpochS);
  db.close();
  expect(listBackups(path)).toEqual([backup]);
  expect(readdirSync(backupsFolder(path))).toHaveLength(2);
});

test('a year of starts leaves the last five, one for each of eight weeks, and the last of each format', async () => {
  const path = folder.join('mine.tarewing');
  const db = await openLibrary(path);
  mkdirSync(backupsFolder(path));
  const old = { madeEpochS: nowEpochS - 400 * 86_400, schemaVersion: 3, reason: 'migration' as const };
  writeFileSync(`${backupsFolder(path)}/${backupName(old)}`, 'of an old format');
  const version = db.pragma('user_version', { simple: true }) as number;
  for (let day = 365; day >= 1; day--)
    writeFileSync(
      `${backupsFolder(path)}/${backupName({ madeEpochS: nowEpochS - day * 86_400, schemaVersion: version, reason: 'start' })}`,
      '',
    );
  await makeBackup(db, path, 'start', nowEpochS);
  db.close();
  const days = listBackups(path).map((backup) => Math.round((nowEpochS - backup.madeEpochS) / 86_400));
  // 25 November 2026 is a Wednesday (ISO 8601 calendar), so the Sundays before lie 3, 10, 17, ... days back.
  expect(days).toEqual([0, 1, 2, 3, 4, 10, 17, 24, 31, 38, 45, 400]);
});

test('names are read back as they were written, and nothing else is taken for one', () => {
  const named = { madeEpochS: nowEpochS, schemaVersion: 40, reason: 'migration' as const };
  expect(parseBackupName(backupName(named))).toEqual(named);
  for (const name of ['mine.tarewing', '2026-13-45T99-99-99Z v1 start.tarewing', `${backupName(named)}-wal`])
    expect(parseBackupName(name)).toBeNull();
});

test('a log that a killed program left counts as a change', async () => {
  const path = folder.join('mine.tarewing');
  expect(lastChangedMs(path)).toBeNull();
  const db = await openLibrary(path);
  writeSetting(db, 'word', 'in the log');
  utimesSync(path, 1_000, 1_000);
  expect(lastChangedMs(path)).toBe(statSync(`${path}-wal`).mtimeMs);
  db.close();
});
