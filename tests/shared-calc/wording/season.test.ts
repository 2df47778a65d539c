import { describe, expect, test } from 'vitest';
import { textOf } from '../../../shared-calc/wording/parts.ts';
import {
  hourText,
  seasonAnswer,
  seasonCellWords,
  type SeasonAnswerParts,
} from '../../../shared-calc/wording/season.ts';
import { shareOfDaysWords, shareWords } from '../../../shared-calc/wording/share-words.ts';

/** Feet and metres meet at 0.3048 exactly; 10 ft are the step of an altitude, and what counts against a limit rounds up. */
const ft = 0.3048;
const units = {
  altitude: 'ft',
  temperature: 'degC',
  speed: 'kt',
  distance: 'm',
  climbRate: 'ft/min',
} as const;
const everywhere = Array.from({ length: 288 }, (): number | null => 3000 * ft);
const withFigures = (figures: Record<number, number | null>) =>
  everywhere.map((valueM, cell) => (cell in figures ? (figures[cell] ?? null) : valueM));
const parts = (change: Partial<SeasonAnswerParts> = {}): SeasonAnswerParts => ({
  figure: 'densityAltitude',
  view: { kind: 'share', share: 0.5, daysNeeded: 20 },
  value: withFigures({
    [6 * 24 + 16]: 8301 * ft,
    [6 * 24 + 6]: 2501 * ft,
    [6 * 24 + 3]: 2000 * ft,
  }),
  dayCount: everywhere.map(() => 300),
  yearCount: everywhere.map(() => 11),
  isObserved: true,
  daylight: Array.from({ length: 12 }, () => ({ sunriseH: 5.8, sunsetH: 20.6 })),
  units,
  ...change,
});
const words = (change?: Partial<SeasonAnswerParts>) =>
  textOf(seasonAnswer(parts(change)))
    .replaceAll(/[\u2009\u2060]/g, '')
    .replaceAll('\u00a0', ' ');

describe('the answer above a season picture', () => {
  test('says the highest hour, rounded up, and the lowest hour of daylight in that month, not of the night', () => {
    expect(words()).toBe(
      'Highest at 16:00 in July: 8310 ft or less on half the days. The same month’s lowest hour of daylight is 06:00, with 2510 ft or less.',
    );
  });

  test('says so where few years stand behind it', () => {
    expect(words({ yearCount: everywhere.map(() => 1) })).toMatch(
      /From one year only: other years may differ much\.$/,
    );
    expect(words({ yearCount: everywhere.map(() => 2) })).toMatch(/From 2 years only/);
    expect(words({ yearCount: everywhere.map(() => 3) })).not.toMatch(/only/);
  });

  test('counts the days where there are too few, and says what helps', () => {
    const none = { value: everywhere.map(() => null), dayCount: everywhere.map(() => 31) };
    const view = (share: number, daysNeeded: number) => ({ kind: 'share', share, daysNeeded }) as const;
    expect(words({ ...none, view: view(0.9, 100) })).toBe(
      'Too few days: the fullest hour has 31 of the 100 that nine days in ten needs. Import more years, or ask for half the days.',
    );
    expect(words({ ...none, view: view(0.5, 40) })).toMatch(/Import more of this station\.$/);
  });

  test('says nothing of days for a record that is not of observations', () => {
    expect(words({ isObserved: false })).toMatch(/never answers on how many days\.$/);
    expect(words({ isObserved: false })).not.toMatch(/ft/);
  });

  test('leaves the hour of daylight out where the sun does not set', () => {
    const polar = Array.from({ length: 12 }, () => ({ sunriseH: null, sunsetH: null }));
    expect(words({ daylight: polar })).not.toMatch(/daylight/);
  });

  test('says the highest of how many days, for the worst', () => {
    expect(words({ view: { kind: 'worst' } })).toMatch(
      /^Highest at 16:00 in July: 8310 ft, the highest of 300 days\./,
    );
  });

  test('counts the days beyond a limit, or says that there is none', () => {
    const view = { kind: 'beyond', limit: 6801 * ft } as const;
    const value = everywhere.map((_, cell) => (cell === 6 * 24 + 16 ? 212 : 3));
    expect(words({ view, value })).toBe('Most often above 6810 ft at 16:00 in July: 212 of 300 days.');
    expect(words({ view, value: everywhere.map(() => 0) })).toMatch(/^No day of the record is above 6810 ft/);
  });

  test('turns round for a headwind, where less is worse', () => {
    // 10 kt are 5.144 m/s; rounded down, because it is to be counted on.
    const value = everywhere.map((_, cell) => (cell === 6 * 24 + 16 ? -5.2 : cell === 6 * 24 + 8 ? 5.2 : 1));
    expect(words({ figure: 'headwind', value })).toBe(
      'Lowest at 16:00 in July: \u221211 kt or more on half the days. The same month’s highest hour of daylight is 08:00, with 10 kt or more.',
    );
  });

  test('has one strong part, the figure', () => {
    const strong = seasonAnswer(parts())
      .flat()
      .filter((part) => part.strong);
    expect(strong).toHaveLength(1);
  });
});

test('a place in the picture says its figures and days, or that they are too few', () => {
  const quantiles = [
    { share: 0.5, daysNeeded: 20, value: withFigures({ 0: null }) },
    { share: 0.9, daysNeeded: 100, value: withFigures({ 0: null, 1: null }) },
  ];
  const at = (hour: number, days: number) =>
    seasonCellWords(
      { month: 0, hour },
      {
        figure: 'densityAltitude',
        quantiles,
        dayCount: everywhere.map(() => days),
        yearCount: everywhere.map(() => 11),
        nature: 'observed',
        units,
      },
    )
      .replaceAll(/[\u2009\u2060]/g, '')
      .replaceAll('\u00a0', ' ');
  expect(at(0, 1)).toBe('January, 00:00: too few, 1 day of 11 years');
  expect(at(1, 50)).toBe('January, 01:00: 3000 ft or less on half the days; 50 days of 11 years');
  expect(at(2, 341)).toBe(
    'January, 02:00: 3000 ft or less on half the days, 3000 ft or less on nine days in ten; 341 days of 11 years',
  );
});

test('shares and hours have their words', () => {
  expect([0.5, 0.75, 0.9, 0.95].map(shareWords)).toEqual([
    'half the days',
    'three days in four',
    'nine days in ten',
    '95\u00a0% of days',
  ]);
  expect(hourText(6)).toBe('06:00');
});

test('what was not observed is a share of what it is, never so many days in ten', () => {
  const said = (['observed', 'typical year', 'averages', 'model', 'mixed'] as const).map((nature) =>
    shareOfDaysWords(0.9, nature).replaceAll('\u00a0', ' '),
  );
  expect(said).toEqual([
    'nine days in ten',
    '90 % of a typical year',
    '90 % of averages',
    '90 % of a model',
    '90 % of a record not all observed',
  ]);
});
