import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  planDeparture,
  type DepartureQuestion,
} from '../../../../shared-calc/climate/departure/plan-departure.ts';
import { inventedRecord } from './invented-record.ts';

interface Case {
  month: number;
  day: number;
  share: number;
  daMost: number;
  crossMost: number;
  heading: number;
  hours: number[];
  halfDays: number;
  years: number;
  rows: {
    hour: number;
    days: number;
    met: number;
    failsDa: number;
    failsCross: number;
    da: number;
    low: number;
    high: number;
  }[];
}
const cases = JSON.parse(readFileSync(new URL('departure-odds.json', import.meta.url), 'utf8')) as Case[];
const record = inventedRecord();

function questionOf({ month, day, share, daMost, crossMost, heading, hours }: Case): DepartureQuestion {
  return {
    date: { month, day },
    share,
    elevationM: 1372,
    headingsDeg: [heading],
    limits: {
      densityAltitudeMostM: daMost,
      takeOff: null,
      landing: null,
      climbRate: null,
      climbGradient: null,
      crosswindMostMs: crossMost,
      tailwindMostMs: null,
      gustMostMs: null,
    },
    daylight: { fromH: hours[0] ?? 0, toH: hours.at(-1) ?? 0, isAllDay: false },
    times: { fromH: hours[0] ?? 0, toH: hours.at(-1) ?? 0 },
    steps: { temperaturesC: [0, 10, 20, 30], settingsHpa: [1000, 1010, 1020] },
  };
}

// Counted with numpy: see departure-odds.py.
describe.each(cases)('around $day/$month at $share', (each) => {
  const plan = planDeparture(record, questionOf(each));
  const [densityAltitude, crosswind] = [0, 1];

  test('counts the same days, days inside and days that each limit fails', () => {
    expect(plan.halfDays).toBe(each.halfDays);
    expect(plan.yearCount).toBe(each.years);
    expect(plan.limitNames).toEqual(['densityAltitude', 'crosswind']);
    expect(
      plan.hours.map(({ hour, dayCount, metCount, failCounts }) => ({
        hour,
        days: dayCount,
        met: metCount,
        failsDa: failCounts[densityAltitude],
        failsCross: failCounts[crosswind],
      })),
    ).toEqual(
      each.rows.map(({ hour, days, met, failsDa, failsCross }) => ({ hour, days, met, failsDa, failsCross })),
    );
  });

  test('gives the same quantile of density altitude where the hour has its days', () => {
    for (const { hour, densityAltitudeM, dayCount } of plan.hours) {
      // A micrometre: the same sums in another order.
      if (dayCount >= plan.daysNeeded)
        expect(Math.abs((densityAltitudeM ?? NaN) - (each.rows[hour]?.da ?? NaN))).toBeLessThan(1e-6);
      else expect(densityAltitudeM).toBeNull();
    }
  });

  test('gives an interval as 20,000 drawings of years give it', () => {
    for (const { hour, shareLow, shareHigh, dayCount } of plan.hours) {
      if (dayCount < plan.daysNeeded) continue;
      // A thousand drawings place a 5 % quantile to some 0.7 % of the drawings: here well below 0.02 of a share.
      expect(Math.abs((shareLow ?? NaN) - (each.rows[hour]?.low ?? NaN))).toBeLessThan(0.02);
      expect(Math.abs((shareHigh ?? NaN) - (each.rows[hour]?.high ?? NaN))).toBeLessThan(0.02);
    }
  });

  test('finds windows where a walk minute by minute finds the straight lines above the share', () => {
    const { fromH, toH } =
      plan.windows.length === 0
        ? { fromH: NaN, toH: NaN }
        : (questionOf(each).daylight ?? { fromH: NaN, toH: NaN });
    const shareOf = (hour: number) => {
      const row = each.rows[((hour % 24) + 24) % 24];
      return row === undefined || row.days < plan.daysNeeded ? NaN : row.met / row.days;
    };
    const inside = (atH: number) =>
      plan.windows.some(({ weather }) => atH >= weather.fromH && atH <= weather.toH);
    for (let minute = Math.ceil(fromH * 60); minute <= toH * 60; minute++) {
      const before = Math.floor(minute / 60);
      const part = minute / 60 - before;
      const left = shareOf(before);
      const value = part === 0 ? left : left + part * (shareOf(before + 1) - left);
      // On the crossing itself either may be said.
      if (Number.isNaN(value) || Math.abs(value - each.share) < 1e-6) continue;
      expect([minute, inside(minute / 60)]).toEqual([minute, value > each.share]);
    }
  });
});

test('a stricter limit, a shorter day and a longer flight never open a window', () => {
  const [first] = cases;
  if (first === undefined) throw new Error('no case');
  const base = questionOf(first);
  const lengthH = (question: DepartureQuestion) =>
    planDeparture(record, question).windows.reduce(
      (sum, { takeOff }) => sum + (takeOff === null ? 0 : takeOff.toH - takeOff.fromH),
      0,
    );
  fc.assert(
    fc.property(
      fc.double({ min: 1700, max: 2400, noNaN: true }),
      fc.double({ min: 0, max: 200, noNaN: true }),
      fc.double({ min: 0, max: 6, noNaN: true }),
      (mostM, stricterM, shorterH) => {
        const limits = { ...base.limits, densityAltitudeMostM: mostM };
        const whole = lengthH({ ...base, limits });
        expect(
          lengthH({ ...base, limits: { ...limits, densityAltitudeMostM: mostM - stricterM } }),
        ).toBeLessThanOrEqual(whole + 1e-9);
        expect(
          lengthH({
            ...base,
            limits,
            times: { fromH: base.times?.fromH ?? NaN, toH: (base.times?.toH ?? NaN) - shorterH },
          }),
        ).toBeLessThanOrEqual(whole + 1e-9);
      },
    ),
    { numRuns: 30, seed: 5 },
  );
});

test('without daylight there is no window, and every hour is still counted', () => {
  const [first] = cases;
  if (first === undefined) throw new Error('no case');
  const plan = planDeparture(record, { ...questionOf(first), daylight: null, times: null });
  expect(plan.windows).toEqual([]);
  expect(plan.answeredHours).toEqual([]);
  expect(plan.takeAlong).toBeNull();
  expect(plan.hours.every(({ dayCount }) => dayCount > 0)).toBe(true);
});
