import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { field, station } from '../../../fixtures/demo/field.ts';
import { buildDemo } from '../../../fixtures/demo/build.ts';
import type { WorkContext } from '../../../main/requests/define.ts';
import { runRequest } from '../../../main/requests/run.ts';
import { findRequest, type OutputOf } from '../../../main/requests/table.ts';
import { pressureAltitudeFromSettingM } from '../../../shared-calc/atmosphere/station-pressure.ts';
import { performanceBook } from '../../../shared-calc/performance/departure-book.ts';
import { departureFigures, distanceFigures } from '../../../shared-calc/performance/departure-figures.ts';

// The demo library has all that a question with an aeroplane needs: tables, loadings, runways, eleven years.
let db: Database.Database;
beforeAll(async () => {
  const folder = mkdtempSync(join(tmpdir(), 'planner-'));
  await buildDemo(join(folder, 'demo.tarewing'), folder);
  db = new Database(join(folder, 'demo.tarewing'), { readonly: true });
  // Other programs may be using the machine.
}, 60_000);
afterAll(() => db.close());

type Question = Record<string, unknown>;
const strip = { day: '2026-07-19', runwayId: 'strip-15-33', end: 'into the wind' };

async function ask<
  Name extends
    'planner.answer' | 'planner.hour' | 'planner.backwards' | 'planner.obstacle' | 'performance.get',
>(name: Name, input: Question): Promise<OutputOf<Name>> {
  const context = { db, libraryPath: '', nowEpochS: () => Date.UTC(2026, 10, 20) / 1000 } as WorkContext;
  const answer = await runRequest(name, findRequest(name), context, input);
  if (!answer.ok) throw new Error(answer.problem.sentence);
  return answer.output as OutputOf<Name>;
}
const planned = (question: Question) =>
  ask('planner.answer', { fieldId: field.id, aircraftId: 'demo-two-seater', question });
const hourOf = (question: Question, hour: number) =>
  ask('planner.hour', { fieldId: field.id, aircraftId: 'demo-two-seater', question, hour });
const backwards = (question: Question, hour: number) =>
  ask('planner.backwards', { fieldId: field.id, aircraftId: 'demo-two-seater', question, hour });

describe('a take-off with an aeroplane, its loading and its table', () => {
  test('the usual question is the whole of the longest runway, the pilot’s own wind limits and the current loading', async () => {
    const { asked } = await planned({ day: '2026-07-19' });
    expect(asked).toMatchObject({
      loading: { id: 'evening-round' },
      runway: { words: '06 or 24, into the wind' },
      takeOffMostM: 1180,
      densityAltitudeMostM: null,
      flightMin: 90,
      reserveMin: 45,
      isFlightAssumed: false,
    });
    expect(asked.crosswindMostMs).not.toBeNull();
    expect(asked.loading?.massHighKg).toBeGreaterThan(asked.loading?.massKg ?? NaN);
  });

  test('each day of an hour is judged as one departure asked by itself would be, all limits together', async () => {
    const question = { ...strip, takeOffMostM: 600 };
    const { plan, asked } = await planned(question);
    const { days } = await hourOf(question, 13);
    const record = await ask('performance.get', { aircraftId: 'demo-two-seater' });
    const book = performanceBook(record, { bestGlideMs: null, bestGlideRatio: null });
    const headings = (field.runways[1]?.ends ?? []).map(({ trueHeadingDeg }) => trueHeadingDeg);
    const spread = 1 + 1.6448536 * (record.takeOff?.readingSdRatio ?? NaN);
    let met = 0;
    let counted = 0;
    for (const each of days) {
      const { temperatureC, dewPointC, settingHpa, windFromDeg, windMs, gustMs, isObserved } = each;
      if (windMs === null || temperatureC === null || dewPointC === null || settingHpa === null) {
        expect(isObserved).toBe(false);
        continue;
      }
      counted++;
      const strongMs = Math.max(windMs, gustMs ?? 0);
      // By hand: the end whose wind stands more ahead, sine and cosine of the angle, the gust across and behind.
      const angles = headings.map((deg) => (((windFromDeg ?? 0) - deg) * Math.PI) / 180);
      const best = Math.cos(angles[0] ?? 0) >= Math.cos(angles[1] ?? 0) ? angles[0] : angles[1];
      const isVariable = windFromDeg === null && windMs > 0;
      const ahead = isVariable ? -strongMs : windMs === 0 ? 0 : windMs * Math.cos(best ?? 0);
      const across = isVariable ? strongMs : windMs === 0 ? 0 : strongMs * Math.abs(Math.sin(best ?? 0));
      const { requiredM } = distanceFigures(book, 'takeOff', {
        massKg: asked.loading?.massHighKg ?? NaN,
        pressureAltitudeM: pressureAltitudeFromSettingM(settingHpa, field.elevationM),
        temperatureC,
        dewPointC,
        headwindMs: ahead,
        runway: { surface: 'gravel', slopeRatio: 0, availableM: 640 },
      });
      const fails = [
        ...(requiredM * spread > 600 ? ['takeOff'] : []),
        ...(across > (asked.crosswindMostMs ?? NaN) ? ['crosswind'] : []),
        ...((isVariable ? strongMs : 0) > (asked.tailwindMostMs ?? NaN) ? ['tailwind'] : []),
      ];
      expect([each.day, ...each.fails]).toEqual([each.day, ...fails]);
      if (fails.length === 0) met++;
    }
    expect(plan?.hours[13]).toMatchObject({ dayCount: counted, metCount: met });
    expect(met).toBeGreaterThan(10);
    expect(met).toBeLessThan(counted);
  });

  test('the heaviest load put back in is enough on nine days in ten, and half a kilogram more is not', async () => {
    const question = { ...strip, takeOffMostM: 560, crosswindMostMs: null, tailwindMostMs: null };
    const { heaviestKg, answers } = await backwards(question, 8);
    const { asked } = await planned(question);
    const take = answers.find(({ what }) => what === 'heaviest')?.take;
    if (heaviestKg === null || take?.lighterKg === undefined) throw new Error('nothing to take');
    expect(take.lighterKg).toBeGreaterThanOrEqual((asked.loading?.massKg ?? NaN) - heaviestKg - 1e-9);
    const shareAt = async (lighterKg: number) =>
      (await planned({ ...question, lighterKg })).plan?.hours[8]?.share ?? NaN;
    expect(await shareAt(take.lighterKg)).toBeGreaterThanOrEqual(0.9);
    expect(await shareAt(take.lighterKg - 0.5)).toBeLessThan(0.9);
  });

  test('a lighter aeroplane never has fewer days inside, at any hour', async () => {
    const heavy = (await planned({ ...strip, takeOffMostM: 580 })).plan;
    const light = (await planned({ ...strip, takeOffMostM: 580, lighterKg: 25 })).plan;
    heavy?.hours.forEach(({ metCount, dayCount }, hour) => {
      expect(light?.hours[hour]?.dayCount).toBe(dayCount);
      expect(light?.hours[hour]?.metCount).toBeGreaterThanOrEqual(metCount);
    });
  });

  test('a load heavier than the table counts as a limit not met on every day, and is never dropped', async () => {
    const { plan, notes } = await planned({
      ...strip,
      loadingId: 'both-tall-friends',
      crosswindMostMs: null,
      tailwindMostMs: null,
    });
    expect(plan?.hours.every(({ metCount }) => metCount === 0)).toBe(true);
    expect(Math.min(...(plan?.hours ?? []).map(({ dayCount }) => dayCount))).toBeGreaterThan(150);
    expect(notes[0]).toMatch(/is outside its limits: do not depart loaded like this/);
  });

  test('an end that is chosen has its own displaced threshold for the landing', async () => {
    const landing = await planned({ day: '2026-07-19', phase: 'landing', end: 'second' });
    expect(landing.asked).toMatchObject({ phase: 'landing', takeOffMostM: 1090, flightMin: 90 });
    expect((await planned({ day: '2026-07-19', phase: 'landing', end: 'first' })).asked.takeOffMostM).toBe(
      1180,
    );
    // Into the wind either end may be used: the shorter one counts.
    expect((await planned({ day: '2026-07-19', phase: 'landing' })).asked.takeOffMostM).toBe(1090);
    expect(landing.plan?.limitNames[0]).toBe('landing');
    expect(landing.text).toMatch(/^Land between \d\d:\d\d and \d\d:\d\d local, nine days in ten/);
    // The reserve alone stands between the landing and sunset, and the flight between sunrise and the landing.
    expect((landing.daylight?.toH ?? NaN) - (landing.times?.toH ?? NaN)).toBeCloseTo(0.75, 9);
    expect((landing.times?.fromH ?? NaN) - (landing.daylight?.fromH ?? NaN)).toBeCloseTo(1.5, 9);
  });

  test('asked backwards a landing has its own heaviest load, and 20 kg less buys minutes of landing', async () => {
    const open = { day: '2026-07-19', phase: 'landing', crosswindMostMs: null, tailwindMostMs: null };
    const nineInTenM = (await planned(open)).plan?.hours[13]?.takeOffM ?? NaN;
    // The landing mass lies below the lightest printed one: a little more runway lets a heavier aeroplane land.
    const question = { ...open, takeOffMostM: nineInTenM + 6 };
    const { heaviestKg, answers } = await backwards(question, 13);
    const { asked } = await planned(question);
    expect(answers.map(({ what }) => what)).toEqual(['heaviest', 'lighter', 'year']);
    expect(answers[0]?.sentence).toMatch(
      /^At 13:00 at most .* at landing, nine days in ten: .* more than planned\.$/,
    );
    expect(answers[2]?.sentence).toMatch(/^A landing at 13:00 at this load works/);
    expect(asked.loading?.landingKg).toBeLessThan(asked.loading?.massKg ?? NaN);
    expect(heaviestKg).toBeGreaterThan(asked.loading?.landingKg ?? NaN);
    // Less runway than the lightest printed landing needs: no load is light enough, and it is said.
    const short = await backwards({ ...open, takeOffMostM: nineInTenM - 6 }, 13);
    expect(short.answers[0]?.sentence).toBe('At 13:00 no load meets the limits nine days in ten.');
  });

  test('a share of the runway is so many metres of it, and stands before metres', async () => {
    const share = await planned({ ...strip, runwayShareMost: 0.9, takeOffMostM: 300 });
    expect(share.asked).toMatchObject({ runwayShareMost: 0.9, takeOffMostM: 576 });
    const metres = await planned({ ...strip, takeOffMostM: 576 });
    expect(share.plan?.hours.map(({ metCount }) => metCount)).toEqual(
      metres.plan?.hours.map(({ metCount }) => metCount),
    );
  });

  test('a climb gradient can be asked, and a stricter one never has more days', async () => {
    const loose = await planned({ ...strip, climbGradientLeast: 0.03 });
    const strict = await planned({ ...strip, climbGradientLeast: 0.07 });
    expect(loose.asked).toMatchObject({ hasClimbGradient: true, climbGradientLeast: 0.03 });
    expect(loose.plan?.limitNames).toContain('climbGradient');
    strict.plan?.hours.forEach(({ metCount }, hour) => {
      expect(metCount).toBeLessThanOrEqual(loose.plan?.hours[hour]?.metCount ?? NaN);
    });
    expect(loose.plan?.hours[8]?.climbGradientRatio).toBeGreaterThan(0);
    expect(loose.age).toMatch(
      /^weighed .*; gauge calibrated .*; take-off and climb tables entered .*; last observation /,
    );
  });

  test('more left behind than the aeroplane carries is refused, not held at a least mass', async () => {
    await expect(planned({ ...strip, lighterKg: 480 })).rejects.toThrow(
      /480 kg cannot be left behind: that would leave less than the empty aeroplane/,
    );
  });

  test('an obstacle ahead is cleared on as many days as the hour’s own days say, each by hand', async () => {
    const question = { ...strip, crosswindMostMs: null, tailwindMostMs: null };
    const obstacle = { beyondEndM: 500, heightM: 20, clearanceM: 15.24 };
    const { dayCount, clearCount, sentence, caution } = await ask('planner.obstacle', {
      fieldId: field.id,
      aircraftId: 'demo-two-seater',
      question,
      hour: 9,
      obstacle,
    });
    // By hand from each day's own factored distance with its spread (planner.hour) and a climb in standard steps: 50 ft at
    // the end of that distance, from there the least gradient that clears 20 m and 50 ft at 1 140 m from the start.
    const { days } = await hourOf(question, 9);
    const counted = days.filter(({ isObserved }) => isObserved);
    expect(dayCount).toBe(counted.length);
    const record = await ask('performance.get', { aircraftId: 'demo-two-seater' });
    const { asked } = await planned(question);
    const book = performanceBook(record, { bestGlideMs: null, bestGlideRatio: null });
    const bySpread = 1 - 1.6448536 * (record.climb?.readingSdRatio ?? NaN);
    const needed = (takeOffM: number) => (20 + 15.24 - 15.24) / (640 + 500 - takeOffM);
    const cleared = counted.filter(
      ({ takeOffM, temperatureC, dewPointC, settingHpa, windMs, windFromDeg, gustMs }) => {
        if (takeOffM === null || takeOffM >= 1140) return false;
        const isVariable = windFromDeg === null && (windMs ?? 0) > 0;
        const { climb } = departureFigures(book, {
          massKg: asked.loading?.massHighKg ?? NaN,
          pressureAltitudeM: pressureAltitudeFromSettingM(settingHpa ?? NaN, field.elevationM),
          temperatureC: temperatureC ?? NaN,
          dewPointC,
          // Into the wind a steady wind is never behind.
          headwindMs: isVariable ? -Math.max(windMs ?? 0, gustMs ?? 0) : 0,
          runway: { surface: 'gravel', slopeRatio: 0, availableM: 640 },
        });
        return climb.gradientRatio * bySpread >= needed(takeOffM) - 1e-9;
      },
    );
    expect(clearCount).toBe(cleared.length);
    expect(clearCount).toBeGreaterThan(0);
    expect(sentence).toMatch(/^At 09:00 the obstacle and the .* wished above it are /);
    expect(caution).toMatch(/^An estimate: .* The approved flight manual decides\.$/);
  });

  test('sunrise and sunset of the demo’s field are those of the sunrise equation', async () => {
    // The sunrise equation with Spencer's series (1971) for declination and equation of time, 37.2 N 110.3 W, 19 July:
    // 20.9 degrees and -6.2 min give 06:15 and 20:40 by a clock six hours behind UTC. Two minutes: the series' own error.
    const { sun } = await planned({ day: '2026-07-19' });
    expect(Math.abs((sun.sunsetH ?? NaN) - (20 + 40 / 60))).toBeLessThan(2 / 60);
    expect(Math.abs((sun.sunriseH ?? NaN) - (6 + 15 / 60))).toBeLessThan(2 / 60);
    expect(station.latitudeDeg).toBeCloseTo(field.latitudeDeg, 1);
  });
});
