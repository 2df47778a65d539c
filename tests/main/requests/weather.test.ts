import { readFileSync, rmSync } from 'node:fs';
import { gunzipSync } from 'node:zlib';
import { beforeEach, describe, expect, test } from 'vitest';
import type { OutputOf } from '../../../main/requests/table.ts';
import { loadObservations } from '../../../main/store/load-observations.ts';
import { missing } from '../../../main/store/observation-columns.ts';
import { addBlocks, beginImport, sweepUnfinishedImports } from '../../../main/store/weather-imports.ts';
import { memoryLibrary, type MemoryLibrary } from '../memory-library.ts';
import { cancelAtBlock } from './cancel-at-block.ts';
import { fileWith, sample, scanAll, utc } from '../weather-import/samples.ts';

type Preview = OutputOf<'weather.preview'>;
type Imported = OutputOf<'weather.import'>;
type Imports = OutputOf<'weather.imports'>;

const ohare = { listKey: '725300-94846' };
const place = {
  place: { name: 'Strip', identifier: null, latitudeDeg: 40, longitudeDeg: -105, elevationM: 1600 },
};
const lines = gunzipSync(readFileSync(sample('725300-94846-2016.gz')))
  .toString('latin1')
  .trimEnd()
  .split('\n');

let library: MemoryLibrary;
beforeEach(() => {
  library = memoryLibrary();
});
const load = (path: string, station: unknown = ohare) =>
  library.ask('weather.import', { path, station }) as Promise<Imported>;
const stored = () =>
  library.db
    .prepare<[], { blocks: number; imports: number; stations: number }>(
      `SELECT (SELECT COUNT(*) FROM observation_block) AS blocks, (SELECT COUNT(*) FROM weather_import) AS imports,
              (SELECT COUNT(*) FROM weather_station) AS stations`,
    )
    .get();

describe('a preview', () => {
  test('finds the station by the numbers in the name, among the rows for one airport the one of these years', async () => {
    const preview = (await library.ask('weather.preview', {
      path: sample('725300-94846-2016.gz'),
    })) as Preview;
    // NOAA's list: 725300-94846 is O'Hare at 201.8 m; the row of 1970 to 1972 (999999-94846) says 205.4 m.
    expect(preview).toMatchObject({
      guessedFrom: 'file name',
      stationGuess: { key: '725300-94846', identifier: 'KORD', elevationM: 201.8 },
      observationCount: 1500,
      sameImport: null,
    });
    expect(stored()).toEqual({ blocks: 0, imports: 0, stations: 0 });
  });

  test('finds the station by its identifier without the K, and nothing where nothing tells', async () => {
    // NOAA's list: KJFK, 744860-94789, 3.4 m.
    expect(await library.ask('weather.preview', { path: sample('JFK_2020_excerpt.csv') })).toMatchObject({
      guessedFrom: 'identifier in the file',
      stationGuess: { key: '744860-94789', elevationM: 3.4 },
    });
    expect(await library.ask('weather.preview', { path: fileWith(lines.join('\n')) })).toMatchObject({
      guessedFrom: null,
      stationGuess: null,
    });
  });

  test("of records with numbers and a place proposes the list's station with the records' elevation", async () => {
    const looked = async (name: string) =>
      (await library.ask('weather.preview', { path: sample(name) })) as Preview;
    // NOAA's list: Denver 725650-03017 at 1650.2 m; the records say 1655 m.
    expect(await looked('725650-03017-2010_excerpt.gz')).toMatchObject({
      guessedFrom: 'identifier in the file',
      stationProposal: { listKey: '725650-03017', elevationM: 1655 },
      stationRemarks: [expect.stringMatching(/1655 m, the list 1650.2 m/)],
    });
    // Those of 1994 lie a degree too far south.
    const old = await looked('725650-03017-1994_excerpt.gz');
    expect(old.stationProposal).toMatchObject({ listKey: '725650-03017', elevationM: 1656 });
    expect(old.stationRemarks[0]).toMatch(/put the station 10\d km from where the list has/);
    expect((await looked('LCDv2_KLNK_2023_excerpt.csv')).stationProposal).toMatchObject({
      elevationM: 362.7,
    });
    expect((await looked('GHCNh_USW00026442_por_excerpt.psv')).stationGuess?.identifier).toBe('PAVW');
    expect((await looked('LCDv1_KATL_2020_excerpt.csv')).stationProposal).toEqual({
      listKey: '722190-13874',
    });
    expect((await looked('KDEN_typical_excerpt.epw')).nature).toBe('typical year');
  });

  test('refuses what is not there or cannot be read, with a sentence', async () => {
    const gone = fileWith('x');
    rmSync(gone);
    await expect(library.ask('weather.preview', { path: gone })).rejects.toThrow(
      'There is no file weather.csv at that place any more. Nothing was changed.',
    );
    await expect(library.ask('weather.preview', { path: fileWith('words\nand more\n') })).rejects.toThrow(
      /^weather\.csv was not read\. What is in it is not known here\..* Nothing was changed\.$/,
    );
    await expect(library.ask('weather.preview', { path: 'relative.csv' })).rejects.toThrow(/whole path/);
  });
});

test('records of a station outside the list make one station, however many files', async () => {
  const own = gunzipSync(readFileSync(sample('725650-03017-2010_excerpt.gz')))
    .toString('latin1')
    .trimEnd()
    .split('\n')
    .map((line) => `${line.slice(0, 4)}A12345${'99999'}${line.slice(15)}`);
  for (const half of [own.slice(0, 200), own.slice(200)]) {
    const path = fileWith(half.join('\n'));
    const { stationProposal } = (await library.ask('weather.preview', { path })) as Preview;
    expect(stationProposal).toMatchObject({ place: { identifier: 'A1234599999', elevationM: 1655 } });
    await load(path, stationProposal);
  }
  expect(stored()).toMatchObject({ imports: 2, stations: 1 });
});

test('a file without one usable row is refused with the reasons counted', async () => {
  const bare = lines.slice(0, 20).map((line) => `${line.slice(0, 25)} -9999${line.slice(31)}`);
  await expect(load(fileWith(bare.join('\n')))).rejects.toThrow(
    'weather.csv has 20 observations, but density altitude cannot be had from any of them: no pressure (20). Nothing was changed.',
  );
  expect(stored()).toEqual({ blocks: 0, imports: 0, stations: 0 });
});

test('bare reports are refused with a code of their own until year and month are given', async () => {
  const path = fileWith('METAR KDEN 010053Z 01006KT 9SM CLR M10/M12 A2995\n', 'reports.txt');
  expect(await library.request('weather.preview', { path })).toMatchObject({
    ok: false,
    problem: { code: 'month-needed' },
  });
  expect(await library.ask('weather.preview', { path, reportMonth: { year: 2013, month: 1 } })).toMatchObject(
    { firstEpochS: utc('2013-01-01T00:53'), stationGuess: { identifier: 'KDEN' } },
  );
});

describe('an import', () => {
  test('keeps every observation, and anyone can read them from the view in plain units', async () => {
    expect(await load(sample('725300-94846-2016.gz'))).toMatchObject({
      observationCount: 1500,
      newCount: 1500,
    });
    const rows = library.db
      .prepare<[], Record<string, number | null>>('SELECT * FROM observation ORDER BY epoch_s')
      .all();
    expect(rows).toHaveLength(1500);
    lines.forEach((line, i) => {
      const [year = 0, month = 0, day, hour, ...values] = line.trim().split(/\s+/).map(Number);
      const plain = (raw: number | undefined, scale: number) =>
        raw === undefined || raw === -9999 ? null : raw / scale;
      expect(rows[i]).toMatchObject({
        epoch_s: Date.UTC(year, month - 1, day, hour) / 1000,
        temperature_c: plain(values[0], 10),
        dew_point_c: plain(values[1], 10),
        altimeter_setting_hpa: null,
        sea_level_pressure_hpa: plain(values[2], 10),
        station_pressure_hpa: null,
        wind_speed_ms: plain(values[4], 10),
      });
    });
  });

  test('of the archive gives the same columns through the view as through the loader', async () => {
    await load(sample('JFK_2020_excerpt.csv'), place);
    const rows = library.db
      .prepare<[], Record<string, number | null>>('SELECT * FROM observation ORDER BY epoch_s')
      .all();
    const station = library.db.prepare<[], { id: string }>('SELECT id FROM weather_station').get();
    const columns = loadObservations(library.db, station?.id ?? '');
    expect(rows.length).toBe(columns.epochMinute.length);
    const inView = (stored: number | undefined, offset: number) =>
      stored === undefined || stored === missing ? null : (stored + offset) / 100;
    rows.forEach((row, i) => {
      expect(row['epoch_s']).toBe((columns.epochMinute[i] ?? 0) * 60);
      expect(row['temperature_c']).toBe(inView(columns.temperatureC100[i], 0));
      expect(row['altimeter_setting_hpa']).toBe(inView(columns.altimeterSettingHpa100[i], 100_000));
      expect(row['gust_ms']).toBe(inView(columns.gustMs100[i], 0));
      const direction = columns.windFromDeg[i];
      expect(row['wind_from_deg']).toBe(direction === missing ? null : direction);
    });
  });

  test('that is repeated adds nothing and leaves nothing to take back', async () => {
    await load(sample('725300-94846-2016.gz'));
    const before = stored();
    expect(await library.ask('weather.preview', { path: sample('725300-94846-2016.gz') })).toMatchObject({
      sameImport: { fileName: '725300-94846-2016.gz' },
    });
    expect(await load(sample('725300-94846-2016.gz'))).toMatchObject({
      importId: null,
      observationCount: 1500,
      newCount: 0,
    });
    expect(stored()).toEqual(before);
  });

  test('that continues or overlaps an older one does not double an hour', async () => {
    await load(fileWith(lines.slice(0, 900).join('\n'), 'first.txt'));
    expect(await load(fileWith(lines.slice(600).join('\n'), 'second.txt'))).toMatchObject({
      observationCount: 900,
      newCount: 600,
    });
    const [first] = (await library.ask('weather.stations', {})) as OutputOf<'weather.stations'>;
    expect(first).toMatchObject({ observationCount: 1500, firstEpochS: utc('2016-01-01T00:00') });
    const columns = loadObservations(library.db, first?.id ?? '');
    expect(columns.epochMinute.length).toBe(1500);
    const alone = memoryLibrary();
    await alone.ask('weather.import', { path: sample('725300-94846-2016.gz'), station: ohare });
    const whole = loadObservations(alone.db, 'id-1');
    expect(columns).toEqual(whole);
  });

  test('taken back goes whole, and brings out what it stood over', async () => {
    const older = await load(fileWith(lines.slice(0, 900).join('\n'), 'older.txt'));
    const changed = lines.slice(600).map((line) => `${line.slice(0, 13)}   100${line.slice(19)}`);
    await load(fileWith(changed.join('\n'), 'newer.txt'));
    const id = older.stationId;
    const temperatureAt = (i: number) => loadObservations(library.db, id).temperatureC100[i];
    const printed = Number(lines[700]?.slice(13, 19)) * 10;
    // The older import holds where both have the minute ...
    expect(temperatureAt(700)).toBe(printed);
    await library.ask('weather.takeBack', { importId: older.importId });
    // ... and without it the newer one stands there with all of its own rows.
    expect(loadObservations(library.db, id).epochMinute.length).toBe(900);
    expect(temperatureAt(100)).toBe(1000);
    const [left] = (await library.ask('weather.imports', {})) as Imports;
    await library.ask('weather.takeBack', { importId: left?.importId });
    expect(stored()).toEqual({ blocks: 0, imports: 0, stations: 0 });
    await expect(library.ask('weather.takeBack', { importId: 99 })).rejects.toThrow('There is no import 99.');
  });

  test('of an unusable report gives way to a usable one of the same minute in a newer import', async () => {
    // One row is left whole: a file without any usable one is refused.
    const spoilt = lines
      .slice(0, 3)
      .map((line, i) => (i === 2 ? line : `${line.slice(0, 25)} -9999${line.slice(31)}`));
    const older = await load(fileWith(spoilt.join('\n'), 'older.txt'));
    await load(fileWith(lines.slice(0, 3).join('\n'), 'newer.txt'));
    const columns = loadObservations(library.db, older.stationId);
    expect(columns.epochMinute.length).toBe(3);
    expect([...columns.seaLevelPressureHpa100].every((value) => value !== missing)).toBe(true);
  });

  test('of a file without a single observation is refused and leaves no station', async () => {
    await expect(
      load(fileWith('2016 01 01 00 -9999 -9999 -9999 -9999 -9999 -9999 -9999 -9999\n')),
    ).rejects.toThrow(
      /has no observation that can be kept \(no value in it that is kept: row left out, 1 times\)/,
    );
    expect(stored()).toEqual({ blocks: 0, imports: 0, stations: 0 });
  });

  test('needs a station that exists, or a place within its ranges', async () => {
    const path = sample('JFK_2020_excerpt.csv');
    await expect(load(path, { listKey: '000000-00000' })).rejects.toThrow(/no station 000000-00000/);
    await expect(load(path, { stationId: 'nobody' })).rejects.toThrow(/no weather station 'nobody'/);
    const high = { place: { ...place.place, elevationM: 6001 } };
    await expect(load(path, high)).rejects.toThrow(/Nothing was changed/);
    expect(stored()).toEqual({ blocks: 0, imports: 0, stations: 0 });
  });
});

test('cancelled at any step, an import leaves the library as it was', async () => {
  await load(sample('725300-94846-2016.gz'));
  const before = stored();
  // Sixty years, so that many blocks pass before the end.
  const years = Array.from({ length: 60 }, (_, year) =>
    lines.map((line) => String(1950 + year) + line.slice(4)).join('\n'),
  );
  const path = fileWith(years.join('\n'), 'long.txt');
  for (const blocksBefore of [0, 1, 40]) {
    const answer = await cancelAtBlock(library, blocksBefore, 'weather.import', { path, station: ohare });
    expect(answer).toMatchObject({ ok: false, problem: { code: 'cancelled' } });
    expect(stored()).toEqual(before);
  }
});

test('what a crash left of an import is invisible, and swept at the next opening', async () => {
  const { blocks } = await scanAll(sample('725300-94846-2016.gz'));
  library.db.exec(`INSERT INTO weather_station VALUES ('s', NULL, 'Strip', NULL, 40, -105, 1600, 'typed')`);
  const importId = beginImport(library.db, {
    stationId: 's',
    fileName: 'half.txt',
    begunEpochS: 0,
    batchId: 'b',
  });
  addBlocks(library.db, importId, 's', blocks.slice(0, 2));
  expect(await library.ask('weather.imports', {})).toEqual([]);
  expect(await library.ask('weather.stations', {})).toEqual([]);
  expect(loadObservations(library.db, 's').epochMinute.length).toBe(0);
  expect(library.db.prepare('SELECT COUNT(*) AS n FROM observation').get()).toEqual({ n: 0 });
  expect(sweepUnfinishedImports(library.db)).toBe(1);
  expect(stored()).toEqual({ blocks: 0, imports: 0, stations: 0 });
  expect(sweepUnfinishedImports(library.db)).toBe(0);
});

test('the bundled list is searched by identifier, number and name', async () => {
  const find = (text: string) =>
    library.ask('weather.findStations', { text }) as Promise<OutputOf<'weather.findStations'>>;
  expect((await find('kden'))[0]).toMatchObject({
    key: '725650-03017',
    identifier: 'KDEN',
    elevationM: 1650.2,
  });
  expect((await find('DEN'))[0]?.identifier).toBe('KDEN');
  expect((await find('744860'))[0]?.identifier).toBe('KJFK');
  expect((await find('kennedy intern')).map((each) => each.identifier)).toContain('KJFK');
  expect(await find('  ')).toEqual([]);
  expect(await find('no such place at all')).toEqual([]);
});
