import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  divisionText,
  readingText,
  resolutionRatio,
  scaleMarks,
} from '../../../shared-calc/fuel/gauge-scale.ts';
import type { GaugeScale } from '../../../shared-calc/fuel/gauge-scale.ts';
import { parseReading } from '../../../shared-calc/fuel/parse-reading.ts';
import { read } from './fill-tests.ts';

const EIGHTHS: GaugeScale = { kind: 'fractions', denominator: 8 };
const LITRES: GaugeScale = { kind: 'volume', unit: 'L', atEmpty: 0, atFull: 60, step: 5 };
const GALLONS: GaugeScale = { kind: 'volume', unit: 'US gal', atEmpty: 0, atFull: 16, step: 1 };
const BARS: GaugeScale = { kind: 'bars', count: 8 };
const PERCENT: GaugeScale = { kind: 'percent', step: 5 };
const OHMS: GaugeScale = { kind: 'numbers', atEmpty: 240, atFull: 33, step: 10 };
const ALL = [EIGHTHS, LITRES, GALLONS, BARS, PERCENT, OHMS];

const taken = (text: string, scale: GaugeScale) => {
  const parsed = parseReading(text, scale);
  return parsed.ok ? parsed.reading : parsed.refusal;
};

describe('a typed reading', () => {
  test.each<[string, GaugeScale, number | 'E' | 'F']>([
    ['5/8', EIGHTHS, 0.625],
    [' 5 / 8 ', EIGHTHS, 0.625],
    ['½', EIGHTHS, 0.5],
    ['0,6', EIGHTHS, 0.6],
    ['62.5 %', EIGHTHS, 0.625],
    ['E', EIGHTHS, 'E'],
    ['0', EIGHTHS, 'E'],
    ['8/8', EIGHTHS, 'F'],
    ['full', LITRES, 'F'],
    ['30', LITRES, 0.5],
    ['30 l', LITRES, 0.5],
    ['12 litres', LITRES, 0.2],
    ['4 gal', GALLONS, 0.25],
    ['4 US gal', GALLONS, 0.25],
    ['6', BARS, 0.75],
    ['6 bars', BARS, 0.75],
    ['6/8', BARS, 0.75],
    ['8', BARS, 'F'],
    ['35%', PERCENT, 0.35],
    ['0.5 %', PERCENT, 0.005],
    ['136.5', OHMS, 0.5],
    ['33', OHMS, 'F'],
    ['240', OHMS, 'E'],
  ])('%j is taken', (text, scale, position) => {
    const parsed = taken(text, scale);
    if (typeof position === 'string') expect(parsed).toEqual(read(position));
    else expect(parsed).toEqual({ at: 'scale', positionRatio: expect.closeTo(position, 12) as number });
  });

  test('what could mean two readings is refused with both named', () => {
    expect(taken('1', EIGHTHS)).toEqual({ kind: 'ambiguous', mayBe: ['1/8', 'F'] });
    expect(taken('5', EIGHTHS)).toEqual({ kind: 'ambiguous', mayBe: ['5/8'] });
    const wide: GaugeScale = { kind: 'numbers', atEmpty: 0, atFull: 3000, step: 100 };
    expect(taken('1,500', wide)).toEqual({ kind: 'ambiguous', mayBe: ['1500', '1.500'] });
    expect(taken('0.5', PERCENT)).toEqual({ kind: 'ambiguous', mayBe: ['0.5 %', '50 %'] });
  });

  test('what lies outside the scale is refused with its ends', () => {
    expect(taken('9/8', EIGHTHS)).toEqual({ kind: 'outsideScale', emptyText: '0', fullText: '1' });
    expect(taken('61', LITRES)).toEqual({ kind: 'outsideScale', emptyText: '0', fullText: '60' });
    expect(taken('-1', LITRES)).toMatchObject({ kind: 'outsideScale' });
    expect(taken('20', OHMS)).toMatchObject({ kind: 'outsideScale' });
    expect(taken('9', BARS)).toMatchObject({ kind: 'outsideScale' });
  });

  test('another unit than the gauge prints is refused, never converted in silence', () => {
    expect(taken('4 L', GALLONS)).toEqual({ kind: 'otherUnit', unitOnGauge: 'US gal' });
    expect(taken('4 imp gal', GALLONS)).toEqual({ kind: 'otherUnit', unitOnGauge: 'US gal' });
  });

  test.each(['', 'half', '1/0', '3 furlongs', '1.2.3', '--4'])(
    '%j is no reading, and examples are given',
    (text) => {
      for (const scale of ALL) expect(taken(text, scale)).toMatchObject({ kind: 'notAReading' });
    },
  );
});

describe('a printed reading', () => {
  test('is written as the gauge prints it', () => {
    expect(readingText(read(0.625), EIGHTHS)).toBe('5/8');
    expect(readingText(read(0.5), EIGHTHS)).toBe('1/2');
    expect(readingText(read(0.5625), EIGHTHS)).toBe('9/16');
    expect(readingText(read(0.6), EIGHTHS)).toBe('0.6');
    expect(readingText(read(0.5), LITRES)).toBe('30\u00a0L');
    expect(readingText(read(0.125), BARS)).toBe('1\u00a0bar');
    expect(readingText(read('F'), BARS)).toBe('all 8 bars');
    expect(readingText(read('E'), OHMS)).toBe('E');
  });

  test('each mark of each scale is read back as itself', () => {
    for (const scale of ALL) {
      for (const { reading, text } of scaleMarks(scale)) {
        const back = text.startsWith('all') ? taken('full', scale) : taken(text, scale);
        if (reading.at !== 'scale') expect(back).toEqual(reading);
        // Printed to three decimals of what the gauge shows.
        else
          expect(back).toEqual({
            at: 'scale',
            positionRatio: expect.closeTo(reading.positionRatio, 4) as number,
          });
      }
    }
  });

  test('any position on a scale of numbers is read back within what is printed', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.01, max: 0.99, noNaN: true }), (positionRatio) => {
        const back = taken(readingText(read(positionRatio), OHMS), OHMS);
        expect(back).toEqual({ at: 'scale', positionRatio: expect.closeTo(positionRatio, 4) as number });
      }),
    );
  });
});

test('the step read is a share of the scale, whichever way the numbers run', () => {
  expect(ALL.map(resolutionRatio)).toEqual([1 / 8, 5 / 60, 1 / 16, 1 / 8, 1 / 20, 10 / 207]);
  expect(ALL.map(divisionText)).toEqual(['eighth', '5\u00a0L', '1\u00a0US gal', 'bar', '5\u00a0%', '10']);
});
