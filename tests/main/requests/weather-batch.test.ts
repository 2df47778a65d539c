import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { gunzipSync, gzipSync } from 'node:zlib';
import { beforeEach, describe, expect, test } from 'vitest';
import type { OutputOf } from '../../../main/requests/table.ts';
import { loadObservations } from '../../../main/store/load-observations.ts';
import { memoryLibrary, type MemoryLibrary } from '../memory-library.ts';
import { cancelAtBlock } from './cancel-at-block.ts';
import { fileWith, sample } from '../weather-import/samples.ts';
import { zipOf } from '../weather-import/zip-of.ts';

type Looked = OutputOf<'weather.previewFiles'>;
type Imported = OutputOf<'weather.importFiles'>;
type Imports = OutputOf<'weather.imports'>;

const ohare = { listKey: '725300-94846' };
const lines = gunzipSync(readFileSync(sample('725300-94846-2016.gz')))
  .toString('latin1')
  .trimEnd()
  .split('\n');
/** Two months of a real record, put into another year. */
const year = (of: number) => lines.map((line) => String(of) + line.slice(4)).join('\n');

/** A folder as a person drops it: six years, packed in three ways, with what lies about in folders. */
function yearsFolder(): string {
  const folder = join(dirname(fileWith('x')), 'years');
  mkdirSync(join(folder, 'older'), { recursive: true });
  for (const of of [2008, 2009, 2010])
    writeFileSync(join(folder, `725300-94846-${String(of)}.gz`), gzipSync(year(of)));
  writeFileSync(join(folder, 'older', '725300-94846-2006.txt'), year(2006));
  writeFileSync(
    join(folder, 'two.zip'),
    zipOf([
      { name: '725300-94846-2011.gz', content: gzipSync(year(2011)) },
      { name: '725300-94846-2012', content: Buffer.from(year(2012)) },
    ]),
  );
  writeFileSync(join(folder, '.hidden'), 'x');
  writeFileSync(join(folder, 'notes.txt'), 'what was fetched, and when\nand from where\n');
  return folder;
}

let library: MemoryLibrary;
beforeEach(() => {
  library = memoryLibrary();
});
const look = (...paths: string[]) =>
  library.ask('weather.previewFiles', { files: paths.map((path) => ({ path })) }) as Promise<Looked>;
const stored = () =>
  library.db
    .prepare<[], { blocks: number; imports: number; stations: number }>(
      `SELECT (SELECT COUNT(*) FROM observation_block) AS blocks, (SELECT COUNT(*) FROM weather_import) AS imports,
              (SELECT COUNT(*) FROM weather_station) AS stations`,
    )
    .get();
const toImport = ({ files }: Looked) =>
  files
    .filter(({ preview }) => preview !== null)
    .map(({ path, entry }) => ({ path, ...(entry === null ? {} : { entry }), station: ohare }));

describe('a folder of six years', () => {
  test('is looked through at once: every file by itself, also those inside an archive', async () => {
    const { files } = await look(yearsFolder());
    expect(files.map(({ fileName }) => fileName)).toEqual([
      '725300-94846-2008.gz',
      '725300-94846-2009.gz',
      '725300-94846-2010.gz',
      'notes.txt',
      '725300-94846-2006.txt',
      'two.zip: 725300-94846-2011.gz',
      'two.zip: 725300-94846-2012',
    ]);
    // The packed sample has 1,500 lines; 29 February 2016 is no day of the other years, so its hours are left out.
    const february29 = lines.filter((line) => line.startsWith('2016 02 29')).length;
    expect(february29).toBe(24);
    for (const { fileName, preview, known, problem } of files) {
      expect(known).toBeNull();
      if (fileName === 'notes.txt') {
        expect(problem).toMatchObject({ code: 'file-refused' });
        expect(problem?.sentence).toMatch(/^notes\.txt was not read\. What is in it is not known here\./);
      } else {
        const leap = /2008|2012/.test(fileName);
        expect(preview).toMatchObject({
          observationCount: leap ? 1500 : 1500 - february29,
          stationGuess: { key: '725300-94846' },
        });
      }
    }
    expect(stored()).toEqual({ blocks: 0, imports: 0, stations: 0 });
  });

  test('is imported by one act, adds nothing when repeated, and is taken back by one act', async () => {
    const folder = yearsFolder();
    const looked = await look(folder);
    const { batchId, files } = (await library.ask('weather.importFiles', {
      files: toImport(looked),
    })) as Imported;
    expect(files.map(({ imported }) => imported?.newCount)).toEqual([1500, 1476, 1476, 1476, 1476, 1500]);
    const imports = (await library.ask('weather.imports', {})) as Imports;
    expect(imports).toHaveLength(6);
    expect(new Set(imports.map((each) => each.batchId))).toEqual(new Set([batchId]));
    const before = stored();
    expect(before?.stations).toBe(1);
    const station = imports[0]?.stationId ?? '';
    expect(loadObservations(library.db, station).epochMinute.length).toBe(2 * 1500 + 4 * 1476);

    const again = await look(folder);
    expect(again.files.filter(({ known }) => known !== null)).toHaveLength(6);
    expect(again.files.some(({ preview }) => preview !== null)).toBe(false);
    const repeated = (await library.ask('weather.importFiles', { files: toImport(looked) })) as Imported;
    expect(repeated.batchId).toBeNull();
    expect(repeated.files.map(({ imported }) => [imported?.importId, imported?.newCount])).toEqual(
      repeated.files.map(() => [null, 0]),
    );
    expect(stored()).toEqual(before);

    expect(await library.ask('weather.takeBackBatch', { batchId })).toEqual({
      fileCount: 6,
      observationCount: 2 * 1500 + 4 * 1476,
    });
    expect(stored()).toEqual({ blocks: 0, imports: 0, stations: 0 });
    await expect(library.ask('weather.takeBackBatch', { batchId })).rejects.toThrow(
      'There is no such import any more. Nothing was changed.',
    );
  });

  test('cancelled after any of its files, leaves the library as it was', async () => {
    const files = toImport(await look(yearsFolder()));
    await library.ask('weather.import', { path: sample('725300-94846-2016.gz'), station: ohare });
    const before = stored();
    for (const blocksBefore of [0, 1, 7, 17]) {
      const answer = await cancelAtBlock(library, blocksBefore, 'weather.importFiles', { files });
      expect(answer).toMatchObject({ ok: false, problem: { code: 'cancelled' } });
      expect(stored()).toEqual(before);
    }
  });
});

test('an archive of several files is refused by the request for one, and each can be named', async () => {
  const path = fileWith(
    zipOf([2009, 2010].map((of) => ({ name: `${String(of)}.txt`, content: Buffer.from(year(of)) }))),
    'two.zip',
  );
  await expect(library.ask('weather.import', { path, station: ohare })).rejects.toThrow(
    'There are 2 files in it: say which one is meant, or import them by one act. Nothing was changed.',
  );
  await expect(library.ask('weather.preview', { path })).rejects.toThrow(/Say which one is meant/);
  expect(await library.ask('weather.import', { path, entry: '2010.txt', station: ohare })).toMatchObject({
    newCount: 1476,
  });
  await expect(library.ask('weather.preview', { path, entry: '2011.txt' })).rejects.toThrow(
    /has no file '2011\.txt' in it/,
  );
});

test('a file that cannot be read does not keep the others out', async () => {
  const good = fileWith(year(2010), '725300-94846-2010.txt');
  const cut = fileWith(gzipSync(year(2009)).subarray(0, 4000), '725300-94846-2009.gz');
  const { files } = (await library.ask('weather.importFiles', {
    files: [cut, good].map((path) => ({ path, station: ohare })),
  })) as Imported;
  expect(files[0]).toMatchObject({ imported: null, problem: { code: 'file-refused' } });
  expect(files[0]?.problem?.sentence).toMatch(/was cut short/);
  expect(files[1]?.imported?.newCount).toBe(1476);
  expect(stored()).toMatchObject({ imports: 1 });
});

test('the same file twice in one act, and files that overlap, add each observation once', async () => {
  const first = fileWith(lines.slice(0, 900).join('\n'), 'first.txt');
  const second = fileWith(lines.slice(600).join('\n'), 'second.txt');
  const { files } = (await library.ask('weather.importFiles', {
    files: [first, first, second].map((path) => ({ path, station: ohare })),
  })) as Imported;
  expect(files.map(({ imported }) => imported?.newCount)).toEqual([900, 0, 600]);
  expect(files[1]?.imported?.importId).toBeNull();
});

test('a place typed for several files is one station', async () => {
  const place = { name: 'Strip', latitudeDeg: 40, longitudeDeg: -105, elevationM: 1600 };
  await library.ask('weather.importFiles', {
    files: [2009, 2010].map((of) => ({ path: fileWith(year(of), 'plain.txt'), station: { place } })),
  });
  expect(stored()).toMatchObject({ imports: 2, stations: 1 });
});

test('a file is known by its bytes, and one changed byte makes it another', async () => {
  const path = fileWith(lines.join('\n'), 'plain.txt');
  await library.ask('weather.import', { path, station: ohare });
  expect((await look(path)).files[0]?.known).toMatchObject({ observationCount: 1500 });
  // Same size, one temperature a tenth of a degree off.
  writeFileSync(path, lines.with(700, (lines[700] ?? '').replace(/\d(?= )/, '9')).join('\n'));
  expect((await look(path)).files[0]?.known).toBeNull();
});

test('a file of several stations is read again for each of them', async () => {
  const path = sample('EWR_LGA_2013_excerpt.csv');
  const proposed = (await library.ask('weather.proposeMapping', {
    path,
  })) as OutputOf<'weather.proposeMapping'>;
  const files = [{ path, mapping: proposed.mapping ?? undefined }];
  const first = (await library.ask('weather.previewFiles', { files })) as Looked;
  expect(first.files[0]?.preview).toMatchObject({ stationRead: 'EWR', stationGuess: { identifier: 'KEWR' } });
  const second = (await library.ask('weather.previewFiles', {
    files: files.map((file) => ({ ...file, stationInFile: 'LGA' })),
  })) as Looked;
  expect(second.files[0]?.preview).toMatchObject({
    stationRead: 'LGA',
    stationGuess: { identifier: 'KLGA' },
  });
  for (const [stationInFile, listKey] of [
    ['EWR', first.files[0]?.preview?.stationGuess?.key],
    ['LGA', second.files[0]?.preview?.stationGuess?.key],
  ])
    await library.ask('weather.importFiles', {
      files: files.map((file) => ({ ...file, stationInFile, station: { listKey } })),
    });
  expect(stored()).toMatchObject({ imports: 2, stations: 2 });
});
