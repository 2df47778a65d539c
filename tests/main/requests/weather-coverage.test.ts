import { readFileSync } from 'node:fs';
import { gunzipSync } from 'node:zlib';
import { beforeEach, expect, test } from 'vitest';
import type { OutputOf } from '../../../main/requests/table.ts';
import { memoryLibrary, type MemoryLibrary } from '../memory-library.ts';
import { fileWith, sample } from '../weather-import/samples.ts';

type Coverage = OutputOf<'weather.coverage'>;
type Season = OutputOf<'weather.season'>;

const lines = gunzipSync(readFileSync(sample('725300-94846-2016.gz')))
  .toString('latin1')
  .trimEnd()
  .split('\n');

let library: MemoryLibrary;
beforeEach(() => {
  library = memoryLibrary();
});
const load = async (content: string, name: string) =>
  (
    (await library.ask('weather.import', {
      path: fileWith(content, name),
      station: { listKey: '725300-94846' },
    })) as OutputOf<'weather.import'>
  ).stationId;

test('coverage counts the hours of each month and says from which file they are', async () => {
  await load(lines.filter((line) => !line.startsWith('2016 01 1')).join('\n'), 'winter.txt');
  const stationId = await load(
    lines
      .filter((line) => line.startsWith('2016 02'))
      .map((line) => `2017${line.slice(4)}`)
      .join('\n'),
    'next.txt',
  );
  const { months, gaps, sources, hourCount } = (await library.ask('weather.coverage', {
    stationId,
  })) as Coverage;
  // Counted over the lines of the file: those with temperature, dew point and sea-level pressure.
  const usable = (start: string) =>
    lines.filter((line) => line.startsWith(start) && !/-9999/.test(line.slice(13, 31))).length;
  expect(months).toHaveLength(14);
  expect(months.slice(0, 3)).toMatchObject([
    {
      year: 2016,
      month: 1,
      hourCount: usable('2016 01') - usable('2016 01 1'),
      possibleCount: 744,
      sources: [0],
    },
    { year: 2016, month: 2, hourCount: usable('2016 02'), possibleCount: 696, sources: [0] },
    { year: 2016, month: 3, hourCount: usable('2016 03'), sources: [0] },
  ]);
  // 29 February is no day of 2017.
  expect(months.at(-1)).toMatchObject({
    year: 2017,
    month: 2,
    hourCount: usable('2016 02') - usable('2016 02 29'),
    sources: [1],
  });
  expect(sources.map(({ fileName }) => fileName)).toEqual(['winter.txt', 'next.txt']);
  expect(hourCount).toBe(months.reduce((sum, month) => sum + month.hourCount, 0));
  // The ten days of January that were taken out.
  expect(gaps.map((gap) => gap.hourCount)).toContain(240);
  expect(await library.ask('weather.coverage', { stationId: 'nobody' })).toMatchObject({
    months: [],
    gaps: [],
  });
});

test('a spike is left out of figures until the pilot counts it, is counted anyway, and undo takes the choice back', async () => {
  // One temperature 30 degrees above those beside it; the dew point stays below.
  const at = 400;
  const spoilt = lines.map((line, i) =>
    i === at
      ? `${line.slice(0, 13)}${String(Number(line.slice(13, 19)) + 300).padStart(6)}${line.slice(19)}`
      : line,
  );
  const stationId = await load(spoilt.join('\n'), 'spoilt.txt');
  await library.ask('fields.put', {
    field: {
      name: 'Lake strip',
      latitudeDeg: 41.98,
      longitudeDeg: -87.9,
      elevationM: 200,
      weatherStationId: stationId,
      runways: [],
    },
  });
  const [field] = (await library.ask('fields.list', {})) as OutputOf<'fields.list'>;
  const season = async () => (await library.ask('weather.season', { fieldId: field?.id })) as Season;
  const { marked } = (await library.ask('weather.coverage', { stationId })) as Coverage;
  expect(marked.spikeCount).toBeGreaterThanOrEqual(1);

  const without = await season();
  expect(without.record.doubtfulCount).toBeGreaterThanOrEqual(marked.spikeCount);
  await library.ask('weather.countDoubtful', { countsSuspect: true, countsImplausible: true });
  const withThem = await season();
  expect(withThem.record.doubtfulCount).toBe(0);
  expect(withThem.record.hourCount).toBe(without.record.hourCount + without.record.doubtfulCount);
  expect(await library.ask('weather.doubtful', {})).toEqual({ countsSuspect: true, countsImplausible: true });
  await library.ask('history.undo', {});
  expect(await library.ask('weather.doubtful', {})).toEqual({
    countsSuspect: true,
    countsImplausible: false,
  });
  expect((await season()).record).toEqual(without.record);
});
