import { describe, expect, test } from 'vitest';
import type { GaugeScale } from '../../../shared-calc/fuel/gauge-scale.ts';
import { fuelAtReading } from '../../../shared-calc/fuel/readout.ts';
import type { ReadingPrecision } from '../../../shared-calc/fuel/readout.ts';
import {
  fuelAnswer,
  fuelCaution,
  fuelCautionShort,
  fuelCovers,
  nextPourSentence,
  readingRefusalSentence,
  residualSentence,
  rowFlagSentence,
  runStartSentence,
  tooFewReadingsSentence,
} from '../../../shared-calc/wording/fuel.ts';
import type { FuelAnswerParts } from '../../../shared-calc/wording/fuel.ts';
import { textOf } from '../../../shared-calc/wording/parts.ts';
import { BANDED } from '../fuel/banded-example.ts';
import { curveOf, filling, LINEAR, read, WITH_DEAD_ZONE } from '../fuel/fill-tests.ts';

const UNITS = { volume: 'L', fuelFlow: 'L/h' } as const;
const EIGHTHS: GaugeScale = { kind: 'fractions', denominator: 8 };
const eighths = curveOf([WITH_DEAD_ZONE], 0.125);

const answerText = (parts: FuelAnswerParts) => textOf([fuelAnswer(parts)]);

/** No-break spaces are the formatter's own matter. */
const plain = (text: string) => text.replaceAll('\u00a0', ' ');

function answer(
  position: number | 'E' | 'F',
  precision: ReadingPrecision,
  fuelFlowLPerH: number | null = null,
) {
  const reading = read(position);
  const readout = fuelAtReading(eighths, reading, precision);
  return plain(
    answerText({
      readout,
      reading,
      scale: EIGHTHS,
      tankWords: '',
      fuelFlowLPerH,
      reserveS: 1800,
      units: UNITS,
    }),
  );
}

// The figures are worked by hand from the rows in fill-tests.ts.
describe('the fuel answer', () => {
  test('says how finely was read, what to plan on and what the endurance covers', () => {
    // 15.0 L at 1/4 with the needle on it; at 12 L/h 75 min, less the reserve of 30.
    expect(answer(0.25, 'needleOnMark', 12)).toBe(
      'Needle on 1/4: plan on 15.0 L usable; 45 min in level cruise at 12.0 L/h after 30 min reserve, ' +
        'taxi and climb not included.',
    );
  });

  test('names the tank when the aeroplane has more than one', () => {
    const reading = read(0.25);
    const readout = fuelAtReading(eighths, reading, 'needleOnMark');
    expect(
      plain(
        answerText({
          readout,
          reading,
          scale: EIGHTHS,
          tankWords: 'rear tank alone',
          fuelFlowLPerH: null,
          reserveS: 1800,
          units: UNITS,
        }),
      ),
    ).toBe('Needle on 1/4: plan on 15.0 L usable, rear tank alone.');
  });

  test('on a reading to the nearest division plans on its lower edge, rounded down', () => {
    const reading = read(0.55);
    const curve = curveOf([LINEAR], 0.1);
    const readout = fuelAtReading(curve, reading, 'nearestDivision');
    const scale: GaugeScale = { kind: 'percent', step: 10 };
    const parts = {
      readout,
      reading,
      scale,
      tankWords: '',
      fuelFlowLPerH: null,
      reserveS: 1800,
      units: UNITS,
    };
    // 0.50 of 60 L; 30 L are 7.925 US gal, shown as 7.9.
    expect(plain(answerText(parts))).toBe('Reading 55 % to the nearest 10 %: plan on 30.0 L usable.');
    expect(plain(answerText({ ...parts, units: { volume: 'US gal', fuelFlow: 'US gal/h' } }))).toBe(
      'Reading 55 % to the nearest 10 %: plan on 7.9 US gal usable.',
    );
  });

  test('at the stops promises nothing that was not seen', () => {
    expect(answer('E', 'nearestDivision', 12)).toBe('At E: plan on 0; less than 10.0 L may be there.');
    expect(answer('F', 'needleOnMark')).toBe(
      'At F: plan on 50.0 L usable, as at the highest reading that moved; up to 60.0 L may be there.',
    );
  });

  test('where the needle stands still says from where to where', () => {
    expect(answer(0.5, 'needleOnMark')).toBe(
      'Needle on 1/2: plan on 25.0 L usable; the needle stands still here from 25.0 L to 40.0 L.',
    );
  });

  test('fuel within the reserve is "reserve only"', () => {
    // 10.0 L at 1/8; half an hour at 22 L/h is 11 L.
    expect(answer(0.125, 'needleOnMark', 22)).toBe(
      'Needle on 1/8: plan on 10.0 L usable; reserve only at 22.0 L/h.',
    );
  });

  test('below the readings that moved plans on nothing', () => {
    expect(answer(0.0625, 'needleOnMark', 12)).toBe(
      'Needle on 1/16: plan on 0; less than 10.0 L may be there.',
    );
  });
});

describe('other sentences', () => {
  test('an outlier is kept and to be repeated, never to be thrown away', () => {
    expect(plain(residualSentence(-1.8, UNITS))).toBe('1.8 L less than the curve; kept. Repeat it.');
    expect(plain(residualSentence(2.04, UNITS))).toBe('2.0 L more than the curve; kept. Repeat it.');
  });

  test('a total above the capacity says by how much and the likely cause', () => {
    const flag = {
      runIndex: 0,
      rowIndex: 3,
      kind: 'aboveCapacity',
      usableL: 80,
      excessL: 20.02,
      likely: 'pourTypedTwiceOrStartTooHigh',
    } as const;
    expect(plain(rowFlagSentence(flag, UNITS))).toBe(
      '80.0 L in all is 20.1 L more than the tank holds. Likely: a pour was typed twice, or the tank was emptier at the start than stated.',
    );
  });

  test.each([
    [
      { runIndex: 0, rowIndex: 0, kind: 'fellWhileFilling', byRatio: 0.125 } as const,
      /fell by 13 % of the scale though fuel went in/,
    ],
    [
      { runIndex: 0, rowIndex: 0, kind: 'roseWhileDraining', byRatio: 0.25 } as const,
      /rose by 25 % of the scale though fuel came out/,
    ],
    [
      { runIndex: 0, rowIndex: 0, kind: 'belowEmptySump', usableL: -3 } as const,
      /−3\.0 L usable is left by this sum/,
    ],
    [
      {
        runIndex: 0,
        rowIndex: 0,
        kind: 'fullFarBelowCapacity',
        usableL: 16,
        likely: 'gallonsTypedAsLitres',
      } as const,
      /full stop with 16\.0 L.*gallons were typed as litres/,
    ],
    [{ runIndex: 0, rowIndex: 0, kind: 'outsideScale', positionRatio: 1.2 } as const, /outside the scale/],
  ])('%j is worded', (flag, sentence) => {
    expect(plain(rowFlagSentence(flag, UNITS))).toMatch(sentence);
  });

  test('a refused reading keeps what was typed and names what was expected', () => {
    expect(readingRefusalSentence('half', { kind: 'notAReading', examples: ['E', '1/2', 'F'] })).toBe(
      '"half" is not a reading of this gauge; kept as typed. Expected E, 1/2 or F.',
    );
    expect(readingRefusalSentence('1', { kind: 'ambiguous', mayBe: ['1/8', 'F'] })).toBe(
      '"1" could be 1/8 or F: type it so.',
    );
    expect(readingRefusalSentence('61', { kind: 'outsideScale', emptyText: '0', fullText: '60' })).toBe(
      '"61" lies outside the scale, which runs from 0 to 60; kept as typed.',
    );
    expect(readingRefusalSentence('4 L', { kind: 'otherUnit', unitOnGauge: 'US gal' })).toMatch(
      /prints US gal/,
    );
  });

  test('says what volumes count from, and how many readings are still missing', () => {
    expect(plain(runStartSentence({ ...filling(), start: { from: 'sump' } }, 2, UNITS))).toBe(
      'Started drained at the sump: the first 2.0 L are unusable and not counted.',
    );
    expect(plain(runStartSentence({ ...filling(), start: { from: 'known', usableL: 12 } }, 2, UNITS))).toBe(
      'Started with 12.0 L usable, as stated.',
    );
    expect(runStartSentence(filling(), 2, UNITS)).toMatch(/nothing usable was left/);
    expect(tooFewReadingsSentence(2, 3)).toMatch(/2 of at least 3 different positions/);
  });
});

test('the advice for one more pour names the nearest mark and what it raises on average', () => {
  const pour = { positionRatio: 0.39, gainL: 0.27, isWorthwhile: true };
  const scale = { kind: 'fractions', denominator: 8 } as const;
  expect(nextPourSentence(pour, scale, { volume: 'L' })).toBe(
    'One more pour near 3/8 would raise the planning figures by about 0.2\u00a0L on average; elsewhere it gains less.',
  );
  expect(nextPourSentence({ ...pour, gainL: 0.04 }, scale, { volume: 'L' })).toContain(
    'by too little to show',
  );
  expect(nextPourSentence({ ...pour, isWorthwhile: false }, scale, { volume: 'L' })).toContain(
    'No point in more',
  );
});

test('the caution says what the figure covers: containers only with a band, few readings where they are few', () => {
  expect(fuelCaution(BANDED)).toMatch(/^About nineteen times in twenty/);
  expect(fuelCautionShort(BANDED)).toMatch(/^About nineteen times in twenty.*Check against a dipstick/);
  expect(fuelCautionShort({ ...BANDED, fewRows: true })).toMatch(/^Few readings/);
  expect(fuelCautionShort(curveOf([LINEAR], 0.1))).toContain('not the errors of the containers');
  expect(fuelCovers(BANDED)).toContain('containers');
  expect(fuelCovers(curveOf([LINEAR], 0.1))).toBe('step of the scale only');
  expect(fuelCaution({ ...BANDED, fewRows: true })).toMatch(/^Few readings: the band rests mostly on/);
  expect(fuelCaution(curveOf([LINEAR], 0.1))).toContain('not the errors of the containers');
  for (const curve of [BANDED, curveOf([LINEAR], 0.1)])
    expect(fuelCaution(curve)).toContain('the flight manual');
});
