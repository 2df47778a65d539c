import { describe, expect, test } from 'vitest';
import { placeInYear } from '../../../shared-calc/climate/departure/through-the-year.ts';
import { UNIT_PRESETS } from '../../../shared-calc/units/preferences.ts';
import {
  buysSentence,
  heaviestSentence,
  yearSentence,
} from '../../../shared-calc/wording/planner-backwards.ts';
import { plannerNotes, type PlannerNoteParts } from '../../../shared-calc/wording/planner-notes.ts';

const plain = (text: string) => text.replaceAll(/[\u2009\u2060]/g, '').replaceAll('\u00a0', ' ');
const units = UNIT_PRESETS.metric;

test('the heaviest load is rounded down, what is too much up', () => {
  const parts = { hour: 11, share: 0.9, massKg: 495.28, isWholeAeroplane: false, isLanding: false, units };
  expect(plain(heaviestSentence({ ...parts, heaviestKg: 478.19 }))).toBe(
    'At 11:00 at most 478.1 kg at take-off, nine days in ten: 17.1 kg less than planned.',
  );
  expect(plain(heaviestSentence({ ...parts, heaviestKg: 500 }))).toMatch(/4\.7 kg more than planned\.$/);
  expect(heaviestSentence({ ...parts, heaviestKg: null })).toBe(
    'At 11:00 no load meets the limits nine days in ten.',
  );
  expect(plain(heaviestSentence({ ...parts, heaviestKg: 600, isWholeAeroplane: true }))).toBe(
    'At 11:00 any load up to 600.0 kg at take-off, nine days in ten; the CG is another question.',
  );
});

test('what a change buys is told in minutes, or why it buys nothing', () => {
  const parts = {
    what: '20 kg left behind',
    share: 0.9,
    endsH: 10 + 1 / 3,
    changedEndsH: 10 + 5 / 6,
    byDaylight: false,
  };
  expect(plain(buysSentence(parts))).toBe('20 kg left behind buys 30 min, to 10:50.');
  expect(buysSentence({ ...parts, changedEndsH: 10 + 1 / 3 })).toBe(
    '20 kg left behind buys less than ten minutes.',
  );
  expect(buysSentence({ ...parts, changedEndsH: 10 + 1 / 3, byDaylight: true })).toMatch(
    /buys nothing: the daylight/,
  );
  expect(buysSentence({ ...parts, endsH: null })).toBe('20 kg left behind opens a window, to 10:50.');
  expect(buysSentence({ ...parts, changedEndsH: null })).toBe(
    '20 kg left behind still opens no window nine days in ten.',
  );
});

describe('through the year', () => {
  const parts = {
    hour: 11,
    share: 0.9,
    unknownCount: 0,
    byDaylight: false,
    isLanding: false,
    what: 'at this load',
  };
  const begins = 'A departure at 11:00 at this load works nine days in ten';
  test('a run over the new year is told by its gap', () => {
    const runs = [{ from: placeInYear(7, 25), to: placeInYear(5, 6) }];
    expect(yearSentence({ ...parts, runs })).toBe(`${begins} until 6 June and again from 25 August.`);
  });
  test('a run inside the year by its ends; never, always and unknown as such', () => {
    const runs = [{ from: placeInYear(2, 3), to: placeInYear(9, 5) }];
    expect(yearSentence({ ...parts, runs, byDaylight: true })).toBe(
      `${begins} from 3 March to 5 October, where the whole flight is inside daylight.`,
    );
    expect(yearSentence({ ...parts, runs: [] })).toBe(`${begins} on no date of the year.`);
    expect(yearSentence({ ...parts, runs: [{ from: 0, to: 365 }] })).toBe(`${begins} all year.`);
    expect(yearSentence({ ...parts, runs: [], unknownCount: 366 })).toBe(
      'At 11:00 no date of the year has days enough to tell.',
    );
    expect(yearSentence({ ...parts, runs, unknownCount: 12 })).toMatch(
      / 12 dates of the year have too few days to tell\.$/,
    );
  });
});

describe('notes', () => {
  const parts: PlannerNoteParts = {
    loading: {
      name: 'Two friends',
      aeroplane: 'Two-seater',
      massKg: 560,
      massHighKg: 565.03,
      landingHighKg: 540,
      verdict: 'inside',
    },
    lighterKg: 0,
    runway: { surface: 'asphalt', idents: ['06', '24'], slopeRatio: 0.012, slopes: [0.012, -0.012] },
    isSurfaceKnown: true,
    table: 'table',
    isLanding: false,
    isCompared: true,
    hasClimb: true,
    slopeCounted: 'note',
    safetyRatio: 1.33,
    readingSdRatio: 0.05,
    takeOffAsked: true,
    fuelKinds: ['avgas 100LL'],
    hottestC: 34.2,
    isFlightAssumed: false,
    units,
  };
  const notes = (given: Partial<PlannerNoteParts> = {}) => plannerNotes({ ...parts, ...given }).map(plain);
  test('say the upper figures that were worked with', () => {
    // 1.645 of 5 % is 8.2 %, rounded up.
    expect(notes()).toEqual([
      'Worked with the upper figures of the mass, 565.1 kg, and of reading the table, 9 % more, which hold 95 times in 100; with the safety factor of 1.33.',
      'The runway rises 1.2 % from 06 to 24: a take-off uphill is counted by the manual’s note; what the other way gives is not counted.',
    ]);
  });
  test('a table that nobody has compared with the manual is not to be relied on', () => {
    expect(notes({ isCompared: false })[0]).toBe(
      'Do not rely on this yet: the take-off table has not been compared with the manual. See Aircraft.',
    );
    expect(notes({ isCompared: false, takeOffAsked: false })).toEqual([]);
  });
  test('of a landing the mass is the one at landing', () => {
    expect(notes({ isLanding: true })[0]).toMatch(/of the mass, 540\.0 kg, and of reading/);
  });
  test('a loading outside its limits stands first', () => {
    const [first] = notes({
      loading: { ...parts.loading, verdict: 'outside' } as PlannerNoteParts['loading'],
    });
    expect(first).toBe('Two friends is outside its limits: do not depart loaded like this. See Loading.');
  });
  test('what is missing for a take-off distance is named with where to enter it', () => {
    expect(notes({ table: 'none', takeOffAsked: false })[0]).toMatch(
      /has no take-off table: the answer rests on density altitude and climb alone\. Enter the table in Aircraft\./,
    );
    expect(notes({ loading: null, takeOffAsked: false })[0]).toMatch(/^Without a loading/);
    expect(
      notes({
        isSurfaceKnown: false,
        runway: { surface: 'moss', idents: [], slopeRatio: null, slopes: null },
        takeOffAsked: false,
      })[0],
    ).toMatch(/^The surface 'moss' is not known/);
    expect(notes({ table: 'estimate' }).join(' ')).toMatch(/an estimate from one sea-level figure/);
  });
  test('a slope is said: not known, counted and how, or what it gives left uncounted', () => {
    const sloped = (
      slopeRatio: number | null,
      slopes: number[] | null,
      given: Partial<PlannerNoteParts> = {},
    ) => notes({ runway: { surface: 'grass', idents: ['06', '24'], slopeRatio, slopes }, ...given })[1];
    expect(sloped(null, null)).toMatch(/^The slope of the runway is not known and not counted/);
    expect(sloped(0, [0, 0])).toBe('The runway is entered as level.');
    expect(sloped(-0.02, [0.02], { slopeCounted: 'published' })).toMatch(
      /rises 2\.0 % from 24 to 06: the manual’s notes say nothing of slope, so a take-off uphill is lengthened by a published factor/,
    );
    expect(sloped(0.02, [-0.02])).toBe(
      'The runway rises 2.0 % from 06 to 24: what it gives a take-off downhill is not counted.',
    );
    expect(sloped(0.02, [-0.02], { isLanding: true })).toMatch(
      /a landing downhill is counted by the manual’s note/,
    );
  });
  test('an aeroplane without a climb table says so, and a landing whose daylight was taken', () => {
    expect(notes({ hasClimb: false })[0]).toMatch(/has no climb table: no climb can be asked/);
    expect(notes({ isLanding: true }).at(-1)).toMatch(
      /^The take-off before it is taken to have the same daylight/,
    );
  });
  test('motor fuel at a hot field brings the question about vapour, avgas and cool air do not', () => {
    expect(notes({ fuelKinds: ['unleaded 95'] }).at(-1)).toMatch(
      /^Motor fuel \(unleaded 95\) at 35 °C: watch for vapour/,
    );
    expect(notes({ fuelKinds: ['unleaded 95'], hottestC: 20 }).join(' ')).not.toMatch(/vapour/);
    expect(notes().join(' ')).not.toMatch(/vapour/);
  });
});
