import { Temporal } from 'temporal-polyfill/implementation';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { zoneOffsets } from '../../../main/requests/zone-offsets.ts';
import { hourReports } from '../../../shared-calc/climate/hour-reports.ts';

const utcMinute = (text: string) => Date.parse(`${text}Z`) / 60_000;
const localHour = (text: string) => Date.parse(`${text}:00Z`) / 3_600_000;

function chosen(times: string[], timeZone: string, usable?: number[]): Record<string, number> {
  const minutes = Int32Array.from(times, utcMinute);
  const found = hourReports(
    minutes,
    Uint8Array.from(usable ?? times.map(() => 1)),
    zoneOffsets(timeZone, 2020, 2020),
  );
  return Object.fromEntries(
    Array.from(found.localHour, (hour, i) => [
      new Date(hour * 3_600_000).toISOString().slice(0, 13),
      found.report[i] ?? -1,
    ]),
  );
}

test('a report at 23:53 stands for midnight of the next day', () => {
  expect(chosen(['2020-01-01T23:53'], 'UTC')).toEqual({ '2020-01-02T00': 0 });
});

test('of two equally near the earlier counts, of one minute the first, and never an unusable one', () => {
  expect(chosen(['2020-01-01T11:40', '2020-01-01T12:20'], 'UTC')).toEqual({ '2020-01-01T12': 0 });
  expect(chosen(['2020-01-01T12:00', '2020-01-01T12:00'], 'UTC')).toEqual({ '2020-01-01T12': 0 });
  expect(chosen(['2020-01-01T12:00', '2020-01-01T12:00'], 'UTC', [0, 1])).toEqual({ '2020-01-01T12': 1 });
});

test('a report half way stands for both hours, one minute further for one', () => {
  expect(chosen(['2020-01-01T12:30'], 'UTC')).toEqual({ '2020-01-01T12': 0, '2020-01-01T13': 0 });
  expect(chosen(['2020-01-01T12:31'], 'UTC')).toEqual({ '2020-01-01T13': 0 });
});

test('many reports in one hour weigh as one', () => {
  const storm = Array.from({ length: 20 }, (_, i) => `2020-06-01T12:${String(10 + i).padStart(2, '0')}`);
  expect(chosen(storm, 'UTC')).toEqual({ '2020-06-01T12': 0 });
});

test('without a report, or without a usable one, no hour has any', () => {
  expect(chosen([], 'UTC')).toEqual({});
  expect(chosen(['2020-06-01T12:00'], 'UTC', [0])).toEqual({});
});

describe('when the clock changes in Denver (2020: 8 March forward, 1 November back)', () => {
  test('the hour that the clock leaves out has no report', () => {
    // 08:00 UTC is 01:00 MST, 09:00 UTC is 03:00 MDT.
    expect(chosen(['2020-03-08T08:00', '2020-03-08T09:00'], 'America/Denver')).toEqual({
      '2020-03-08T01': 0,
      '2020-03-08T03': 1,
    });
  });

  test('the hour that the clock repeats counts once, in its first run', () => {
    // 07:00 UTC is 01:00 MDT, 08:00 UTC is 01:00 MST again, 09:00 UTC is 02:00 MST.
    expect(chosen(['2020-11-01T07:00', '2020-11-01T08:00', '2020-11-01T09:00'], 'America/Denver')).toEqual({
      '2020-11-01T01': 0,
      '2020-11-01T02': 2,
    });
  });
});

test('agrees with a plain search through a calendar library, in zones of all kinds', () => {
  // Whole hours, 45 minutes, a change by half an hour, a change that skips a whole day (Apia, 30 December 2011).
  const cases = [
    ['America/New_York', '2020-03-07T00:00'],
    ['America/New_York', '2020-10-31T00:00'],
    ['Asia/Kathmandu', '2020-05-01T00:00'],
    ['Australia/Lord_Howe', '2020-04-03T00:00'],
    ['Australia/Lord_Howe', '2020-10-02T00:00'],
    ['Pacific/Apia', '2011-12-29T00:00'],
  ] as const;
  fc.assert(
    fc.property(
      fc.constantFrom(...cases),
      fc.array(fc.tuple(fc.integer({ min: 0, max: 70 }), fc.boolean()), { minLength: 1, maxLength: 120 }),
      ([timeZone, start], steps) => {
        let minute = utcMinute(start);
        const minutes: number[] = [];
        const usable: boolean[] = [];
        for (const [step, isUsable] of steps) {
          minute += step;
          minutes.push(minute);
          usable.push(isUsable);
        }
        const year = Number(start.slice(0, 4));
        const found = hourReports(
          Int32Array.from(minutes),
          Uint8Array.from(usable, Number),
          zoneOffsets(timeZone, year, year + 1),
        );
        const got = Array.from(found.localHour, (hour, i) => [hour, found.report[i]]);
        expect(got).toEqual(plainSearch(minutes, usable, timeZone));
      },
    ),
    { numRuns: 200 },
  );
});

/** The rule as the words say it: each hour of each local date, its first instant, the nearest usable report. */
function plainSearch(minutes: number[], usable: boolean[], timeZone: string): (number | undefined)[][] {
  const zoned = (minute: number) =>
    Temporal.Instant.fromEpochMilliseconds(minute * 60_000).toZonedDateTimeISO(timeZone);
  const first = zoned((minutes[0] ?? 0) - 60).toPlainDate();
  const last = zoned((minutes.at(-1) ?? 0) + 60).toPlainDate();
  const rows: (number | undefined)[][] = [];
  for (let date = first; Temporal.PlainDate.compare(date, last) <= 0; date = date.add({ days: 1 }))
    for (let hour = 0; hour < 24; hour++) {
      const clock = date.toPlainDateTime({ hour });
      const instant = clock.toZonedDateTime(timeZone, { disambiguation: 'earlier' });
      if (!instant.toPlainDateTime().equals(clock)) continue;
      const target = instant.epochMilliseconds / 60_000;
      const near = minutes
        .map((minute, i) => ({ i, away: Math.abs(minute - target) }))
        .filter(({ i, away }) => usable[i] === true && away <= 30)
        .sort((a, b) => a.away - b.away || a.i - b.i)[0];
      const words = `${date.toString()}T${String(hour).padStart(2, '0')}`;
      if (near !== undefined) rows.push([localHour(words), near.i]);
    }
  return rows;
}
