import { quantileSorted } from 'd3';
import { expect, test } from 'vitest';
import type { OutputOf } from '../../../main/requests/table.ts';
import { densityAltitudeM } from '../../../shared-calc/atmosphere/density-altitude.ts';
import { memoryLibrary, type MemoryLibrary } from '../memory-library.ts';
import { fileWith, sample } from '../weather-import/samples.ts';

type Season = OutputOf<'weather.season'>;

const place = {
  name: 'Ostrey Flat',
  identifier: null,
  latitudeDeg: 39.2,
  longitudeDeg: -105.6,
  elevationM: 1372,
};

/** Hourly reports at :53 of four years with a day and a season in them; every 29th without its dew point. */
function hourlyCsv(): string {
  const rows = ['station,valid,tmpf,dwpf,drct,sknt,alti,mslp,gust'];
  for (let hour = 0; hour < 4 * 8766; hour++) {
    const time = new Date(Date.UTC(2016, 0, 1, 0, 53) + hour * 3_600_000);
    const temperatureF = 50 + 20 * Math.sin(hour / 1395) + 12 * Math.sin(hour / 3.82) + ((hour * 37) % 11);
    const dewPoint = hour % 29 === 0 ? 'M' : (temperatureF - 15 - ((hour * 13) % 7)).toFixed(1);
    const setting = (29.9 + 0.3 * Math.sin(hour / 61)).toFixed(2);
    rows.push(
      `OST,${time.toISOString().slice(0, 16).replace('T', ' ')},${temperatureF.toFixed(1)},${dewPoint},240,8,${setting},M,M`,
    );
  }
  return rows.join('\n');
}

async function libraryWith(csv: string, field: Partial<typeof place> = {}): Promise<[MemoryLibrary, string]> {
  const library = memoryLibrary();
  const imported = (await library.ask('weather.import', {
    path: fileWith(csv),
    station: { place },
  })) as OutputOf<'weather.import'>;
  const { id } = (await library.ask('fields.put', {
    field: { ...place, ...field, weatherStationId: imported.stationId, runways: [] },
  })) as { id: string };
  return [library, id];
}

test('every cell is the quantile that a plain grouping of the plain view gives', async () => {
  const [library, fieldId] = await libraryWith(hourlyCsv());
  const season = (await library.ask('weather.season', { fieldId })) as Season;

  // Independent of the blocks, the typed arrays and the rule's code: the view's rows, the platform's own clock in
  // the field's zone, the report at :53 named for the hour that follows, sorted arrays.
  const clock = new Intl.DateTimeFormat('en-US', {
    timeZone: 'America/Denver',
    month: 'numeric',
    day: 'numeric',
    year: 'numeric',
    hour: 'numeric',
    hourCycle: 'h23',
  });
  const groups = Array.from({ length: 288 }, (): number[] => []);
  const seen = new Set<string>();
  const rows = library.db
    .prepare<
      [],
      { epoch_s: number; temperature_c: number; dew_point_c: number | null; altimeter_setting_hpa: number }
    >('SELECT * FROM observation ORDER BY epoch_s')
    .all();
  for (const row of rows) {
    const parts = clock.formatToParts(new Date((row.epoch_s + 7 * 60) * 1000));
    const part = (type: string) => Number(parts.find((each) => each.type === type)?.value);
    const words = parts.map((each) => each.value).join('');
    // The repeated hour of an autumn night counts in its first run.
    if (seen.has(words)) continue;
    seen.add(words);
    if (row.dew_point_c === null) continue;
    const settingHpa = row.altimeter_setting_hpa;
    const pressureHpa =
      1013.25 * ((settingHpa / 1013.25) ** 0.190263 - (0.0065 * 1372) / 288.15) ** (1 / 0.190263);
    groups[(part('month') - 1) * 24 + part('hour')]?.push(
      densityAltitudeM(pressureHpa, row.temperature_c, row.dew_point_c),
    );
  }
  expect(season.dayCount).toEqual(groups.map((group) => group.length));
  expect(season.record).toMatchObject({
    isObserved: true,
    observationCount: rows.length,
    unusableCount: rows.filter((row) => row.dew_point_c === null).length,
    hourCount: groups.reduce((sum, group) => sum + group.length, 0),
  });
  for (const { share, daysNeeded, value: got } of season.quantiles)
    groups.forEach((group, cell) => {
      const expected =
        group.length < daysNeeded
          ? null
          : (quantileSorted(
              [...group].sort((a, b) => a - b),
              share,
            ) ?? NaN);
      // 0.05 m: the exponent above is printed with six figures.
      if (expected === null) expect(got[cell]).toBeNull();
      else expect(Math.abs((got[cell] ?? NaN) - expected)).toBeLessThan(0.05);
    });
  expect(season.quantiles.map(({ share, daysNeeded }) => [share, daysNeeded])).toEqual([
    [0.5, 20],
    [0.9, 100],
  ]);
  expect(season.pressureFrom).toMatchObject({ stationCount: 0, seaLevelCount: 0 });
  expect(season.sun).toHaveLength(365);
});

test('a record of days says how many there are, and gives no quantile', async () => {
  const library = memoryLibrary();
  const { stationId } = (await library.ask('weather.import', {
    path: sample('JFK_2020_excerpt.csv'),
    station: { listKey: '744860-94789' },
  })) as OutputOf<'weather.import'>;
  const { id } = (await library.ask('fields.put', {
    field: {
      name: 'By the sea',
      latitudeDeg: 40.7,
      longitudeDeg: -73.8,
      elevationM: 10,
      weatherStationId: stationId,
      runways: [],
    },
  })) as { id: string };
  const season = (await library.ask('weather.season', { fieldId: id })) as Season;
  expect(season.quantiles.every(({ value }) => value.every((each) => each === null))).toBe(true);
  // 7 and 8 March by UTC are the evening of the 6th, the 7th and, with the report at 23:51, 20:00 of the 8th here.
  expect(Math.max(...season.dayCount)).toBe(3);
  expect(season.record.years).toEqual([2020]);
  expect(season.station.isElevationApart).toBe(false);
});

test('a station too far or too high is refused, with the figures', async () => {
  const csv = hourlyCsv().split('\n').slice(0, 200).join('\n');
  const refused = async (field: Partial<typeof place>) => {
    const [library, fieldId] = await libraryWith(csv, field);
    return library.ask('weather.season', { fieldId });
  };
  // 80 km are 0.7195 degrees of latitude on the sphere: just inside and just outside.
  await expect(refused({ latitudeDeg: 39.2 + 0.7194 })).resolves.toBeDefined();
  await expect(refused({ latitudeDeg: 39.2 + 0.722 })).rejects.toThrow(/lies 80 km from .* at most 80 km/);
  await expect(refused({ elevationM: 1672 })).resolves.toMatchObject({ station: { isElevationApart: true } });
  await expect(refused({ elevationM: 1673 })).rejects.toThrow(/lies 301 m above .* at most 300 m/);
  await expect(refused({ elevationM: 1071 })).rejects.toThrow(/lies 301 m below/);
});

test('a field without a station, and one that is not there, are told apart', async () => {
  const library = memoryLibrary();
  const { id } = (await library.ask('fields.put', { field: { ...place, runways: [] } })) as { id: string };
  await expect(library.ask('weather.season', { fieldId: id })).rejects.toThrow(/has no weather station yet/);
  await expect(library.ask('weather.season', { fieldId: 'none' })).rejects.toThrow(
    "There is no field 'none'.",
  );
});
