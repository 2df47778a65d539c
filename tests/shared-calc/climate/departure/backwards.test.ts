import { describe, expect, test } from 'vitest';
import { airOf } from '../../../../shared-calc/climate/departure/air-rows.ts';
import type { DepartureLimits } from '../../../../shared-calc/climate/departure/departure-limits.ts';
import { daysOfHour, heaviestKg, shareMeeting } from '../../../../shared-calc/climate/departure/one-hour.ts';
import { rowsAround } from '../../../../shared-calc/climate/departure/rows-around.ts';
import {
  dateAtPlace,
  placeInYear,
  runsToTell,
  yearOfHour,
} from '../../../../shared-calc/climate/departure/through-the-year.ts';
import { inventedRecord } from './invented-record.ts';

const none: DepartureLimits = {
  densityAltitudeMostM: null,
  takeOff: null,
  landing: null,
  climbRate: null,
  climbGradient: null,
  crosswindMostMs: null,
  tailwindMostMs: null,
  gustMostMs: null,
};

describe('the heaviest load', () => {
  // A hundred days of 1 to 100 degrees over freezing tenths: day n needs mass + n metres of a runway of 600 m.
  const air = airOf(
    Array.from({ length: 100 }, (_, i) => ({
      temperatureC: (i + 1) / 4,
      dewPointC: -10,
      settingHpa: 1013,
      windFromDeg: 90,
      windMs: 0,
    })),
    0,
  );
  const limitsAt = (massKg: number): DepartureLimits => ({
    ...none,
    takeOff: {
      mostM: 600,
      distanceM: ({ temperatureC }) => temperatureC.map((each) => massKg + 4 * each),
    },
  });
  test('by hand: ninety days of a hundred fit when the ninetieth does, at 510 kg', () => {
    expect(heaviestKg(air, [90], limitsAt, 0.9, 300, 700)).toBeCloseTo(510, 6);
    expect(shareMeeting(air, [90], limitsAt(510), 0.9)).toBe(0.9);
    expect(shareMeeting(air, [90], limitsAt(510.2), 0.9)).toBe(0.89);
  });
  test('rounded down to a tenth, also from a least mass that is none', () => {
    const found = heaviestKg(air, [90], limitsAt, 0.9, 300.04, 700) ?? NaN;
    expect(found).toBeLessThanOrEqual(510);
    expect(found).toBeGreaterThan(509.8);
  });
  test('the whole aeroplane where nothing binds, none where everything does or days are too few', () => {
    expect(heaviestKg(air, [90], limitsAt, 0.9, 300, 505)).toBe(505);
    expect(heaviestKg(air, [90], limitsAt, 0.9, 520, 700)).toBeNull();
    expect(heaviestKg(air, [90], limitsAt, 0.95, 300, 700)).toBeNull();
  });
});

test('the days of an hour are those that a plain filter finds', () => {
  const record = inventedRecord();
  const days = daysOfHour(record, rowsAround(record.localHour, { month: 7, day: 19 }), 15, 7);
  const expected = [...record.localHour.keys()].filter((place) => {
    const at = new Date((record.localHour[place] ?? 0) * 3_600_000);
    return (
      at.getUTCHours() === 15 && at.getUTCMonth() === 6 && at.getUTCDate() >= 12 && at.getUTCDate() <= 26
    );
  });
  expect([...days.place]).toEqual(expected);
  expect(days.air.temperatureC[0]).toBe(record.temperatureC[expected[0] ?? 0]);
});

test('every date has one place in the year, as in a leap year', () => {
  const places = Array.from({ length: 366 }, (_, at) => {
    const date = new Date(Date.UTC(2024, 0, 1 + at));
    return [date.getUTCMonth(), date.getUTCDate(), at] as const;
  });
  for (const [month, day, at] of places) {
    expect(placeInYear(month, day)).toBe(at);
    expect(dateAtPlace(at)).toEqual({ month, day });
  }
  const { place, dayOfYear } = yearOfHour(inventedRecord().localHour, 6);
  expect(place.length).toBe(dayOfYear.length);
  // The first hour 6 of the record that is kept is on its first day.
  expect(dayOfYear[0]).toBe(0);
});

test('runs are told without single days, and a bridged gap is owned up to', () => {
  expect(
    runsToTell([
      { from: 10, to: 12 },
      { from: 100, to: 150 },
    ]),
  ).toEqual({
    runs: [{ from: 100, to: 150 }],
    hasGaps: false,
  });
  expect(
    runsToTell([
      { from: 100, to: 120 },
      { from: 125, to: 150 },
    ]),
  ).toEqual({
    runs: [{ from: 100, to: 150 }],
    hasGaps: true,
  });
  // Over the new year: from 250 to 110, with a gap of three days that brings it round to its own beginning.
  expect(runsToTell([{ from: 113, to: 110 }])).toEqual({ runs: [{ from: 0, to: 365 }], hasGaps: true });
  expect(runsToTell([{ from: 237, to: 157 }])).toEqual({ runs: [{ from: 237, to: 157 }], hasGaps: false });
});
