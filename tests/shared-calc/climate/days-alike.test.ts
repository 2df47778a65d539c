import { describe, expect, test } from 'vitest';
import {
  ALIKE_DAYS,
  hindcast,
  restOfDay,
  type CourseOfDay,
} from '../../../shared-calc/climate/days-alike.ts';

/** A seeded sequence of normal deviates: Park and Miller's minimal standard generator, Box and Muller's transform. */
function deviates(seed: number): () => number {
  let state = seed;
  const uniform = () => (state = (state * 48_271) % 2_147_483_647) / 2_147_483_647;
  return () => Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform());
}

/**
 * Weather of a known process: a day's figure at its first hour is the air's own (30 m a degree), and from there it climbs
 * by a step of the hour, more on days with a low setting, with a random walk on top.
 */
function process(
  { years, days }: { years: number; days: number },
  noiseM: number,
  seed = 7,
  drift: (settingHpa: number) => number = (settingHpa) => (1015 - settingHpa) * 4,
): CourseOfDay[] {
  const normal = deviates(seed);
  return Array.from({ length: years * days }, (_, i) => {
    const air = {
      temperatureC: 18 + 4 * normal(),
      dewPointC: 8 + 3 * normal(),
      settingHpa: 1015 + 5 * normal(),
    };
    const figure = new Float64Array(8);
    figure[0] = 1000 + 30 * air.temperatureC;
    for (let hour = 1; hour < 8; hour++)
      figure[hour] = (figure[hour - 1] ?? 0) + 60 + drift(air.settingHpa) + noiseM * normal();
    return { year: 2000 + Math.floor(i / days), daysOff: (i % days) - Math.floor(days / 2), air, figure };
  });
}

describe('the rest of the day, on weather whose process is known', () => {
  const record = process({ years: 12, days: 43 }, 25);
  const today = { temperatureC: 22, dewPointC: 9, settingHpa: 1015 };

  test('goes up by the process’ own steps from today’s figure', () => {
    const rest = restOfDay(record, today, 1660);
    expect(rest?.candidateCount).toBe(516);
    expect(rest?.alikeCount).toBe(129);
    for (const end of ['low', 'median', 'high'] as const) expect(rest?.hours[0]?.[end]).toBeCloseTo(1660, 6);
    // Seven steps of 60 m, the drift nothing at today's setting. The median of 129 days has a sampling error of
    // 1.25 x 66 / sqrt(129) = 7 m, and the fit as much again: three times both.
    expect(Math.abs((rest?.hours[7]?.median ?? NaN) - 2080)).toBeLessThan(30);
    // The walk has a standard deviation of 25 sqrt(7) = 66 m: eight in ten lie within 1.2816 of it, 170 m from end to end.
    const widthM = (rest?.hours[7]?.high ?? NaN) - (rest?.hours[7]?.low ?? NaN);
    expect(widthM).toBeGreaterThan(130);
    expect(widthM).toBeLessThan(210);
  });

  test('says how alike the days are', () => {
    const rest = restOfDay(record, today, 1660);
    // A quarter of a cloud in three dimensions: nine in ten within about one and a half of its spreads.
    expect(rest?.within.temperatureC).toBeLessThan(1.6 * 4);
    expect(rest?.within.settingHpa).toBeLessThan(1.6 * 5);
    expect(rest?.within.temperatureC).toBeGreaterThan(0);
  });

  test('holds eight in ten of days of years left out, and is narrower than the season', () => {
    const found = hindcast(record);
    // 15 days of 12 years. Their binomial error is 3 %, and hours of one day go together.
    expect(found?.testCount).toBe(180);
    expect(found?.heldShare).toBeGreaterThan(0.75);
    expect(found?.heldShare).toBeLessThan(0.85);
    expect(found?.widthRatio).toBeLessThan(0.6);
    expect(found?.isTrusted).toBe(true);
  });

  test('is not trusted where a morning tells nothing of its day', () => {
    // Each hour is drawn anew: starting from today's figure is then worse than the season itself.
    const normal = deviates(11);
    const unrelated = process({ years: 12, days: 43 }, 25).map((day) => ({
      ...day,
      figure: Float64Array.from(day.figure, () => 1500 + 100 * normal()),
    }));
    const found = hindcast(unrelated);
    expect(found?.widthRatio).toBeGreaterThan(1);
    expect(found?.isTrusted).toBe(false);
  });
});

test('too few days give no answer and no check', () => {
  const few = process({ years: 4, days: 49 }, 25);
  expect(restOfDay(few, { temperatureC: 20, dewPointC: 8, settingHpa: 1015 }, 1600)).toBeNull();
  // 200 days of five years: an answer, but 160 without any one year.
  const five = process({ years: 5, days: 40 }, 25);
  expect(restOfDay(five, { temperatureC: 20, dewPointC: 8, settingHpa: 1015 }, 1600)?.alikeCount).toBe(
    ALIKE_DAYS,
  );
  expect(hindcast(five)).toBeNull();
});

test('an hour that most of the days lack is left out', () => {
  const record = process({ years: 12, days: 43 }, 25).map((day, i) => {
    const figure = day.figure.slice();
    if (i % 3 !== 0) figure[5] = NaN;
    return { ...day, figure };
  });
  const rest = restOfDay(record, { temperatureC: 18, dewPointC: 8, settingHpa: 1015 }, 1540);
  expect(rest?.hours[5]).toBeNull();
  expect(rest?.hours[6]).not.toBeNull();
});
