import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  departureWindows,
  fallsTo,
  roundedInward,
  shareAt,
  stretchesAbove,
} from '../../../../shared-calc/climate/departure/departure-windows.ts';

/** Sixty in a hundred at every hour but those given. */
function shares(known: Record<number, number | null>): (number | null)[] {
  return Array.from({ length: 24 }, (_, hour) => (hour in known ? (known[hour] ?? null) : 0.6));
}
const day = { fromH: 5.5, toH: 20.5, isAllDay: false };

// Worked by hand: the line from 0.96 at 9 to 0.81 at 10 passes 0.9 after 0.06 / 0.15 of the hour, 24 minutes.
test('a window ends where the straight line between two full hours passes the share', () => {
  const [window, ...rest] = stretchesAbove(shares({ 5: 1, 6: 1, 7: 1, 8: 1, 9: 0.96, 10: 0.81 }), 0.9, day);
  expect(rest).toEqual([]);
  expect(window?.fromH).toBe(5.5);
  expect(window?.toH).toBeCloseTo(9.4, 9);
});

test('ends are rounded inward to ten minutes, and what is exact stays', () => {
  expect(roundedInward({ fromH: 5.5, toH: 9.4 })).toEqual({ fromH: 5.5, toH: 9 + 2 / 6 });
  expect(roundedInward({ fromH: 5 + 47 / 60, toH: 9.999 })).toEqual({ fromH: 5 + 5 / 6, toH: 9 + 5 / 6 });
  expect(roundedInward({ fromH: 6.01, toH: 6.3 })).toBeNull();
  expect(roundedInward({ fromH: 6, toH: 6 })).toBeNull();
});

test('ninety days of a hundred are nine in ten', () => {
  expect(stretchesAbove(shares({ 7: 90 / 100, 8: 162 / 180 }), 0.9, day)).toEqual([{ fromH: 7, toH: 8 }]);
});

test('an hour with too few days ends the window at the full hour before it, whatever stands beyond', () => {
  expect(stretchesAbove(shares({ 7: 1, 8: 1, 9: null, 10: 1, 11: 1 }), 0.9, day)).toEqual([
    { fromH: expect.closeTo(6.75, 9) as number, toH: 8 },
    { fromH: 10, toH: expect.closeTo(11.25, 6) as number },
  ]);
});

test('the flight must end in daylight: a window is cut, and one that is too late is kept with no take-off', () => {
  const [morning, evening] = departureWindows(shares({ 6: 1, 7: 1, 19: 1, 20: 1, 21: 1 }), 0.9, day, {
    fromH: 5,
    toH: 17,
  });
  expect(morning?.takeOff).toEqual({ fromH: 5 + 5 / 6, toH: 7 + 1 / 6 });
  expect(evening?.takeOff).toBeNull();
  expect(evening?.weather.fromH).toBeCloseTo(18.75, 6);
  const [cut] = departureWindows(shares({ 6: 1, 7: 1 }), 0.9, day, { fromH: 5, toH: 6.6 });
  expect(cut?.takeOff?.toH).toBeCloseTo(6.5, 9);
});

test('a landing keeps clear of the morning that its flight needs: weather before it is kept with no landing', () => {
  const times = { fromH: 6.75, toH: 19 };
  const [early, late] = departureWindows(shares({ 6: 1, 12: 1, 13: 1 }), 0.9, day, times);
  expect(early?.takeOff).toBeNull();
  expect(late?.takeOff).not.toBeNull();
  const [cut] = departureWindows(shares({ 6: 1, 7: 1, 8: 1 }), 0.9, day, times);
  // 06:45, rounded inward.
  expect(cut?.takeOff?.fromH).toBeCloseTo(6 + 5 / 6, 9);
});

test('daylight past midnight is read from the next day', () => {
  const all = shares({ 22: 1, 23: 1, 0: 1, 1: 1 });
  expect(stretchesAbove(all, 0.9, { fromH: 20, toH: 25 })).toEqual([
    { fromH: expect.closeTo(21.75, 6) as number, toH: 25 },
  ]);
});

test('the share falls to one in two where the line says so', () => {
  const known = shares({ 9: 0.9, 10: 0.7, 11: 0.3 });
  expect(fallsTo(known, 0.5, 9, 20)).toBeCloseTo(10.5, 9);
  expect(fallsTo(known, 0.2, 9, 20)).toBeNull();
  expect(fallsTo(shares({ 10: null }), 0.5, 9, 20)).toBeNull();
});

test('whatever the shares, every time inside a rounded window has at least the share, and windows do not touch', () => {
  const value = fc.option(
    fc.integer({ min: 0, max: 20 }).map((each) => each / 20),
    { freq: 8 },
  );
  fc.assert(
    fc.property(
      fc.array(value, { minLength: 24, maxLength: 24 }),
      fc.constantFrom(0.5, 0.75, 0.9),
      (all, share) => {
        const stretches = stretchesAbove(all, share, day);
        stretches.forEach((stretch, i) => {
          const before = stretches[i - 1];
          if (before !== undefined) expect(stretch.fromH).toBeGreaterThan(before.toH);
          const rounded = roundedInward(stretch);
          if (rounded === null) return;
          for (let minute = Math.round(rounded.fromH * 60); minute <= Math.round(rounded.toH * 60); minute++)
            expect(shareAt(all, minute / 60) ?? -1).toBeGreaterThanOrEqual(share - 1e-7);
        });
      },
    ),
    { seed: 11, numRuns: 300 },
  );
});
