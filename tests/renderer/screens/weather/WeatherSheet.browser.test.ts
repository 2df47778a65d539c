import axe from 'axe-core';
import { beforeEach, expect, test, vi } from 'vitest';
import { userEvent } from 'vitest/browser';
import { render } from 'vitest-browser-svelte';
import type { OutputOf } from '../../../../main/requests/table.ts';
import App from '../../../../renderer/app/App.svelte';
import { showAppearance } from '../../../../renderer/app/appearance.ts';
import { makeClient } from '../../../../renderer/app/client.ts';
import { partsBridge } from '../../../../renderer/ui/parts/partsBridge.ts';
import '../../../../renderer/ui/tokens.css';
import '../../../../renderer/ui/base.css';
import '../../../../renderer/plot/plot.css';

type Season = OutputOf<'weather.season'>;
type Day = OutputOf<'weather.day'>;
type Nature = Day['nature'];

/** Asks again until it is so: other programs may be using the machine. */
const soon = <T>(look: () => T) => expect.poll(look, { timeout: 10_000 });
vi.setConfig({ testTimeout: 60_000 });

// Invented answers: what a component draws and says is looked at here, not what the library works out.
const hours = <T>(of: (hour: number) => T): T[] => Array.from({ length: 24 }, (_, hour) => of(hour));
const altitudeM = (hour: number) => 1600 + 500 * Math.sin(((hour - 9) * Math.PI) / 12);
const sunAt = { dawnH: 5.5, sunriseH: 6, sunsetH: 20.5, duskH: 21 };
const longName = 'The field beyond the long lake of the northern plains with a name that has no end';

const field = {
  id: 'flat',
  name: 'Ostrey Flat',
  identifier: null,
  latitudeDeg: 39,
  longitudeDeg: -105,
  elevationM: 1372,
  timeZone: 'America/Denver',
  weatherStationId: 's',
  listed: null,
  runways: [],
};

function seasonOf(nature: Nature, isEmpty: boolean): Season {
  const cells = <T>(of: (hour: number) => T): T[] => Array.from({ length: 12 }, () => hours(of)).flat();
  const value = (less: number) => cells((hour) => (isEmpty ? null : altitudeM(hour) - less));
  return {
    figure: 'densityAltitude',
    worse: 'up',
    field: { name: field.name, timeZone: field.timeZone, elevationM: field.elevationM },
    station: {
      name: 'Ostrey station',
      identifier: null,
      elevationM: 1372,
      distanceM: 500,
      elevationDifferenceM: 0,
      isElevationApart: false,
    },
    record: {
      isObserved: nature === 'observed',
      nature,
      observationCount: 90_000,
      hourCount: 80_000,
      years: [2015, 2016],
      firstEpochS: 1_420_070_400,
      lastEpochS: 1_767_225_600,
      unusableCount: 0,
      doubtfulCount: 0,
    },
    pressureFrom: { stationCount: 80_000, altimeterSettingCount: 0, seaLevelCount: 0, seaLevelBandM: 60 },
    quantiles: [0.5, 0.75, 0.9, 0.95].map((share) => ({
      share,
      daysNeeded: 20,
      value: value(300 * (1 - share)),
    })),
    worst: value(-50),
    beyondCount: null,
    dayCount: cells(() => (isEmpty ? 3 : 165)),
    yearCount: cells(() => 11),
    sun: Array.from({ length: 73 }, (_, i) => ({ monthOfYear: (12 * i) / 72, ...sunAt })),
  };
}

function dayOf(nature: Nature, isEmpty: boolean): Day {
  const value = (less: number) => hours((hour) => (isEmpty ? null : altitudeM(hour) - less));
  return {
    figure: 'densityAltitude',
    worse: 'up',
    window: { halfWidthDays: 7, yearCount: 11, firstYear: 2015, lastYear: 2025 },
    isObserved: nature === 'observed',
    nature,
    quantiles: [0.5, 0.9].map((share) => ({ share, daysNeeded: 20, value: value(300 * (1 - share)) })),
    better: value(280),
    worst: value(-50),
    dayCount: hours(() => (isEmpty ? 3 : 165)),
    yearCount: hours(() => 11),
    beyondCount: null,
    singleDays: isEmpty ? [] : [[...value(100), altitudeM(0) - 100]],
    singleDayCount: isEmpty ? 0 : 1,
    sun: sunAt,
  };
}

const observations: OutputOf<'weather.observations'> = {
  figure: 'densityAltitude',
  dayCount: 2000,
  rows: [
    { value: 2100, windMs: 5 },
    { value: null, windMs: null },
  ].map(({ value, windMs }, at) => ({
    date: `2020-07-1${String(at)}`,
    epochS: 1_594_400_000 + at,
    value,
    temperatureC: 31,
    dewPointC: 8,
    settingHpa: 1013,
    windFromDeg: 240,
    windMs,
    gustMs: null,
  })),
};

const latest = (
  kind: 'until' | 'allDay' | 'none' | 'tooFew',
  fromHour: number | null,
  untilHour: number | null,
) => ({
  kind,
  fromHour,
  untilHour,
});
const weeks: OutputOf<'planner.weeks'> = {
  isObserved: true,
  share: 0.9,
  loads: [
    { lessKg: 0, massKg: 560 },
    { lessKg: 20, massKg: 540 },
  ],
  weeks: [
    { month: 1, day: 1, firstHour: 8, latest: [latest('allDay', 8, 15), latest('allDay', 8, 15)] },
    { month: 7, day: 1, firstHour: 6, latest: [latest('none', null, null), latest('until', 6, 10)] },
    { month: 7, day: 8, firstHour: 6, latest: [latest('tooFew', null, null), latest('until', 7, 9)] },
  ],
};

const planned: OutputOf<'planner.answer'> = {
  asked: {
    field: { id: field.id, name: field.name, elevationM: field.elevationM, timeZone: field.timeZone },
    loading: null,
    runway: null,
    phase: 'take-off',
    lighterKg: 0,
    day: '2026-07-19',
    share: 0.9,
    takeOffMostM: null,
    runwayShareMost: null,
    climbLeastMs: null,
    climbGradientLeast: null,
    densityAltitudeMostM: 2100,
    crosswindMostMs: null,
    tailwindMostMs: null,
    gustMostMs: null,
    daylight: 'sunset',
    beforeSunriseMin: 30,
    afterSunsetMin: 30,
    flightMin: 60,
    reserveMin: 30,
    isFlightAssumed: true,
    hasTakeOff: false,
    hasClimb: false,
    hasClimbGradient: false,
    hasLanding: false,
    availableM: null,
  },
  sentences: [
    [
      { text: 'Between 06:00 and ', strong: false },
      { text: '10:20', strong: true },
    ],
  ],
  text: 'Between 06:00 and 10:20',
  notes: ['Without a runway there is no take-off distance in this answer.'],
  inShort: 'until 10:20',
  plan: null,
  sun: sunAt,
  daylight: { fromH: 6, toH: 20.5 },
  times: { fromH: 6, toH: 19 },
  age: 'last observation 31 December 2025',
};

interface Given {
  nature?: Nature;
  isEmpty?: boolean;
  name?: string;
}

/** The weather sheet over one field; the weeks wait until they are released or cancelled. */
async function sheetOf({ nature = 'observed', isEmpty = false, name = field.name }: Given = {}) {
  const bridge = partsBridge({
    'fields.list': () => [{ ...field, name }],
    'weather.imports': () => [],
    'weather.stations': () => [
      {
        id: 's',
        name,
        identifier: null,
        latitudeDeg: 39,
        longitudeDeg: -105,
        elevationM: 1372,
        observationCount: 9,
        firstEpochS: 1_420_070_400,
        lastEpochS: 1_767_225_600,
      },
    ],
    'weather.season': () => {
      const season = seasonOf(nature, isEmpty);
      return { ...season, station: { ...season.station, name }, field: { ...season.field, name } };
    },
    'weather.day': () => dayOf(nature, isEmpty),
    'weather.observations': () => observations,
    'weather.years': () => ({ figure: 'densityAltitude', years: [], yearsNeeded: 8, change: null }),
    'planner.answer': () => ({
      ...planned,
      asked: { ...planned.asked, field: { ...planned.asked.field, name } },
    }),
  });
  const answers = bridge.request.bind(bridge);
  let finish: ((isCancelled: boolean) => void) | null = null;
  let isReleased = false;
  let calls = 0;
  bridge.request = (requested, input, call) => {
    if (requested !== 'planner.weeks') return answers(requested, input, call);
    calls += 1;
    return new Promise((resolve) => {
      finish = (isCancelled) => {
        resolve(
          isCancelled
            ? {
                ok: false,
                problem: { code: 'cancelled', sentence: 'Working out the weeks was cancelled.', fields: [] },
              }
            : { ok: true, output: weeks, areas: [] },
        );
      };
      if (isReleased) finish(false);
      bridge.emit({
        type: 'progress',
        call,
        report: {
          doing: 'Working out each week of the year',
          doneCount: 24,
          totalCount: 72,
          unit: 'hours of the day',
        },
      });
    });
  };
  bridge.cancel = () => finish?.(true);
  const screen = await render(App, {
    client: makeClient(bridge),
    first: {
      status: { libraryPath: '/home/pilot/own.tarewing', isDemo: false, problem: null },
      settings: {},
      screen: 'weather',
    },
  });
  // The first sheet is read from the disk.
  await expect
    .poll(() => screen.container.querySelectorAll('svg.figure').length, { timeout: 30_000 })
    .toBeGreaterThan(1);
  return {
    screen,
    calls: () => calls,
    /** Also what is asked from now on. */
    release: () => {
      isReleased = true;
      finish?.(false);
    },
    /** All that is written in the picture of the day. */
    dayWords: () =>
      [...(dayPicture(screen.container)?.querySelectorAll('text') ?? [])].map(
        ({ textContent }) => textContent,
      ),
    dayLines: (kind: string) => dayPicture(screen.container)?.querySelectorAll(`path.${kind}`).length ?? 0,
  };
}

function dayPicture(container: Element): Element | undefined {
  return [...container.querySelectorAll('svg.figure')].at(-1);
}

const side = (screen: Awaited<ReturnType<typeof sheetOf>>['screen'], word: string) =>
  screen.getByRole('radio', { name: word, exact: true });

beforeEach(() => {
  showAppearance('light', 100);
});

test('the day of observations is drawn as a plan, nine days in ten', async () => {
  const { dayWords, dayLines } = await sheetOf();
  await soon(dayWords).toContain('nine days in ten below');
  expect(dayLines('path')).toBe(1);
  expect(dayLines('not-so')).toBe(0);
});

test('the day of a typical year is drawn as what is only believed, and speaks of no days in ten', async () => {
  const { screen, dayWords, dayLines } = await sheetOf({ nature: 'typical year' });
  await soon(() => dayWords().map((words) => words?.replace('\u00a0', ' '))).toContain(
    '90 % of a typical year below',
  );
  expect(dayLines('path')).toBe(0);
  expect(dayLines('not-so')).toBe(2);
  expect(dayWords().join(' ')).not.toMatch(/days in ten|half the days/);
  // Nor the line under the pictures, nor the list of lines.
  expect(screen.container.querySelector('.told')?.textContent).toMatch(/of a typical year/);
  expect(screen.container.querySelector('.told')?.textContent).not.toMatch(/nine days in ten/);
  const drawn = screen.getByLabelText('Drawn', { exact: true }).element();
  expect(drawn.textContent).not.toMatch(/days in ten/);
});

test('with too few days the day says so and draws no line', async () => {
  const { dayWords, dayLines } = await sheetOf({ isEmpty: true });
  await soon(dayWords).toContain('too few');
  expect(dayLines('path')).toBe(0);
});

test('the days behind an hour are listed with what is beyond the table, and how many are not', async () => {
  const { screen } = await sheetOf();
  await side(screen, 'days').click();
  await expect.element(screen.getByText('2000 days, the worst first')).toBeVisible();
  await expect.element(screen.getByRole('cell', { name: 'beyond table' })).toBeVisible();
  await expect.element(screen.getByText('The 2 worst are listed.')).toBeVisible();
});

test('the weeks show their progress, are cancelled and asked again by keyboard, and say each kind of week', async () => {
  const { screen, release, calls } = await sheetOf();
  await side(screen, 'weeks').click();
  await expect.element(screen.getByRole('progressbar', { name: 'Latest hours, week by week' })).toBeVisible();
  screen.getByRole('button', { name: 'Cancel, keep nothing' }).element().focus();
  await userEvent.keyboard('{Enter}');
  await expect.element(screen.getByText(/^The weeks were not worked out to the end\./)).toBeVisible();
  const before = calls();
  screen.getByRole('button', { name: 'Work them out' }).element().focus();
  await userEvent.keyboard('{Enter}');
  await soon(calls).toBe(before + 1);
  release();
  const row = (week: string) =>
    soon(() => screen.getByRole('row', { name: new RegExp(`^${week} `) }).element().textContent);
  await row('1 January').toMatch(/all day\s*all day/);
  await row('1 July').toMatch(/no hour\s*until 10:00/);
  await row('8 July').toMatch(/too few days\s*07:00 to 09:00/);
});

test.each(['light', 'dark'] as const)(
  'a long name and text twice as large push nothing out of the window, %s',
  async (theme) => {
    showAppearance(theme, 200);
    const { screen } = await sheetOf({ name: longName });
    await side(screen, 'hours').click();
    await soon(
      () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
    ).toBeLessThanOrEqual(1);
    const { violations } = await axe.run(screen.container, { runOnly: ['wcag2a', 'wcag2aa'] });
    expect(violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.html ?? ''}`)).toEqual([]);
  },
);
