import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import type { Mapping } from '../../../../main/weather-import/mapped/mapping.ts';
import { propose, type Proposal } from '../../../../main/weather-import/mapped/propose.ts';
import { tableHead } from '../../../../main/weather-import/mapped/table-head.ts';
import { fileWith, sample, scanAll, utc } from '../samples.ts';

function proposed(content: Uint8Array | string, fileName = 'table.csv'): Proposal {
  const table = tableHead(Buffer.from(content));
  if (table === null) throw new Error('no table');
  return propose(table, fileName);
}
const ofSample = (name: string) => proposed(readFileSync(sample(name)), name);
function mappingOf(proposal: Proposal): Mapping {
  if (proposal.mapping === null) throw new Error('no mapping');
  return proposal.mapping;
}
const columnsOf = ({ values }: Mapping) =>
  Object.fromEntries(values.map(({ quantity, column, unit }) => [quantity, `${column} ${unit}`]));

describe('what is proposed for real tables', () => {
  test('New York: degF by values, UTC stamps before the clock beside them, two stations', async () => {
    const proposal = ofSample('EWR_LGA_2013_excerpt.csv');
    const mapping = mappingOf(proposal);
    expect(columnsOf(mapping)).toEqual({
      'dew point': 'dewp degF',
      temperature: 'temp degF',
      humidity: 'humid percent',
      gust: 'wind_gust mph',
      'wind direction': 'wind_dir deg',
      'wind speed': 'wind_speed mph',
      'sea-level pressure': 'pressure hPa',
    });
    expect(mapping).toMatchObject({ time: { column: 'time_hour' }, station: 'origin', nature: 'observed' });
    expect(proposal.reasons.find(({ about }) => about === 'sea-level pressure')?.sure).toBe(false);
    const { rows, summary } = await scanAll(sample('EWR_LGA_2013_excerpt.csv'), 'LGA', { mapping });
    expect(summary.stationsInFile.map(({ identifier }) => identifier)).toEqual(['EWR', 'LGA']);
    // Each row by a plain reading of its text.
    const lines = readFileSync(sample('EWR_LGA_2013_excerpt.csv'), 'utf8').trimEnd().split('\n');
    const own = lines.filter((line) => line.startsWith('LGA')).map((line) => line.split(','));
    expect(rows).toHaveLength(own.length);
    own.forEach((cells, i) => {
      expect(rows[i]?.epochS).toBe(Date.parse(cells[14] ?? '') / 1000);
      expect(Math.abs((rows[i]?.temperatureC ?? NaN) - ((Number(cells[5]) - 32) * 5) / 9)).toBeLessThan(
        0.0051,
      );
      expect(Math.abs((rows[i]?.windSpeedMs ?? NaN) - Number(cells[9]) * 0.44704)).toBeLessThan(
        0.0051 + 0.0023,
      );
      if (cells[12] === 'NA') expect(rows[i]?.seaLevelPressureHpa).toBeUndefined();
      else expect(rows[i]?.seaLevelPressureHpa).toBeCloseTo(Number(cells[12]), 9);
    });
  });

  test('a model export is labelled, and its station pressure told from the sea-level one', async () => {
    const proposal = ofSample('openmeteo_DEN_2022_excerpt.csv');
    const mapping = mappingOf(proposal);
    expect(mapping.nature).toBe('model');
    expect(columnsOf(mapping)).toMatchObject({
      temperature: 'temperature_2m degC',
      'station pressure': 'surface_pressure hPa',
      'sea-level pressure': 'pressure_msl hPa',
      'wind speed': 'windspeed_10m km/h',
    });
    expect(proposal.reasons.find(({ about }) => about === 'zone')?.sure).toBe(false);
    // Its stamps are UTC-4 all year: the person says so after looking at the warmest hour.
    const { rows } = await scanAll(sample('openmeteo_DEN_2022_excerpt.csv'), undefined, {
      mapping: { ...mapping, zone: { kind: 'offset', minutes: -240 } },
    });
    // 2022-02-11T00:00,4.1,59,-3.3,-1.0,1008.4,830.8 ... 16.9 km/h
    expect(rows[0]?.epochS).toBe(utc('2022-02-11T04:00'));
    expect(rows[0]?.stationPressureHpa).toBeCloseTo(830.8, 9);
    expect(Math.abs((rows[0]?.windSpeedMs ?? NaN) - 16.9 / 3.6)).toBeLessThan(0.0051);
  });

  test('hourly normals are averages, without dew point', async () => {
    const mapping = mappingOf(ofSample('seattle_normals_excerpt.csv'));
    expect(mapping.nature).toBe('averages');
    const { summary } = await scanAll(sample('seattle_normals_excerpt.csv'), undefined, { mapping });
    expect(summary).toMatchObject({ usableCount: 0, unusable: [{ reason: 'no dew point' }] });
    expect(summary.remarks.join(' ')).toMatch(/never answers how many days in ten/);
  });
});

test('lines before the header, semicolons, units in brackets and dates with the day first are found', async () => {
  const text = [
    'latitude;longitude;elevation',
    '',
    'Station of somewhere',
    'time;temperature (°C);relative humidity (%);pressure (hPa);wind speed (kn)',
    ...Array.from({ length: 30 }, (_, i) =>
      `${String(i + 1).padStart(2, '0')}.03.2021 12:00;10,0;50;905.0;10`.replace('10,0', '10.0'),
    ),
    '',
  ].join('\n');
  const proposal = proposed(text);
  const mapping = mappingOf(proposal);
  expect(mapping).toMatchObject({
    delimiter: ';',
    linesBefore: 3,
    time: { kind: 'stamp', column: 'time', order: 'day first' },
  });
  expect(columnsOf(mapping)).toEqual({
    temperature: 'temperature (°C) degC',
    humidity: 'relative humidity (%) percent',
    'wind speed': 'wind speed (kn) kt',
    'station pressure': 'pressure (hPa) hPa',
  });
  const { rows } = await scanAll(fileWith(text), undefined, { mapping });
  expect(rows).toHaveLength(30);
  // Dew point of 10 degC at 50 %: 0.06 degC over water (Magnus as in WMO-No. 8 by hand: 0.5 x 12.27 hPa = 6.14 hPa).
  expect(Math.abs((rows[0]?.dewPointC ?? NaN) - 0.06)).toBeLessThan(0.03);
  expect(rows[0]?.windSpeedMs).toBeCloseTo(5.14, 9);
});

const clockMapping: Mapping = {
  delimiter: ',',
  linesBefore: 0,
  time: { kind: 'parts', year: 'y', month: 'm', day: 'd', hour: 'h', minute: null },
  zone: { kind: 'clock', timeZone: 'America/Denver' },
  station: null,
  values: [
    { quantity: 'temperature', column: 't', unit: 'degC' },
    { quantity: 'dew point', column: 'td', unit: 'degC' },
    { quantity: 'station pressure', column: 'p', unit: 'kPa' },
  ],
  nature: 'observed',
};

test('a clock on the wall: no hour in spring, one twice in autumn, 24:00 is the next day', async () => {
  const text = [
    'y,m,d,h,t,td,p',
    '2021,3,14,1,1,0,84.1',
    '2021,3,14,2,2,0,84.1',
    '2021,3,14,3,3,0,84.1',
    '2021,11,7,1,4,0,84.1',
    '2021,11,7,1,5,0,84.1',
    '2021,11,7,2,6,0,84.1',
    '2021,11,30,24,7,0,84.1',
    '2020,2,29,12,8,0,84.1',
    '2021,2,29,12,9,0,84.1',
    '',
  ].join('\n');
  const { rows, summary } = await scanAll(fileWith(text), undefined, { mapping: clockMapping });
  // Mountain time is UTC-7, with summer time UTC-6 from 14 March to 7 November 2021 (15 USC 260a).
  expect(Object.fromEntries(rows.map((row) => [row.temperatureC, row.epochS]))).toEqual({
    1: utc('2021-03-14T08:00'),
    3: utc('2021-03-14T09:00'),
    4: utc('2021-11-07T07:00'),
    5: utc('2021-11-07T08:00'),
    6: utc('2021-11-07T09:00'),
    7: utc('2021-12-01T07:00'),
    8: utc('2020-02-29T19:00'),
  });
  expect(rows.every((row) => Math.abs((row.stationPressureHpa ?? 0) - 841) < 1e-9)).toBe(true);
  expect(Object.fromEntries(summary.skipped.map((x) => [x.reason, x.examples.map((e) => e.line)]))).toEqual({
    'an hour that its clock never showed: row left out': [3],
    'no such date or time: row left out': [10],
  });
});

test('a column that the mapping names and the file has not is refused', async () => {
  await expect(
    scanAll(fileWith('y,m,d,h,t,p\n2021,3,14,1,1,84.1\n'), undefined, { mapping: clockMapping }),
  ).rejects.toThrow("It has no column 'td', which the mapping names.");
});

test('a dew point made from humidity does not outlive its row', async () => {
  const values: Mapping['values'] = [
    { quantity: 'temperature', column: 't', unit: 'degC' },
    { quantity: 'humidity', column: 'td', unit: 'percent' },
    { quantity: 'station pressure', column: 'p', unit: 'kPa' },
  ];
  const text = [
    'y,m,d,h,t,td,p',
    '2021,3,1,1,10,50,84.1',
    '2021,3,1,2,10,NA,84.1',
    '2021,3,1,3,10,120,84.1',
    '',
  ].join('\n');
  const { rows, summary } = await scanAll(fileWith(text), undefined, {
    mapping: { ...clockMapping, values },
  });
  expect(rows.map(({ dewPointC }) => dewPointC === undefined)).toEqual([false, true, true]);
  expect(summary.skipped[0]).toMatchObject({
    reason: 'humidity outside 1 to 100 %: value left out',
    count: 1,
  });
});

test('figures that are none are missing or leave their row out; an exponent is read', async () => {
  const text = [
    'y,m,d,h,t,td,p',
    '2021,3,1,1,NA,,-9999',
    '2021,3,1,2,5,4,8.41e1',
    '2021,3,1,3,5,x,84.1',
    '',
  ].join('\n');
  const { rows, summary } = await scanAll(fileWith(text), undefined, { mapping: clockMapping });
  expect(rows).toHaveLength(1);
  expect(rows[0]?.stationPressureHpa).toBeCloseTo(841, 9);
  expect(summary.skipped.map(({ reason, examples }) => [reason, examples[0]?.line])).toEqual([
    ['no value in it that is kept: row left out', 2],
    ['dew point is not a number: row left out', 4],
  ]);
});
