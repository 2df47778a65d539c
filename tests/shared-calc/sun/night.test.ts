import { expect, test } from 'vitest';
import { isNight } from '../../../shared-calc/sun/night.ts';

// London, 1 December 2015: civil dawn 07:04, dusk 16:34 UTC (published twilight table, case SUN-014 of the reference file).
// Three minutes on either side: the table is printed to the minute and a computed dusk is good to one.
test('night ends at the beginning of morning civil twilight and begins at the end of evening civil twilight', () => {
  const at = (hour: number, minute: number) => Date.UTC(2015, 11, 1, hour, minute) / 1000;
  const london = [51.5, -0.12] as const;
  expect(isNight(at(7, 1), ...london)).toBe(true);
  expect(isNight(at(7, 7), ...london)).toBe(false);
  expect(isNight(at(16, 31), ...london)).toBe(false);
  expect(isNight(at(16, 37), ...london)).toBe(true);
});
