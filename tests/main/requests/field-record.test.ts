import { expect, test } from 'vitest';
import { fieldHours } from '../../../main/requests/field-record.ts';
import type { OutputOf } from '../../../main/requests/table.ts';
import { memoryLibrary } from '../memory-library.ts';
import { fileWith } from '../weather-import/samples.ts';

const place = {
  name: 'Ostrey Flat',
  identifier: null,
  latitudeDeg: 39.2,
  longitudeDeg: -105.6,
  elevationM: 1372,
};

async function hoursOf(rows: string[]) {
  const library = memoryLibrary();
  const { stationId } = (await library.ask('weather.import', {
    path: fileWith(['station,valid,tmpf,dwpf,drct,sknt,alti,mslp,gust', ...rows].join('\n')),
    station: { place },
  })) as OutputOf<'weather.import'>;
  const { id } = (await library.ask('fields.put', {
    field: { ...place, weatherStationId: stationId, runways: [] },
  })) as { id: string };
  return {
    usual: fieldHours(library.db, id),
    all: fieldHours(library.db, id, { countsSuspect: true, countsImplausible: true }),
  };
}

test('an hour carries its own report: air, wind and gust, in step with the clock of the field', async () => {
  const { usual } = await hoursOf([
    'OST,2021-07-01 17:53,86.0,50.0,240,10,30.00,M,20',
    'OST,2021-07-01 18:53,87.8,50.0,M,5,30.02,M,M',
    'OST,2021-07-01 19:53,89.6,50.0,M,M,30.02,M,M',
  ]);
  // Noon in Denver is 18:00 UTC in July.
  expect([...usual.localHour].map((hour) => hour % 24)).toEqual([12, 13, 14]);
  expect([...usual.temperatureC]).toEqual([30, 31, 32]);
  // 30.00 inHg are 1015.92 hPa (1 inHg is 33.8639 hPa, NIST SP 811).
  expect(usual.settingHpa[0]).toBeCloseTo(1015.92, 2);
  expect([...usual.windFromDeg]).toEqual([240, NaN, NaN]);
  // 10 kt are 5.144 m/s, kept in hundredths.
  expect([...usual.windMs]).toEqual([5.14, 2.57, NaN]);
  expect([...usual.gustMs]).toEqual([10.29, NaN, NaN]);
});

test('a spike stands for no hour unless the pilot counts it; it is counted either way', async () => {
  const { usual, all } = await hoursOf([
    'OST,2021-07-01 17:53,80.0,50.0,240,10,30.00,M,M',
    'OST,2021-07-01 18:53,130.0,50.0,240,10,30.00,M,M',
    'OST,2021-07-01 19:53,82.0,50.0,240,10,30.00,M,M',
  ]);
  expect(usual.localHour).toHaveLength(2);
  expect(usual.doubtfulCount).toBe(1);
  expect(all.localHour).toHaveLength(3);
  expect(all.doubtfulCount).toBe(0);
});
