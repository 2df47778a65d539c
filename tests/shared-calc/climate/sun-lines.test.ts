import { expect, test } from 'vitest';
import { zoneOffsets } from '../../../main/requests/zone-offsets.ts';
import { sunLines } from '../../../shared-calc/climate/sun-lines.ts';

test('the lines follow the clock: they jump by an hour where it changes, and nowhere else', () => {
  const lines = sunLines(2026, 39.2, -105.6, zoneOffsets('America/Denver', 2026, 2026));
  expect(lines).toHaveLength(365);
  const jumps = lines.flatMap((line, i) => {
    const step = (line.sunriseH ?? NaN) - (lines[i - 1]?.sunriseH ?? NaN);
    return Math.abs(step) > 0.5 ? [[i, Math.sign(step)]] : [];
  });
  // 2026: 8 March (day 66 from 0) forward, 1 November (day 304) back; 15 U.S.C. 260a.
  expect(jumps).toEqual([
    [66, 1],
    [304, -1],
  ]);
});

test('north of the polar circle the sun does not set at midsummer', () => {
  const lines = sunLines(2026, 70, 25, zoneOffsets('Europe/Oslo', 2026, 2026));
  expect(lines[171]).toMatchObject({ dawnH: null, sunriseH: null, sunsetH: null, duskH: null });
});

test('months are counted so that the middle of one lies at its half', () => {
  const lines = sunLines(2026, 0, 0, zoneOffsets('UTC', 2026, 2026));
  // 16 January: 15.5 of 31 days.
  expect(lines[15]?.monthOfYear).toBeCloseTo(0.5, 9);
  expect(lines[364]?.monthOfYear).toBeCloseTo(11 + 30.5 / 31, 9);
});
