import { quantileSorted } from 'd3';
import { expect, test } from 'vitest';
import type { OutputOf } from '../../../main/requests/table.ts';
import { densityAltitudeM, dryDensityAltitudeM } from '../../../shared-calc/atmosphere/density-altitude.ts';
import { memoryLibrary } from '../memory-library.ts';
import { fileWith } from '../weather-import/samples.ts';

type Day = OutputOf<'weather.day'>;

const place = {
  name: 'Ostrey Flat',
  identifier: null,
  latitudeDeg: 39.2,
  longitudeDeg: -105.6,
  elevationM: 1372,
};
const runway = {
  id: 'r1',
  lengthM: 900,
  widthM: null,
  surface: 'grass',
  ends: [
    { ident: '09', trueHeadingDeg: 90, displacedThresholdM: 0 },
    { ident: '27', trueHeadingDeg: 270, displacedThresholdM: 0 },
  ],
};

/** Hourly reports at :53 of eight years with a day and a season in them, and a wind that turns. */
function hourlyCsv(): string {
  const rows = ['station,valid,tmpf,dwpf,drct,sknt,alti,mslp,gust'];
  for (let hour = 0; hour < 8 * 8766; hour++) {
    const time = new Date(Date.UTC(2016, 0, 1, 0, 53) + hour * 3_600_000);
    const temperatureF = 50 + 20 * Math.sin(hour / 1395) + 12 * Math.sin(hour / 3.82) + ((hour * 37) % 11);
    const setting = (29.9 + 0.3 * Math.sin(hour / 61)).toFixed(2);
    rows.push(
      `OST,${time.toISOString().slice(0, 16).replace('T', ' ')},${temperatureF.toFixed(1)},${(temperatureF - 15).toFixed(1)},${String((hour * 10) % 360)},${String(hour % 14)},${setting},M,${hour % 5 === 0 ? '22' : 'M'}`,
    );
  }
  return rows.join('\n');
}

interface Row {
  epoch_s: number;
  temperature_c: number;
  dew_point_c: number;
  altimeter_setting_hpa: number;
  wind_from_deg: number;
  wind_speed_ms: number;
  gust_ms: number | null;
}

test('a day’s hours are the quantiles that a plain grouping of the plain view gives', async () => {
  const library = memoryLibrary();
  const { stationId } = (await library.ask('weather.import', {
    path: fileWith(hourlyCsv()),
    station: { place },
  })) as OutputOf<'weather.import'>;
  const { id: fieldId } = (await library.ask('fields.put', {
    field: { ...place, weatherStationId: stationId, runways: [runway] },
  })) as { id: string };
  const ask = (more: object) =>
    library.ask('weather.day', { fieldId, date: '2026-07-19', ...more }) as Promise<Day>;

  // Independent of the columns and the rule's code: the view's rows, the platform's own clock in the field's zone,
  // the report at :53 named for the hour that follows.
  const clock = new Intl.DateTimeFormat('en-US', {
    timeZone: 'America/Denver',
    month: 'numeric',
    day: 'numeric',
    year: 'numeric',
    hour: 'numeric',
    hourCycle: 'h23',
  });
  const rows = library.db.prepare<[], Row>('SELECT * FROM observation ORDER BY epoch_s').all();
  const near = rows.flatMap((row) => {
    const parts = clock.formatToParts(new Date((row.epoch_s + 7 * 60) * 1000));
    const part = (type: string) => Number(parts.find((each) => each.type === type)?.value);
    const away =
      (Date.UTC(part('year'), part('month') - 1, part('day')) - Date.UTC(part('year'), 6, 19)) / 864e5;
    return Math.abs(away) <= 7 ? [{ row, hour: part('hour') }] : [];
  });
  const expectQuantiles = (day: Day, of: (row: Row) => number, prob: (share: number) => number) => {
    // 8 years of 15 days are 120, so a week on either side has the 100 that nine days in ten needs.
    expect(day.window).toEqual({ halfWidthDays: 7, yearCount: 8, firstYear: 2016, lastYear: 2023 });
    for (let hour = 0; hour < 24; hour++) {
      const sorted = near.flatMap((each) => (each.hour === hour ? [of(each.row)] : [])).sort((a, b) => a - b);
      expect(day.dayCount[hour]).toBe(sorted.length);
      for (const { share, value } of day.quantiles)
        // 0.05 m: the exponent below is printed with six figures.
        expect(Math.abs((value[hour] ?? NaN) - (quantileSorted(sorted, prob(share)) ?? NaN))).toBeLessThan(
          0.05,
        );
    }
  };
  const pressureOf = ({ altimeter_setting_hpa: settingHpa }: Row) =>
    1013.25 * ((settingHpa / 1013.25) ** 0.190263 - (0.0065 * 1372) / 288.15) ** (1 / 0.190263);
  const moist = (row: Row) => densityAltitudeM(pressureOf(row), row.temperature_c, row.dew_point_c);
  const day = await ask({ limit: 2500 });
  expectQuantiles(day, moist, (share) => share);
  expect(day.beyondCount?.[15]).toBe(near.filter(({ row, hour }) => hour === 15 && moist(row) > 2500).length);
  expect(day.worst[15]).toBeCloseTo(
    Math.max(...near.flatMap(({ row, hour }) => (hour === 15 ? [moist(row)] : []))),
    1,
  );

  expectQuantiles(
    await ask({ figure: { kind: 'humidityShare' } }),
    (row) => moist(row) - dryDensityAltitudeM(pressureOf(row), row.temperature_c),
    (share) => share,
  );
  // On runway 09 a wind from the east is ahead; a tailwind counts with the gust. Nine days in ten lie above.
  const headwind = ({ wind_from_deg: fromDeg, wind_speed_ms: meanMs, gust_ms: gustMs }: Row) => {
    const along = meanMs === 0 && gustMs === null ? 0 : Math.cos(((fromDeg - 90) * Math.PI) / 180);
    return along * (along < 0 ? Math.max(meanMs, gustMs ?? 0) : meanMs);
  };
  expectQuantiles(
    await ask({ figure: { kind: 'headwind', runwayId: 'r1', end: 'first' } }),
    headwind,
    (share) => 1 - share,
  );

  // Latest hours by week: the week from 15 July, by the same plain grouping around that date.
  const byHour = Array.from({ length: 24 }, (): number[] => []);
  for (const row of rows) {
    const parts = clock.formatToParts(new Date((row.epoch_s + 7 * 60) * 1000));
    const part = (type: string) => Number(parts.find((each) => each.type === type)?.value);
    const away =
      (Date.UTC(part('year'), part('month') - 1, part('day')) - Date.UTC(part('year'), 6, 15)) / 864e5;
    if (Math.abs(away) <= 7) byHour[part('hour')]?.push(moist(row));
  }
  const limitM = 2400;
  const works = byHour.map((each) => each.filter((m) => m <= limitM).length >= 0.9 * each.length);
  const weeks = (await library.ask('planner.weeks', {
    fieldId,
    aircraftId: null,
    question: { day: '2026-07-19', share: 0.9, densityAltitudeMostM: limitM },
    units: {
      altitude: 'ft',
      temperature: 'degC',
      altimeterSetting: 'hPa',
      distance: 'm',
      speed: 'kt',
      climbRate: 'ft/min',
      mass: 'kg',
    },
  })) as OutputOf<'planner.weeks'>;
  expect(weeks.weeks).toHaveLength(52);
  const july = weeks.weeks.find((each) => each.month === 7 && each.day === 15);
  // Sunrise 05:40, sunset 20:27 at 39.2 N 105.6 W in MDT (Astronomical Almanac's formula, sun tests): full hours 6 to 18,
  // so that an hour of flight and half an hour of reserve end before sunset.
  const light = Array.from({ length: 13 }, (_, i) => 6 + i);
  const first = light.find((hour) => works[hour]) ?? null;
  let until = first;
  while (until !== null && until < 18 && works[until + 1] === true) until++;
  expect(july?.latest[0]).toMatchObject({ fromHour: first, untilHour: until });
  expect([first, until]).not.toEqual([null, null]);

  const list = (await library.ask('weather.observations', {
    fieldId,
    hour: 15,
    of: { date: '2026-07-19', halfWidthDays: 7 },
  })) as OutputOf<'weather.observations'>;
  const ofHour = near.filter(({ hour }) => hour === 15);
  expect(list.dayCount).toBe(ofHour.length);
  expect(list.rows[0]?.value).toBeCloseTo(Math.max(...ofHour.map(({ row }) => moist(row))), 1);
  expect(list.rows.at(-1)?.value).toBeCloseTo(Math.min(...ofHour.map(({ row }) => moist(row))), 1);
  expect(list.rows.map(({ epochS }) => epochS).sort()).toEqual(ofHour.map(({ row }) => row.epoch_s).sort());
  expect(list.rows.every(({ date }) => /^20\d\d-07-(1[2-9]|2[0-6])$/.test(date))).toBe(true);
});

test('what needs an aeroplane’s table is refused without one, and a runway that is not there is named', async () => {
  const library = memoryLibrary();
  const { stationId } = (await library.ask('weather.import', {
    path: fileWith(hourlyCsv().split('\n').slice(0, 100).join('\n')),
    station: { place },
  })) as OutputOf<'weather.import'>;
  const { id: fieldId } = (await library.ask('fields.put', {
    field: { ...place, weatherStationId: stationId, runways: [] },
  })) as { id: string };
  const ask = (figure: object) => library.ask('weather.day', { fieldId, date: '2026-07-19', figure });
  await expect(ask({ kind: 'crosswind', runwayId: 'r9', end: 'first' })).rejects.toThrow(
    /Ostrey Flat has no such runway/,
  );
  await expect(ask({ kind: 'climbRate', aircraftId: 'none', massKg: 500 })).rejects.toThrow();
});
