import { expect, test } from 'vitest';
import { changeOverYears } from '../../../shared-calc/climate/through-years.ts';

const years = Array.from({ length: 11 }, (_, i) => 2015 + i);

test('a change is clear only where its band leaves nothing out on one side', () => {
  // The two series of theil-sen.test.ts, whose bands SciPy gives: 3.3 to 12.5, and -1.3 to 20.
  expect(
    changeOverYears(years, [2310, 2335, 2301, 2360, 2342, 2371, 2330, 2390, 2365, 2402, 2384])?.isClear,
  ).toBe(true);
  expect(
    changeOverYears(years, [2310, 2335, 2301, 2335, 2342, 2310, 2330, 2301, 2342, 2335, 2950])?.isClear,
  ).toBe(false);
  // Falling as clearly as the first one rises.
  expect(
    changeOverYears(years, [2384, 2402, 2365, 2390, 2330, 2371, 2342, 2360, 2301, 2335, 2310])?.isClear,
  ).toBe(true);
});

test('seven years tell nothing', () => {
  expect(changeOverYears(years.slice(0, 7), [1, 2, 3, 4, 5, 6, 7])).toBeNull();
});
