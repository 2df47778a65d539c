import { mkdirSync, readdirSync, writeFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { addNotice } from '../../../main/store/notices.ts';
import { fileLibrary } from '../file-library.ts';
import { temporaryFolder } from '../store/temporary-folder.ts';

const folder = temporaryFolder();
const put = (value: string) => ({ key: 'word', value, named: `word ${value}` });

test('a library is backed up, changed, and restored through its requests, and undo is that of the backup', async () => {
  const library = await fileLibrary(folder.join('mine.tarewing'));
  await library.ask('settings.put', put('old'));
  const made = (await library.ask('library.backUp', {})) as { path: string };
  await library.ask('settings.put', put('new'));
  expect(await library.ask('library.backups', {})).toMatchObject({
    backups: [{ path: made.path, reason: 'asked' }],
  });
  const { keptPath } = (await library.ask('library.restore', { path: made.path })) as { keptPath: string };
  expect(readdirSync(folder.path)).toContain(keptPath.slice(folder.path.length + 1));
  expect(await library.ask('settings.get', {})).toEqual({ word: 'old' });
  expect(await library.ask('history.next', {})).toMatchObject({ undo: { named: 'word old' }, redo: null });
  expect(library.changedAreas).toContain('aircraft');
  library.close();
});

test('a notice is shown until it is dismissed', async () => {
  const library = await fileLibrary(folder.join('mine.tarewing'));
  addNotice(library.db, 1_790_000_000, 'Something happened to the file.');
  expect(await library.ask('library.describe', {})).toMatchObject({
    synced: null,
    notices: [{ seq: 1, sentence: 'Something happened to the file.' }],
  });
  await library.ask('library.dismissNotice', { seq: 1 });
  expect(await library.ask('library.describe', {})).toMatchObject({ notices: [] });
  await expect(library.ask('library.dismissNotice', { seq: 7 })).rejects.toThrow('There is no notice 7.');
  library.close();
});

test('a library in the folder of a syncing service carries the caution', async () => {
  mkdirSync(folder.join('Nextcloud'));
  const library = await fileLibrary(folder.join('Nextcloud', 'mine.tarewing'));
  expect(await library.ask('library.describe', {})).toMatchObject({
    synced: { service: 'Nextcloud', caution: expect.stringContaining('can be damaged') as string },
  });
  library.close();
});

test('an export through its request names its files and how many rows each has', async () => {
  const library = await fileLibrary(folder.join('mine.tarewing'));
  await library.ask('settings.put', put('one'));
  const exported = (await library.ask('library.export', { into: folder.path })) as { files: unknown[] };
  expect(exported.files).toContainEqual({ file: 'setting.csv', rowsCount: 1, stoppedBy: null });
  expect(library.progress.some(({ doing }) => doing === 'Writing setting.csv')).toBe(true);
  library.close();
});

test('a full disk refuses the save with a sentence and leaves the data as it was', async () => {
  const library = await fileLibrary(folder.join('mine.tarewing'));
  await library.ask('settings.put', put('before'));
  // As when the disk has no room: SQLite may not add another page to the file.
  library.db.pragma(`max_page_count = ${String(library.db.pragma('page_count', { simple: true }))}`);
  const answer = await library.request('settings.put', { ...put('x'.repeat(20_000)), named: 'much' });
  expect(answer).toEqual({
    ok: false,
    problem: {
      code: 'disk',
      sentence: 'The disk is full. Nothing was changed. Make room and do it again.',
      fields: [],
    },
  });
  expect(await library.ask('settings.get', {})).toEqual({ word: 'before' });
  expect(await library.ask('history.next', {})).toMatchObject({ undo: { named: 'word before' }, redo: null });
  library.db.pragma('max_page_count = 1000000');
  await library.ask('settings.put', put('after'));
  expect(await library.ask('settings.get', {})).toEqual({ word: 'after' });
  expect(library.db.pragma('integrity_check', { simple: true })).toBe('ok');
  library.close();
});

test('a disk that fills up during an import refuses it, and nothing of it is left', async () => {
  const library = await fileLibrary(folder.join('mine.tarewing'));
  const path = folder.join('strip.csv');
  const hours = Array.from({ length: 20_000 }, (_, hour) =>
    new Date(Date.UTC(2021, 0, 1, hour)).toISOString(),
  );
  writeFileSync(
    path,
    `station,valid,tmpf,dwpf,alti\n${hours.map((time) => `S,${time.slice(0, 16).replace('T', ' ')},50,40,30.02`).join('\n')}\n`,
  );
  const place = { name: 'Strip', latitudeDeg: 40, longitudeDeg: -105, elevationM: 1600 };
  // Room for some of its months: each takes some 9 kB.
  library.db.pragma(
    `max_page_count = ${String((library.db.pragma('page_count', { simple: true }) as number) + 30)}`,
  );
  expect(await library.request('weather.import', { path, station: { place } })).toMatchObject({
    ok: false,
    problem: { code: 'disk', sentence: expect.stringContaining('Nothing was changed') as string },
  });
  for (const table of ['weather_import', 'weather_station', 'observation_block', 'observation'])
    expect(library.db.prepare(`SELECT count(*) AS count FROM ${table}`).get()).toEqual({ count: 0 });
  expect(library.db.pragma('integrity_check', { simple: true })).toBe('ok');
  library.close();
});
