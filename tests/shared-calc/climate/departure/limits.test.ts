import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { airOf, type AirRows, type AirState } from '../../../../shared-calc/climate/departure/air-rows.ts';
import {
  rowsOfLimits,
  type DepartureLimits,
} from '../../../../shared-calc/climate/departure/departure-limits.ts';
import { judge } from '../../../../shared-calc/climate/departure/judge.ts';
import { EITHER_END, runwayWind } from '../../../../shared-calc/climate/departure/runway-wind.ts';
import { takeAlong } from '../../../../shared-calc/climate/departure/take-along.ts';
import { worksByDate, dateRuns } from '../../../../shared-calc/climate/departure/through-the-year.ts';
import { daylightSpan, timesInDaylight } from '../../../../shared-calc/climate/departure/daylight-span.ts';

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
const state = (given: Partial<AirState> = {}): AirState => ({
  temperatureC: 25,
  dewPointC: 10,
  settingHpa: 1013,
  windFromDeg: 180,
  windMs: 0,
  ...given,
});
const withGust = (air: AirRows, gustMs: number[]): AirRows => ({ ...air, gustMs: Float64Array.from(gustMs) });

describe('wind on a runway', () => {
  const kt = 1852 / 3600;
  test('runway 18, wind from 220 at 30 kt: the chart gives 23 kt ahead and 19 kt across', () => {
    // FAA-H-8083-25C ch. 11, crosswind component chart: read to half a knot.
    const wind = runwayWind(airOf([state({ windFromDeg: 220, windMs: 30 * kt })], 0), [180]);
    expect(Math.abs((wind.headwindMs[0] ?? 0) / kt - 23)).toBeLessThan(0.5);
    expect(Math.abs((wind.crosswindMs[0] ?? 0) / kt - 19)).toBeLessThan(0.5);
    expect(wind.tailwindMs[0]).toBe(0);
  });
  test('crosswind and tailwind count by the gust, headwind by the mean', () => {
    const air = withGust(
      airOf(
        [
          state({ windFromDeg: 0, windMs: 4 }),
          state({ windFromDeg: 180, windMs: 4 }),
          state({ windFromDeg: 90, windMs: 4 }),
        ],
        0,
      ),
      [7, 7, 7],
    );
    const { headwindMs, tailwindMs, crosswindMs } = runwayWind(air, [180]);
    expect([...tailwindMs].map((each) => Math.round(each * 1e6) / 1e6)).toEqual([7, 0, 0]);
    expect([...headwindMs].map((each) => Math.round(each * 1e6) / 1e6)).toEqual([-7, 4, 0]);
    expect(Math.round((crosswindMs[2] ?? 0) * 1e6) / 1e6).toBe(7);
  });
  test('a variable wind counts fully across and from behind; calm is calm; without a speed there is no observation', () => {
    const air = airOf(
      [
        state({ windFromDeg: NaN, windMs: 3 }),
        state({ windFromDeg: NaN, windMs: 0 }),
        state({ windMs: NaN }),
      ],
      0,
    );
    const { headwindMs, tailwindMs, crosswindMs } = runwayWind(air, [90, 270]);
    expect([headwindMs[0], tailwindMs[0], crosswindMs[0]]).toEqual([-3, 3, 3]);
    expect(
      [headwindMs[1], tailwindMs[1], crosswindMs[1]].map(Math.abs as (each: number | undefined) => number),
    ).toEqual([0, 0, 0]);
    expect([headwindMs[2], tailwindMs[2], crosswindMs[2]]).toEqual([NaN, NaN, NaN]);
  });
  test('the end in use is the one with more wind ahead; calm and variable wind leave either', () => {
    const air = airOf(
      [
        state({ windFromDeg: 80, windMs: 4 }),
        state({ windFromDeg: 300, windMs: 4 }),
        state({ windMs: 0 }),
        state({ windFromDeg: NaN, windMs: 3 }),
      ],
      0,
    );
    expect([...runwayWind(air, [90, 270]).end]).toEqual([0, 1, EITHER_END, EITHER_END]);
    expect([...runwayWind(air, [270]).end]).toEqual([0, 0, 0, 0]);
  });
  test('into the wind there is never a tailwind of a steady wind', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 359 }), fc.integer({ min: 1, max: 36 }), (heading, from) => {
        const air = airOf([state({ windFromDeg: from * 10, windMs: 8 })], 0);
        const wind = runwayWind(air, [heading, (heading + 180) % 360]);
        expect(wind.tailwindMs[0]).toBeLessThan(1e-6);
      }),
      { seed: 3 },
    );
  });
});

describe('judging', () => {
  test('a limit met exactly is met, one beyond the table fails, a missing figure is no observation', () => {
    const { observed, failed } = judge([
      { name: 'takeOff', side: 'most', limit: 560, value: Float64Array.of(560, 560.001, Infinity, NaN, 500) },
      { name: 'climbRate', side: 'least', limit: 2, value: Float64Array.of(2, 1.9, -Infinity, 3, NaN) },
    ]);
    expect([...observed]).toEqual([1, 1, 1, 0, 0]);
    expect([...failed]).toEqual([0, 3, 3, 0, 0]);
  });
  test('missing wind is no observation for a wind limit, and one like any other without it', () => {
    const air = airOf([state({ windMs: NaN })], 1372);
    const asked = { ...none, densityAltitudeMostM: 4000 };
    expect([...judge(rowsOfLimits(air, [90], asked)).observed]).toEqual([1]);
    expect([...judge(rowsOfLimits(air, [90], { ...asked, crosswindMostMs: 5 })).observed]).toEqual([0]);
  });
});

describe('the rule to take along', () => {
  const air = airOf(
    Array.from({ length: 200 }, (_, i) =>
      state({ temperatureC: 18 + (i % 17), settingHpa: 1004 + (i % 13), dewPointC: 4 + (i % 9) }),
    ),
    1372,
  );
  const steps = {
    temperaturesC: Array.from({ length: 60 }, (_, i) => i - 10),
    settingsHpa: Array.from({ length: 40 }, (_, i) => 990 + i),
  };
  const site = { elevationM: 1372, headingsDeg: [250] };
  const asked = { ...none, densityAltitudeMostM: 2150 };
  const rule = takeAlong(air, steps, site, asked);
  if (rule === null) throw new Error('no rule');
  const meets = (temperatureC: number, settingHpa: number, dewPointC: number) =>
    judge(rowsOfLimits(airOf([state({ temperatureC, settingHpa, dewPointC })], 1372), [250], asked))
      .failed[0] === 0;

  test('put back in, every corner that it lets go keeps the limit, and a degree more at its corner breaks it', () => {
    expect(meets(rule.temperatureMostC, rule.settingLeastHpa, rule.dewPointMostC)).toBe(true);
    expect(meets(rule.temperatureMostC + 1, rule.settingLeastHpa, rule.dewPointMostC)).toBe(false);
    fc.assert(
      fc.property(
        fc.double({ min: -10, max: rule.temperatureMostC, noNaN: true }),
        fc.double({ min: rule.settingLeastHpa, max: 1040, noNaN: true }),
        fc.double({ min: -20, max: rule.dewPointMostC, noNaN: true }),
        (temperatureC, settingHpa, dewPointC) => {
          expect(meets(temperatureC, settingHpa, dewPointC)).toBe(true);
        },
      ),
      { seed: 4 },
    );
  });
  test('no other pair of steps that is safe lets more of the days go', () => {
    for (const settingHpa of steps.settingsHpa) {
      const safe = steps.temperaturesC.filter((each) => meets(each, settingHpa, rule.dewPointMostC));
      const hottest = Math.max(-Infinity, ...safe);
      const goes = [...air.temperatureC].filter(
        (each, row) => each <= hottest && (air.settingHpa[row] ?? 0) >= settingHpa,
      ).length;
      expect(goes).toBeLessThanOrEqual(rule.goesCount);
    }
    expect(rule.dayCount).toBe(200);
  });
  test('limits of wind alone have no such rule', () => {
    expect(takeAlong(air, steps, site, { ...none, crosswindMostMs: 4 })).toBeNull();
  });
});

describe('daylight', () => {
  const zone = { startMinutes: [-1e9], offsetMinutes: [60] };
  // Published London twilight table of the almanac, 4 May 2021 by UTC: sunrise 04:27, sunset 19:30 (astral's test, see
  // reference/published-checks): here by a clock one hour ahead of UTC.
  const london = { latitudeDeg: 51.5, longitudeDeg: -0.13 };
  const may4 = Date.UTC(2021, 4, 4) / 86_400_000;
  test('ends by sunset, by civil twilight, or by a local rule, and the flight is taken off its end', () => {
    const sunset = daylightSpan(may4, london, zone, { rule: 'sunset' });
    const local = daylightSpan(may4, london, zone, {
      rule: 'local',
      beforeSunriseS: 1800,
      afterSunsetS: 1200,
    });
    const twilight = daylightSpan(may4, london, zone, { rule: 'civil twilight' });
    if (sunset === null || local === null || twilight === null) throw new Error('no daylight');
    expect(local.fromH).toBeCloseTo(sunset.fromH - 0.5, 9);
    expect(local.toH).toBeCloseTo(sunset.toH + 1 / 3, 9);
    expect(twilight.fromH).toBeLessThan(sunset.fromH - 0.5);
    expect(twilight.toH).toBeGreaterThan(sunset.toH + 0.5);
    const flight = { flightS: 5400, reserveS: 2700 };
    // By hand: 1 h 30 min and 45 min are 2.25 h before sunset, or 1.5 h after sunrise and 0.75 h before sunset.
    const takeOffs = timesInDaylight(sunset, { phase: 'take-off', ...flight });
    expect(takeOffs.fromH).toBe(sunset.fromH);
    expect(takeOffs.toH).toBeCloseTo(sunset.toH - 2.25, 9);
    const landings = timesInDaylight(sunset, { phase: 'landing', ...flight });
    expect(landings.fromH).toBeCloseTo(sunset.fromH + 1.5, 9);
    expect(landings.toH).toBeCloseTo(sunset.toH - 0.75, 9);
  });
  test('a midsummer day in the far north is all daylight, a midwinter one has none', () => {
    const north = { latitudeDeg: 70, longitudeDeg: 20 };
    const span = (day: string) => daylightSpan(Date.parse(day) / 86_400_000, north, zone, { rule: 'sunset' });
    expect(span('2026-06-21')).toEqual({ fromH: 0, toH: 24, isAllDay: true });
    expect(span('2026-12-21')).toBeNull();
    // At 70 degrees north the sun stays down, but civil twilight still comes.
    expect(
      daylightSpan(Date.parse('2026-12-21') / 86_400_000, north, zone, { rule: 'civil twilight' }),
    ).not.toBeNull();
  });
});

describe('through the year', () => {
  const dayOfYear: number[] = [];
  const failed: number[] = [];
  // Twelve years in which it fails from 1 June (place 152) to the end of August (243) and nowhere else.
  for (let year = 0; year < 12; year++)
    for (let date = 0; date < 366; date++) {
      dayOfYear.push(date);
      failed.push(date >= 152 && date <= 243 ? 1 : 0);
    }
  const judged = { observed: new Uint8Array(dayOfYear.length).fill(1), failed: Uint8Array.from(failed) };
  test('works until the window around the date holds one failing day in ten', () => {
    const works = worksByDate(Int16Array.from(dayOfYear), judged, 0.9);
    // Fifteen days around: one of them is 6.7 %, two are 13.3 %: 145 holds 152 as its last day, 146 two.
    expect([works[145], works[146]]).toEqual([true, false]);
    expect(dateRuns(works)).toEqual([{ from: 250, to: 145 }]);
  });
  test('too few days is said, not guessed', () => {
    const few = { observed: judged.observed.slice(0, 366), failed: judged.failed.slice(0, 366) };
    expect(
      worksByDate(Int16Array.from(dayOfYear.slice(0, 366)), few, 0.9).every((each) => each === null),
    ).toBe(true);
    expect(dateRuns(worksByDate(Int16Array.from(dayOfYear.slice(0, 366)), few, 0.9))).toEqual([]);
  });
});
