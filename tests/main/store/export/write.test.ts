import Database from 'better-sqlite3';
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { tableNames } from '../../../../main/store/export/read-tables.ts';
import { csvLine } from '../../../../main/store/export/csv.ts';
import { columnEndings, describedTables } from '../../../../main/store/export/tables.ts';
import { exportLibrary, salvageLibrary } from '../../../../main/store/export/write.ts';
import { openLibrary } from '../../../../main/store/open.ts';
import { writeSetting } from '../../../../main/store/settings.ts';
import { refused } from '../refused.ts';
import { bytesOf, temporaryFolder } from '../temporary-folder.ts';

const folder = temporaryFolder();
const nowEpochS = Date.UTC(2026, 10, 25, 14, 56, 32) / 1000;

async function library(settingsCount = 3): Promise<string> {
  const path = folder.join('mine.tarewing');
  const db = await openLibrary(path);
  db.transaction(() => {
    for (let index = 0; index < settingsCount; index++)
      writeSetting(db, `k${String(index).padStart(6, '0')}`, { note: `a, "b"\n${String(index)}` });
  })();
  db.close();
  return path;
}

test('fields are quoted after RFC 4180, and nothing differs from an empty text', () => {
  // RFC 4180, section 2, rules 5 to 7.
  expect(csvLine(['plain', 'with, comma', 'with "quote"', 'two\nlines', '', null, 0.1, -3, 12n])).toBe(
    'plain,"with, comma","with ""quote""","two\nlines","",,0.1,-3,12\r\n',
  );
});

test('an export has one CSV a table, a JSON of all, and a README that says what is what', async () => {
  const path = await library();
  const exported = await exportLibrary(path, folder.path, { nowEpochS });
  expect(exported.folder).toBe(folder.join('mine export 2026-11-25T14-56-32Z'));
  expect(readdirSync(exported.folder)).toEqual(
    expect.arrayContaining(['README.txt', 'library.json', 'setting.csv']),
  );
  expect(readFileSync(join(exported.folder, 'setting.csv'), 'utf8').split('\r\n').slice(0, 2)).toEqual([
    'key,value_json',
    'k000000,"{""note"":""a, \\""b\\""\\n0""}"',
  ]);
  const json = JSON.parse(readFileSync(join(exported.folder, 'library.json'), 'utf8')) as {
    tables: Record<string, { value_json: string }[]>;
  };
  expect(json.tables.setting?.map((row) => JSON.parse(row.value_json) as unknown)).toEqual(
    [0, 1, 2].map((index) => ({ note: `a, "b"\n${String(index)}` })),
  );
  expect(json.tables).not.toHaveProperty('change_record');
  const readme = readFileSync(join(exported.folder, 'README.txt'), 'utf8');
  expect(readme).toContain('setting.csv (3 rows)');
  expect(readme).toContain('_kg: kilograms');
  expect(readme).not.toContain('NOT COMPLETE');
});

test('every table has its sentence for the README, and every column with a unit has its ending there', async () => {
  const db = await openLibrary(await library());
  const names = tableNames(db).map(({ name }) => name);
  expect(names.filter((name) => !(name in describedTables))).toEqual([]);
  expect(Object.keys(describedTables).filter((name) => !names.includes(name))).toEqual([]);
  const endings = new Set(columnEndings.map(([ending]) => ending));
  // Every REAL is a quantity and must end in a unit that the README explains.
  const reals = names.flatMap((table) =>
    db
      .prepare<[string], { name: string }>("SELECT name FROM pragma_table_info(?) WHERE type = 'REAL'")
      .all(table)
      .map(({ name }) => `${table}.${name}`),
  );
  db.close();
  expect(reals.length).toBeGreaterThan(0);
  expect(reals.filter((name) => ![...endings].some((ending) => name.endsWith(ending)))).toEqual([]);
});

test('an export of many rows reports, and a cancel leaves nothing of it', async () => {
  const path = await library(5000);
  const heard: number[] = [];
  await exportLibrary(path, folder.path, { nowEpochS, progress: (_table, count) => heard.push(count) });
  expect(Math.max(...heard)).toBeGreaterThanOrEqual(5000);
  const controller = new AbortController();
  const before = bytesOf(folder.path);
  const problem = await refused(() =>
    exportLibrary(path, folder.path, {
      nowEpochS: nowEpochS + 60,
      signal: controller.signal,
      progress: () => {
        controller.abort();
      },
    }),
  );
  expect(problem.code).toBe('cancelled');
  expect(bytesOf(folder.path)).toEqual(before);
});

test('a missing folder is refused', async () => {
  const path = await library();
  expect((await refused(() => exportLibrary(path, folder.join('none'), { nowEpochS }))).code).toBe(
    'not-found',
  );
});

test('from a newer library what it has is written, tables unknown here too, and it is left as it was', async () => {
  const path = await library();
  const db = new Database(path);
  db.exec("CREATE TABLE wormhole (name TEXT, seen BLOB); INSERT INTO wormhole VALUES ('far', x'0102')");
  db.pragma('user_version = 99990');
  db.close();
  const before = readFileSync(path);
  const exported = await salvageLibrary(path, folder.path, { nowEpochS });
  expect(readFileSync(join(exported.folder, 'wormhole.csv'), 'utf8')).toBe('name,seen\r\nfar,AQI=\r\n');
  expect(readFileSync(join(exported.folder, 'README.txt'), 'utf8')).toContain('A table of another version.');
  expect(readFileSync(path).equals(before)).toBe(true);
});

test('from a damaged library the rows before the damage are saved, and the README says where it stopped', async () => {
  const path = await library(2000);
  const bytes = readFileSync(path);
  // The page of 4 kB that holds the row in the middle.
  const page = Math.floor(bytes.indexOf('k001000') / 4096) * 4096;
  bytes.fill(0xa5, page, page + 4096);
  writeFileSync(path, bytes);
  const exported = await salvageLibrary(path, folder.path, { nowEpochS });
  const settings = exported.files.find(({ table }) => table === 'setting');
  expect(settings?.stoppedBy).toMatch(/malformed/);
  expect(settings?.rowsCount).toBeGreaterThan(900);
  expect(readFileSync(join(exported.folder, 'setting.csv'), 'utf8').match(/^k\d{6},/gm)).toHaveLength(
    settings?.rowsCount ?? -1,
  );
  expect(readFileSync(join(exported.folder, 'README.txt'), 'utf8')).toContain('NOT COMPLETE');
  expect(readFileSync(path).equals(bytes)).toBe(true);
});

test('a file of which nothing can be read is said to be such, and is left as it was', async () => {
  const path = folder.join('mine.tarewing');
  writeFileSync(path, 'no library at all, but long enough to be looked at. '.repeat(100));
  const before = bytesOf(folder.path);
  expect(await refused(() => salvageLibrary(path, folder.path, { nowEpochS }))).toMatchObject({
    code: 'library-damaged',
    sentence: expect.stringMatching(/^Nothing could be read from .* It was not touched\./) as string,
  });
  expect(bytesOf(folder.path)).toEqual(before);
});
