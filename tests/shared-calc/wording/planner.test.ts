import { describe, expect, test } from 'vitest';
import type { DeparturePlan, PlannedWindow } from '../../../shared-calc/climate/departure/plan-departure.ts';
import { UNIT_PRESETS } from '../../../shared-calc/units/preferences.ts';
import { daysInWords, intervalWords } from '../../../shared-calc/wording/days-in-words.ts';
import { plannerAnswer, plannerText, type PlannerAnswerParts } from '../../../shared-calc/wording/planner.ts';
import { clockText } from '../../../shared-calc/wording/planner-words.ts';

/** Sentences with the spaces of the look made plain. */
const plain = (text: string) => text.replaceAll(/[\u2009\u2060]/g, '').replaceAll('\u00a0', ' ');

const window = (given: Partial<PlannedWindow>): PlannedWindow => ({
  weather: { fromH: 5.78, toH: 10.38 },
  takeOff: { fromH: 5 + 5 / 6, toH: 10 + 2 / 6 },
  leastShare: 0.9,
  shareLow: 0.72,
  shareHigh: 0.97,
  endsBy: 'densityAltitude',
  beginsBy: null,
  halfAtH: 11.55,
  ...given,
});
const hour = (of: number, metCount: number) => ({
  hour: of,
  dayCount: 165,
  metCount,
  failCounts: [165 - metCount],
  share: metCount / 165,
  shareLow: null,
  shareHigh: null,
  failsMost: metCount === 165 ? null : ('densityAltitude' as const),
  densityAltitudeM: 2000,
  takeOffM: null,
  climbRateMs: null,
  climbGradientRatio: null,
  temperatureC: 30,
});
const plan = (given: Partial<DeparturePlan> = {}): DeparturePlan => ({
  limitNames: ['densityAltitude'],
  hours: Array.from({ length: 24 }, (_, of) => hour(of, of === 7 ? 140 : 60)),
  halfDays: 7,
  daysNeeded: 100,
  yearCount: 11,
  isFewYears: false,
  answeredHours: [6, 7, 8],
  windows: [window({})],
  resampled: { of: 'years', groupCount: 11 },
  takeAlong: {
    temperatureMostC: 31,
    settingLeastHpa: 1004,
    dewPointMostC: 14,
    temperatureBinds: true,
    settingBinds: true,
    goesCount: 150,
    dayCount: 165,
  },
  ...given,
});
const parts = (given: Partial<PlannerAnswerParts> = {}): PlannerAnswerParts => ({
  plan: plan(),
  share: 0.9,
  isObserved: true,
  daylight: { fromH: 5.78, toH: 21.13, isAllDay: false },
  rule: { rule: 'civil twilight' },
  times: { fromH: 5.78, toH: 21.13 - 190 / 60 },
  flight: { phase: 'take-off', flightS: 145 * 60, reserveS: 45 * 60 },
  units: UNIT_PRESETS.metric,
  ...given,
});
const said = (given: Partial<PlannerAnswerParts> = {}) => plain(plannerText(plannerAnswer(parts(given))));

describe('the answer on a departure', () => {
  test('gives the window, how sure, what ends it and the rule to take along', () => {
    expect(said()).toBe(
      'Between 05:50 and 10:20 local, nine days in ten (seven to ten with the years at hand); then density altitude fails first, and from 11:30 it is one day in two. Up to one day in ten is not inside: above 31 °C or below 1004 hPa, do not go.',
    );
    expect(plannerAnswer(parts()).inShort).toBe('until 10:20');
    expect(
      plannerAnswer(parts())
        .sentences.flat()
        .filter(({ strong }) => strong)
        .map(({ text }) => text),
    ).toEqual(['10:20']);
  });
  test('says why the evening has no window: the flight with its reserve would end after dusk', () => {
    const evening = window({ weather: { fromH: 20.58, toH: 21.13 }, takeOff: null, halfAtH: null });
    expect(said({ plan: plan({ windows: [window({}), evening] }) })).toMatch(
      / No evening window: 3 h 10 min with the reserve from 20:40 ends at 23:50; dusk is 21:07\./,
    );
  });
  test('an evening that is long enough is a window, and says what it must end by', () => {
    const evening = window({
      weather: { fromH: 17.4, toH: 21.13 },
      takeOff: { fromH: 17.5, toH: 17.5 + 2 / 6 },
      halfAtH: null,
    });
    expect(said({ plan: plan({ windows: [window({}), evening] }) })).toMatch(
      / In the evening not before 17:30, until 17:50, so that 3 h 10 min with the reserve ends by dusk at 21:07\./,
    );
  });
  test('with no window the best hour and what fails there are said, and no rule promises anything', () => {
    expect(said({ plan: plan({ windows: [], takeAlong: null }) })).toBe(
      'At no time of daylight nine days in ten. The best full hour is 07:00 with 140 of 165 days; density altitude fails most.',
    );
  });
  test('limits of wind stand in the rule; a half of the rule that never binds is left out', () => {
    const rule = plan().takeAlong;
    if (rule === null) throw new Error('no rule');
    expect(
      said({
        plan: plan({
          limitNames: ['densityAltitude', 'crosswind'],
          takeAlong: { ...rule, settingBinds: false },
        }),
      }),
    ).toMatch(/Up to one day in ten is not inside: above 31 °C or over the wind limits, do not go\.$/);
    expect(said({ plan: plan({ limitNames: ['crosswind'], takeAlong: null }) })).toMatch(
      /Up to one day in ten is not inside: over the wind limits, do not go\.$/,
    );
  });
  test('the days left over are told as counted, rounded up, and never as the share that was asked', () => {
    const rule = plan().takeAlong;
    if (rule === null) throw new Error('no rule');
    const left = (leastShare: number) =>
      said({
        plan: plan({ windows: [window({ leastShare })], takeAlong: { ...rule, goesCount: rule.dayCount } }),
      });
    expect(left(0.97)).toMatch(/ Up to 3 days in 100 are not inside: above 31 °C/);
    // 160 of 165: 3.03 in a hundred.
    expect(left(160 / 165)).toMatch(/ Up to 4 days in 100 are not inside: above/);
    expect(left(0.95)).toMatch(/ Up to 1 day in 20 is not inside: above/);
    expect(left(1)).toMatch(
      / Every day that was counted is inside; all the same, above 31 °C or below 1004 hPa, do not go\.$/,
    );
  });
  test('a rule that holds back more days than are outside says how many go by it', () => {
    const rule = plan().takeAlong;
    if (rule === null) throw new Error('no rule');
    const goes = (goesCount: number) =>
      said({ plan: plan({ takeAlong: { ...rule, goesCount, dayCount: 456 } }) });
    // 385 of 456 are 84.4 in a hundred, and 90 are inside.
    expect(goes(385)).toMatch(
      / do not go\. That air is met on 84 days in 100: the rule holds back some that were inside\.$/,
    );
    expect(goes(410)).toMatch(/ do not go\.$/);
  });
  test('a landing counts the flight before it: when to take off, and a morning too early to have flown', () => {
    const flight = { phase: 'landing', flightS: 90 * 60, reserveS: 45 * 60 } as const;
    const times = { fromH: 5.78 + 1.5, toH: 21.13 - 0.75 };
    const landing = window({
      weather: { fromH: 5.78, toH: 10.38 },
      takeOff: { fromH: 7 + 2 / 6, toH: 10 + 2 / 6 },
    });
    expect(said({ flight, times, plan: plan({ windows: [landing] }) })).toMatch(
      /^Land between 07:20 and 10:20 local, nine days in ten .* After 1 h 30 min of flight that is a take-off between 05:50 and 08:50\. /,
    );
    const early = window({ weather: { fromH: 5.78, toH: 6.9 }, takeOff: null });
    expect(said({ flight, times, plan: plan({ windows: [early, landing] }) })).toMatch(
      / No morning window: 1 h 30 min of flight from dawn at 05:47 lands at 07:17\./,
    );
    expect(said({ flight, times: { fromH: 20, toH: 19 }, plan: plan({ windows: [early] }) })).toMatch(
      /^No landing: 2 h 15 min with the reserve is longer than the daylight/,
    );
  });
  test('an hour at which no day is inside is not praised as the best', () => {
    const none = Array.from({ length: 24 }, (_, of) => hour(of, 0));
    expect(said({ plan: plan({ windows: [], hours: none, takeAlong: null }) })).toBe(
      'At no time of daylight nine days in ten. No day of the record is inside at any full hour; at 06:00 density altitude fails most.',
    );
  });
  test('too few days, too few years, no observations and no daylight are said instead of a guess', () => {
    expect(
      said({
        plan: plan({
          answeredHours: [],
          windows: [],
          halfDays: 21,
          hours: [{ ...hour(6, 20), dayCount: 31 }],
        }),
      }),
    ).toBe(
      'Too few days: the fullest hour has 31 of the 100 that nine days in ten needs, with 21 days on either side. Import more years, or ask for one day in two.',
    );
    expect(said({ plan: plan({ isFewYears: true, yearCount: 2 }) })).toMatch(
      /From 2 years only: other years may differ much\.$/,
    );
    expect(said({ isObserved: false, plan: null })).toMatch(/never answers on how many days/);
    expect(said({ daylight: null, times: null, plan: null, rule: { rule: 'sunset' } })).toBe(
      'There is no daylight between sunrise and sunset on this date.',
    );
  });
  test('a flight longer than the day is no departure', () => {
    expect(
      said({
        plan: plan({ windows: [] }),
        times: { fromH: 5.78, toH: 5 },
        flight: { phase: 'take-off', flightS: 16 * 3600, reserveS: 2700 },
      }),
    ).toMatch(/^No departure: 16 h 45 min with the reserve is longer than the daylight, 05:47 to 21:07\./);
  });
});

test('shares are counts of a round number', () => {
  expect([0.5, 0.75, 0.9, 0.95, 0.1, 0.05, 0.87].map((share) => daysInWords(share))).toEqual([
    'one day in two',
    'three days in four',
    'nine days in ten',
    '19 days in 20',
    'one day in ten',
    '1 day in 20',
    '87 days in 100',
  ]);
});

test('an interval is rounded outward', () => {
  expect(intervalWords(0.9, { shareLow: 0.79, shareHigh: 0.91 }, 'years')).toBe(
    'seven to ten with the years at hand',
  );
  expect(intervalWords(0.5, { shareLow: 0.5, shareHigh: 0.6 }, 'blocks of five days')).toBe(
    'five to six in ten with the days at hand',
  );
  expect(intervalWords(0.95, { shareLow: 0.91, shareHigh: 0.99 }, 'years')).toBe(
    '18 to 20 in 20 with the years at hand',
  );
  expect(intervalWords(0.9, { shareLow: null, shareHigh: null }, 'years')).toBe('');
});

test('a clock time is rounded to the side asked and comes round at midnight', () => {
  expect([clockText(5.78, 'down'), clockText(5.78, 'up'), clockText(24.2), clockText(10 + 1 / 3)]).toEqual([
    '05:46',
    '05:47',
    '00:12',
    '10:20',
  ]);
});
