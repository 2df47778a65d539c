import { expect, test } from 'vitest';
import { textOf } from '../../../shared-calc/wording/parts.ts';
import {
  alikeWords,
  todaySentences,
  yearsSentence,
  type TodayParts,
} from '../../../shared-calc/wording/today.ts';

const ft = 0.3048;
const units = {
  altitude: 'ft',
  temperature: 'degC',
  temperatureDifference: 'C deg',
  speed: 'kt',
  distance: 'm',
  climbRate: 'ft/min',
  altimeterSetting: 'hPa',
} as const;
const plainly = (text: string) => text.replaceAll(/[\u2009\u2060]/g, '').replaceAll('\u00a0', ' ');
const parts = (change: Partial<TodayParts> = {}): TodayParts => ({
  figure: 'densityAltitude',
  hour: 8,
  today: 6531 * ft,
  candidateCount: 473,
  alikeCount: 118,
  within: { temperatureC: 2.1, dewPointC: 3.2, settingHpa: 2.6 },
  atMostCount: 310,
  hours: [
    { low: 6531 * ft, median: 6531 * ft, high: 6531 * ft },
    { low: 8309 * ft, median: 8480 * ft, high: 8641 * ft },
    null,
  ],
  check: { testCount: 237, heldShare: 0.8, widthRatio: 0.61, isTrusted: true },
  units,
  ...change,
});

test('today stands among the days, and the days alike lead to a range rounded outward', () => {
  expect(plainly(textOf(todaySentences(parts())))).toBe(
    'At 08:00 today: 6540 ft, density altitude no lower than on 310 of 473 days around this date. The days that began most alike lead to 8300 to 8650 ft at 09:00, eight days in ten, if nothing but the usual weather comes.',
  );
  expect(plainly(alikeWords(parts()))).toBe(
    '118 of 473 days began most alike: nine in ten of them within 3 °C of temperature, 4 °C of dew point and 3 hPa of setting. On 237 days of years left out the band held 80 % of the hours (80 % was asked) and was 61 % as wide as the season’s.',
  );
});

test('what did not hold is said and not shown', () => {
  const check = { testCount: 237, heldShare: 0.7, widthRatio: 0.5, isTrusted: false };
  const words = plainly(textOf(todaySentences(parts({ check }))));
  expect(words).toMatch(
    /not shown: on years left out their band held 70 % of the hours where 80 % was asked/,
  );
  expect(words).not.toMatch(/8300/);
  expect(plainly(textOf(todaySentences(parts({ check: null }))))).toMatch(
    /too few days remain to check them/,
  );
  expect(plainly(textOf(todaySentences(parts({ within: null, candidateCount: 43 }))))).toMatch(
    /200 days around the date are needed to choose 100 from/,
  );
});

test('a change over the years has a figure only where it is clear', () => {
  const years = Array.from({ length: 11 }, (_, i) => ({ year: 2015 + i, median: 2300 }));
  const of = (change: { slope: number; low: number; high: number; isClear: boolean } | null) =>
    plainly(
      yearsSentence({ figure: 'densityAltitude', month: 7, hour: 15, years, yearsNeeded: 8, change, units }),
    );
  // 3.6576 m a year are 120 ft in ten years.
  expect(of({ slope: 3.6576, low: 0.6096, high: 6.4008, isClear: true })).toBe(
    'Half the days’ density altitude of July at 15:00 has risen by about 120 ft in ten years (20 ft to 210 ft, 95 times in 100), 2015 to 2025.',
  );
  expect(of({ slope: -3.6576, low: -6.4008, high: -0.6096, isClear: true })).toMatch(
    /fallen by about 120 ft .*20 ft to 210 ft/,
  );
  expect(of({ slope: 1, low: -1, high: 3, isClear: false })).toBe(
    'No clear change of density altitude of July at 15:00, 2015 to 2025.',
  );
  expect(of(null)).toMatch(/Too few years/);
});
