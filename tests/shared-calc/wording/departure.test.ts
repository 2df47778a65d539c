import { expect, test } from 'vitest';
import { performanceBook } from '../../../shared-calc/performance/departure-book.ts';
import { departureFigures, distanceFigures } from '../../../shared-calc/performance/departure-figures.ts';
import type { DepartureQuestion } from '../../../shared-calc/performance/departure-figures.ts';
import { overObstacle } from '../../../shared-calc/performance/obstacle.ts';
import { emptyPerformance, type PerformanceRecord } from '../../../shared-calc/performance/records.ts';
import { UNIT_PRESETS } from '../../../shared-calc/units/preferences.ts';
import {
  climbSentence,
  distanceSentences,
  obstacleSentence,
} from '../../../shared-calc/wording/departure.ts';
import { textOf } from '../../../shared-calc/wording/parts.ts';
import { examplePerformance } from '../../main/example-performance.ts';

const GLIDE = { bestGlideMs: 28, bestGlideRatio: 9 };
const record = examplePerformance('two-seater');
const QUESTION: DepartureQuestion = {
  massKg: 600,
  pressureAltitudeM: 609.6,
  temperatureC: 20,
  dewPointC: -20,
  headwindMs: 0,
  runway: { availableM: 1180, surface: 'paved', slopeRatio: 0 },
};
const UNITS = UNIT_PRESETS.metric;
const spaced = (text: string) => text.replaceAll(/[\u00a0\u2060\u2009]+/g, ' ');

function say(parts: Partial<DepartureQuestion>, of: PerformanceRecord = record): string {
  const figures = distanceFigures(performanceBook(of, GLIDE), 'takeOff', { ...QUESTION, ...parts });
  return spaced(textOf(distanceSentences(figures, 'runway 24', UNITS)));
}

test('a distance is rounded up and what is left of the runway down, the factor named', () => {
  // By hand in departure-figures.test.ts: 471 m in dry air, 626.4 with the factor; a trace of vapour adds a metre. To 5 m.
  expect(say({})).toBe(
    'Take-off over 50 ft needs 630 m of the 1 180 m of runway 24, factor 1.33 included: 550 m are left.',
  );
});

test('too short a runway is said with by how much, rounded up, and what not to do', () => {
  expect(say({ runway: { ...QUESTION.runway, availableM: 600 } })).toBe(
    'Take-off over 50 ft needs 630 m, 30 m more than runway 24 has (600 m), factor 1.33 included. Do not take off like this.',
  );
});

test('an edge, an estimate, an unknown dew point and a refusal each say what the figure is worth', () => {
  expect(say({ temperatureC: -5, dewPointC: -45, pressureAltitudeM: 0 })).toMatch(
    /No better than this: the table begins at 0 °C, −5\.0 °C was asked\.$/,
  );
  expect(say({ dewPointC: null })).toMatch(/The dew point is not known: the air is counted as dry/);
  const seaLevel = {
    groundRollM: 160,
    overObstacleM: 330,
    massKg: 600,
    safety: { factorRatio: 1, source: 'none' },
    readingSdRatio: 0.1,
    source: { from: 'manual', comparedOn: null },
  } as const;
  expect(say({}, { ...emptyPerformance('x'), seaLevel })).toMatch(
    /no safety factor chosen: \d+ m are left\. This is an estimate from one sea-level figure, not a figure of the manual\.$/,
  );
  expect(say({ temperatureC: 34, dewPointC: 24, pressureAltitudeM: 0 })).toMatch(
    /^No figure for runway 24: hotter than the table goes\. No figure: 37\.\d °C is hotter than the table goes, 30 °C at 600 kg, 0 ft\..* The air has 34 °C; with its vapour/,
  );
  expect(say({}, emptyPerformance('x'))).toBe('No figure for runway 24: the manual’s table is not entered.');
});

test('the climb is rounded down, and no climb left is said first', () => {
  const climb = (parts: Partial<DepartureQuestion>) => {
    const found = departureFigures(performanceBook(record, GLIDE), { ...QUESTION, ...parts }).climb;
    return spaced(textOf([climbSentence(found, UNITS)]));
  };
  // 3.1 m/s at 4 000 ft and 15 °C (departure-figures.test.ts) is 610.2 ft/min, less a trace for vapour.
  // 875.1 hPa and 15 °C: density ratio 0.864, 31 m/s indicated are 33.4 true, 33.2 along the ground: 9.33 %.
  expect(climb({ pressureAltitudeM: 1219.2, temperatureC: 15 })).toMatch(
    /^Climb: 600 ft\/min, 9\.3 % over the ground without counting a headwind\.$/,
  );
  expect(climb({ massKg: 700 })).toBe('No figure for the climb: heavier than the table goes.');
  const book = performanceBook(record, GLIDE);
  const none = { ...departureFigures(book, QUESTION).climb, climbRateMs: -0.1 };
  expect(textOf([climbSentence(none, UNITS)])).toMatch(/^No climb is left/);
});

test('an obstacle ahead is cleared or not by so much, heights rounded down; nearer than 50 ft there is no figure', () => {
  const { takeOff, climb } = departureFigures(performanceBook(record, GLIDE), {
    ...QUESTION,
    dewPointC: -45,
  });
  // 50 ft at 626.4 m with the factor, then the climb: at 2 000 ft and 20 °C 3.4 m/s over some 32 m/s, 10.5 %: 52.5 m more
  // in 500 m, 222 ft in all, 107 ft above 65 ft and 50 ft. In 100 m: 25.7 m; 24.76 m more in 99.6 m would be 24.9 %.
  const say = (fromStartM: number, heightM: number, clearanceM: number) => {
    const obstacle = { fromStartM, heightM, clearanceM };
    const found = overObstacle(takeOff, climb, obstacle);
    return spaced(textOf([obstacleSentence(found, obstacle, 'the trees', UNITS)]));
  };
  expect(say(1126, 20, 15.24)).toBe(
    'At the trees the aeroplane is 220 ft above the runway: 100 ft above them and the 50 ft wished.',
  );
  expect(say(726, 40, 0)).toMatch(
    /^At the trees the aeroplane is 80 ft above the runway: 50 ft too low for them\. A climb of 24\.\d % would be needed\.$/,
  );
  expect(say(500, 10, 0)).toMatch(
    /^No figure for the trees: 50 ft are reached 630 m from the start, behind them/,
  );
});
