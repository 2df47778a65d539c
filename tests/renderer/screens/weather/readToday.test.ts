import { expect, test } from 'vitest';
import { readToday } from '../../../../renderer/screens/weather/readToday.ts';

// 19 July 2026, 15:00 UTC.
const now = Date.UTC(2026, 6, 19, 15) / 1000;

test('a pasted report gives its air and the nearest hour of the field’s own clock', () => {
  // FMH-1, table of coding groups: T02940106 is 29.4 and 10.6 degC; A3001 is 30.01 inHg, 1016.26 hPa.
  expect(
    readToday(
      'METAR KOST 191453Z 24008KT 10SM CLR 29/11 A3001 RMK AO2 SLP120 T02940106',
      'America/Denver',
      now,
    ),
  ).toEqual({
    // 14:53 UTC is 08:53 in Denver in July.
    air: { hour: 9, temperatureC: 29.4, dewPointC: 10.6, settingHpa: expect.closeTo(1016.26, 2) },
    date: '2026-07-19',
  });
});

test('late in the evening the nearest hour may be midnight of the next day', () => {
  const read = readToday('KOST 200553Z 00000KT 20/10 Q1016', 'America/Denver', now + 15 * 3600);
  expect(read).toMatchObject({ air: { hour: 0, settingHpa: 1016 }, date: '2026-07-20' });
});

test('what is no report says what is missing', () => {
  expect(readToday('hot and high', 'UTC', now)).toEqual({
    refused: expect.stringMatching(/No time was found/),
  });
  expect(readToday('KOST 191453Z 24008KT 10SM CLR', 'UTC', now)).toEqual({
    refused: expect.stringMatching(/Neither temperature/),
  });
  expect(readToday('METAR KOST 191453Z NIL', 'UTC', now)).toEqual({ refused: expect.stringMatching(/none/) });
});
