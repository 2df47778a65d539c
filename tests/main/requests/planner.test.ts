import { expect, test } from 'vitest';
import type { OutputOf } from '../../../main/requests/table.ts';
import { memoryLibrary, type MemoryLibrary } from '../memory-library.ts';
import { fileWith } from '../weather-import/samples.ts';

type Planned = OutputOf<'planner.answer'>;

const place = {
  name: 'Ostrey Flat',
  identifier: null,
  latitudeDeg: 39.2,
  longitudeDeg: -105.6,
  elevationM: 1372,
};
const runways = [
  {
    lengthM: 640,
    widthM: 20,
    surface: 'gravel',
    ends: [
      { ident: '15', trueHeadingDeg: 161, displacedThresholdM: 0 },
      { ident: '33', trueHeadingDeg: 341, displacedThresholdM: 0 },
    ],
  },
  {
    lengthM: 900,
    widthM: 20,
    surface: 'asphalt',
    ends: [
      { ident: '06', trueHeadingDeg: 70, displacedThresholdM: 0 },
      { ident: '24', trueHeadingDeg: 250, displacedThresholdM: 0 },
    ],
  },
];

/** Hourly reports at :53 of eight years; the afternoon of every tenth day is hot. Each fifth morning there is no wind given. */
function hourlyCsv(): string {
  const rows = ['station,valid,tmpf,dwpf,drct,sknt,alti,mslp,gust'];
  for (let hour = 0; hour < 8 * 8766; hour++) {
    const time = new Date(Date.UTC(2012, 0, 1, 0, 53) + hour * 3_600_000);
    const clockH = (time.getUTCHours() + 1 - 7 + 24) % 24;
    const day = Math.floor(hour / 24);
    const temperatureF = 60 + 22 * Math.sin(((clockH - 9) * Math.PI) / 12) + ((day * 7) % 10);
    const speed = day % 5 === 0 && clockH < 12 ? 'M' : '8';
    rows.push(
      `OST,${time.toISOString().slice(0, 16).replace('T', ' ')},${temperatureF.toFixed(1)},40.0,240,${speed},${(29.9 + 0.3 * Math.sin(hour / 61)).toFixed(2)},M,M`,
    );
  }
  return rows.join('\n');
}

async function libraryWith(
  csv = hourlyCsv(),
): Promise<[MemoryLibrary, (question?: object) => Promise<Planned>]> {
  const library = memoryLibrary();
  const imported = (await library.ask('weather.import', {
    path: fileWith(csv),
    station: { place },
  })) as OutputOf<'weather.import'>;
  const { id } = (await library.ask('fields.put', {
    field: { ...place, weatherStationId: imported.stationId, runways },
  })) as { id: string };
  return [
    library,
    (question = {}) => library.ask('planner.answer', { fieldId: id, question }) as Promise<Planned>,
  ];
}

test('a question with nothing chosen takes the usual values and is answered', async () => {
  const [, ask] = await libraryWith();
  const { asked, plan, text } = await ask({ day: '2026-07-19' });
  expect(asked).toMatchObject({
    share: 0.9,
    daylight: 'sunset',
    loading: null,
    runway: { words: '06 or 24, into the wind', lengthM: 900 },
    takeOffMostM: null,
    isFlightAssumed: true,
    flightMin: 60,
    reserveMin: 30,
  });
  // 1 372 m are 4 501 ft: 2 500 ft above it, down to a hundred.
  expect((asked.densityAltitudeMostM ?? NaN) / 0.3048).toBeCloseTo(7000, 6);
  expect(plan?.halfDays).toBe(7);
  expect(plan?.hours[12]).toMatchObject({ dayCount: 120 });
  expect(text).toMatch(/^Between \d\d:\d\d and \d\d:\d\d local, nine days in ten/);
});

test('a wind limit leaves out the days without wind, and the window of days widens until the hours have theirs', async () => {
  const [, ask] = await libraryWith();
  const { plan } = await ask({ day: '2026-07-19', crosswindMostMs: 5 });
  // Eight years of fifteen days less a fifth are 96 of the 100 needed; 17 days of which a fifth miss are 108 or more.
  expect(plan?.halfDays).toBe(8);
  expect(plan?.hours[9]?.dayCount).toBeLessThan(17 * 8);
  expect(plan?.hours[14]?.dayCount).toBe(17 * 8);
});

test('no limit at all is refused with what to do', async () => {
  const [, ask] = await libraryWith();
  await expect(ask({ densityAltitudeMostM: null })).rejects.toThrow(/No limit is asked\. Ask at least one/);
});

test('a runway that is gone counts as not chosen; none at all still answers for density altitude', async () => {
  const [, ask] = await libraryWith();
  expect((await ask({ day: '2026-07-19', runwayId: 'gone' })).asked.runway?.lengthM).toBe(900);
  const { asked, plan } = await ask({ day: '2026-07-19', runwayId: null });
  expect(asked.runway).toBeNull();
  expect(plan?.windows.length).toBeGreaterThan(0);
});

test('the rule to take along is in whole steps of the units asked', async () => {
  const [library] = await libraryWith();
  const fields = (await library.ask('fields.list', {})) as OutputOf<'fields.list'>;
  const { plan } = (await library.ask('planner.answer', {
    fieldId: fields[0]?.id,
    question: { day: '2026-07-19' },
    units: { temperature: 'degF', altimeterSetting: 'inHg' },
  })) as Planned;
  const rule = plan?.takeAlong;
  if (rule == null) throw new Error('no rule');
  const degF = rule.temperatureMostC * 1.8 + 32;
  const inHg = rule.settingLeastHpa / 33.86389;
  expect(Math.abs(degF - Math.round(degF))).toBeLessThan(1e-6);
  expect(Math.abs(inHg * 100 - Math.round(inHg * 100))).toBeLessThan(1e-3);
});

test('an hour leads to its observations, each with what it fails, and they are those that were counted', async () => {
  const [library, ask] = await libraryWith();
  const { asked, plan } = await ask({ day: '2026-07-19', crosswindMostMs: 3 });
  const { days } = (await library.ask('planner.hour', {
    fieldId: asked.field.id,
    question: { day: '2026-07-19', crosswindMostMs: 3 },
    hour: 9,
  })) as OutputOf<'planner.hour'>;
  const at = plan?.hours[9];
  const counted = days.filter(({ isObserved }) => isObserved);
  expect(counted).toHaveLength(at?.dayCount ?? NaN);
  expect(counted.filter(({ fails }) => fails.length === 0)).toHaveLength(at?.metCount ?? NaN);
  expect(days.some(({ isObserved, windMs }) => !isObserved && windMs === null)).toBe(true);
  // The report at 08:53 stands for nine o'clock: 15:53 or 14:53 by UTC.
  expect(new Date((days[0]?.epochS ?? 0) * 1000).toISOString()).toMatch(/T1[45]:53:00/);
});

test('asked backwards without an aeroplane: only the limit that binds is offered looser, and the year is told', async () => {
  const [library, ask] = await libraryWith();
  const { asked, plan } = await ask({ day: '2026-07-19' });
  const backwards = (await library.ask('planner.backwards', {
    fieldId: asked.field.id,
    question: { day: '2026-07-19' },
    hour: 11,
  })) as OutputOf<'planner.backwards'>;
  expect(backwards.answers.map(({ what }) => what)).toEqual(['looser', 'year']);
  const looser = backwards.answers[0];
  if (looser?.take == null) throw new Error('nothing to take');
  // Taken over, the answer ends where the sentence said.
  const { plan: after } = await ask({ day: '2026-07-19', ...looser.take });
  const endOf = (each: typeof plan) =>
    each?.windows.find(({ takeOff }) => takeOff !== null)?.takeOff?.toH ?? NaN;
  expect(endOf(after)).toBeGreaterThan(endOf(plan));
  const clock = /to (\d\d):(\d\d)\.$/.exec(looser.sentence);
  expect(endOf(after)).toBeCloseTo(Number(clock?.[1]) + Number(clock?.[2]) / 60, 6);
});

test('side by side each line is the answer of its own question, and one that cannot be answered says why', async () => {
  const [library, ask] = await libraryWith();
  const { asked } = await ask({ day: '2026-07-19' });
  const lines = (await library.ask('planner.compare', {
    fieldId: asked.field.id,
    question: { day: '2026-07-19' },
    hour: 9,
    with: [
      { name: 'July', question: {} },
      { name: 'January', question: { day: '2026-01-19' } },
      { name: 'elsewhere', fieldId: 'no-such-field', question: {} },
    ],
  })) as OutputOf<'planner.compare'>;
  expect(lines[0]?.answer?.inShort).toBe((await ask({ day: '2026-07-19' })).inShort);
  expect(lines[1]?.answer?.inShort).toBe((await ask({ day: '2026-01-19' })).inShort);
  expect(lines[2]).toMatchObject({ answer: null, refusal: "There is no field 'no-such-field'." });
});

test('the weeks report as they go, and a cancel stops them with nothing', async () => {
  const [library, ask] = await libraryWith();
  const { asked } = await ask({ day: '2026-07-19' });
  const input = { fieldId: asked.field.id, question: { day: '2026-07-19' } };
  const whole = (await library.ask('planner.weeks', input)) as OutputOf<'planner.weeks'>;
  expect(whole.weeks).toHaveLength(52);
  const controller = new AbortController();
  // Cancelled after it began: it is heard between two hours of the day.
  setTimeout(() => {
    controller.abort();
  }, 0);
  const stopped = await library.request('planner.weeks', input, controller.signal);
  expect(stopped).toMatchObject({ ok: false, problem: { code: 'cancelled' } });
});
