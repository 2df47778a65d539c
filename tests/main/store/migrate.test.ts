import Database from 'better-sqlite3';
import { copyFileSync, readdirSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { backupsFolder } from '../../../main/store/backup-names.ts';
import { listBackups } from '../../../main/store/backups.ts';
import { nextUndo, recordChange } from '../../../main/store/history.ts';
import { migrate, newestVersion } from '../../../main/store/migrate.ts';
import { migrations } from '../../../main/store/migrations/all.ts';
import type { Migration } from '../../../main/store/migrations/define.ts';
import { openNotices } from '../../../main/store/notices.ts';
import { openLibrary } from '../../../main/store/open.ts';
import { schemaVersion } from '../../../main/store/schema-version.ts';
import { refused } from './refused.ts';
import { bytesOf, temporaryFolder } from './temporary-folder.ts';

const folder = temporaryFolder();
const known = newestVersion(migrations);

const hangar: Migration = {
  version: known + 10,
  brings: 'a table of hangars',
  up: (db) => {
    db.exec('CREATE TABLE hangar (name TEXT NOT NULL) STRICT');
  },
};
const failing: Migration = {
  version: known + 20,
  brings: 'nothing, for it fails',
  up: (db) => {
    db.exec("INSERT INTO hangar VALUES ('half done')");
    throw new Error('the step found what it did not expect');
  },
};
const orphaning: Migration = {
  version: known + 20,
  brings: 'rows that point nowhere',
  up: (db) => {
    db.exec(`
      CREATE TABLE door (id INTEGER PRIMARY KEY, part_of INTEGER REFERENCES door (id)) STRICT;
      INSERT INTO door VALUES (1, 99);
    `);
  },
};

const change = {
  atEpochS: 1_790_000_000,
  named: 'arm of the seats',
  screen: 'aircraft' as const,
  forward: { request: 'settings.put', input: {} },
  inverse: { request: 'settings.put', input: {} },
};

async function libraryWithAChange(): Promise<string> {
  const path = folder.join('mine.tarewing');
  const db = await openLibrary(path);
  recordChange(db, change);
  db.close();
  return path;
}

test('an older library is backed up, brought up to date, and tells what it brought and that undo begins anew', async () => {
  const path = await libraryWithAChange();
  const db = await openLibrary(path, { steps: [...migrations, hangar], nowEpochS: () => 1_790_000_000 });
  expect(schemaVersion(db)).toBe(known + 10);
  expect(nextUndo(db)).toBeNull();
  const [backup] = listBackups(path);
  expect(openNotices(db).map((notice) => notice.sentence)).toEqual([
    `The library was brought from format ${String(known)} to ${String(known + 10)}: a table of hangars. The list of changes was cleared (1), so undo begins anew from here. A backup from before lies at ${backup?.path ?? 'no backup'}.`,
  ]);
  db.close();
  // The backup is the library as it was: this program's own steps open it, with its change.
  const old = await openLibrary(backup?.path ?? '');
  expect(schemaVersion(old)).toBe(known);
  expect(nextUndo(old)?.named).toBe('arm of the seats');
  old.close();
});

test.each([
  ['that throws', failing, /the step found what it did not expect/],
  ['that would leave rows pointing at nothing', orphaning, /1 rows point at rows that are missing/],
])(
  'a step %s is taken back whole; the one before it stays, and the file is sound',
  async (_title, step, says) => {
    const path = await libraryWithAChange();
    const problem = await refused(() => openLibrary(path, { steps: [...migrations, hangar, step] }));
    expect(problem.sentence).toMatch(says);
    expect(problem.sentence).toContain(`It stands whole at format ${String(known + 10)}`);
    const db = new Database(path);
    expect(schemaVersion(db)).toBe(known + 10);
    expect(db.prepare('SELECT count(*) AS count FROM hangar').get()).toEqual({ count: 0 });
    expect(db.pragma('integrity_check', { simple: true })).toBe('ok');
    db.close();
  },
);

test('without a backup nothing is migrated, and the library is as it was', async () => {
  const path = await libraryWithAChange();
  writeFileSync(backupsFolder(path), 'a file where the folder should be');
  const before = bytesOf(folder.path);
  const problem = await refused(() => openLibrary(path, { steps: [...migrations, hangar] }));
  expect(problem.sentence).toMatch(/^No backup could be made in .* The library itself was not touched\./);
  expect(bytesOf(folder.path)).toEqual(before);
});

test('steps out of order are found before any of them runs and before the file is touched', async () => {
  const path = await libraryWithAChange();
  const before = bytesOf(folder.path);
  const ran: number[] = [];
  const step = (version: number): Migration => ({ version, brings: '', up: () => ran.push(version) });
  for (const wrong of [
    [step(known + 20), step(known + 10)],
    [step(known + 10), step(known + 10)],
    [step(known + 0.5)],
  ])
    await expect(openLibrary(path, { steps: [...migrations, ...wrong] })).rejects.toThrow(
      'the numbers must rise',
    );
  expect(ran).toEqual([]);
  expect(bytesOf(folder.path)).toEqual(before);
});

test('the numbers of the steps rise, and each says what it brings', () => {
  const db = new Database(':memory:');
  expect(migrate(db, migrations)?.toVersion).toBe(known);
  expect(migrate(db, migrations)).toBeNull();
  for (const step of migrations) expect(step.brings).toMatch(/\w/);
});

// A library of each version that ever shipped, named by its version; fixtures/libraries/README.md says how to add one.
const kept = fileURLToPath(new URL('../../../fixtures/libraries/', import.meta.url));
const libraries = readdirSync(kept).filter((name) => /^\d{4}\.tarewing$/.test(name));

test('at least one library of an earlier version is kept', () => {
  expect(libraries.length).toBeGreaterThan(0);
});

test.each(libraries)('the kept library %s comes up to date with all its settings', async (name) => {
  const path = folder.join(name);
  copyFileSync(new URL(name, new URL('../../../fixtures/libraries/', import.meta.url)), path);
  const db = await openLibrary(path);
  expect(schemaVersion(db)).toBe(known);
  expect(db.pragma('integrity_check', { simple: true })).toBe('ok');
  expect(db.pragma('foreign_key_check')).toEqual([]);
  expect(db.prepare("SELECT value_json FROM setting WHERE key = 'kept.library'").get()).toEqual({
    value_json: `"version ${String(Number(name.slice(0, 4)))}"`,
  });
  db.close();
});
