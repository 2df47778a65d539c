import { expect, test } from 'vitest';
import { degreesKind } from '../../../../renderer/screens/weather/degreesKind.ts';
import { headingsFor, headingText, otherEnd } from '../../../../renderer/screens/weather/runwayEnds.ts';

const latitude = degreesKind(['N', 'S'], 90);
const longitude = degreesKind(['E', 'W'], 180);

test('a place is read as decimal degrees or as charts print it, with a letter or a sign', () => {
  for (const [text, value] of [
    ['39.2083', 39.2083],
    ['39.2083 N', 39.2083],
    ['-39.5', -39.5],
    ['\u221239.5', -39.5],
    ['39.5S', -39.5],
    // 12 minutes are 0.2 degrees, 30 seconds 1/120.
    ['39 12 30 N', 39 + 0.2 + 1 / 120],
    ['39°12′N', 39.2],
    ['0 30 S', -0.5],
  ] as const) {
    const reading = latitude.read(text);
    expect('refused' in reading ? NaN : reading.value, text).toBeCloseTo(value, 10);
  }
  const west = longitude.read('105°36.5W');
  expect('refused' in west ? NaN : west.value).toBeCloseTo(-(105 + 36.5 / 60), 10);
});

test('what is no place is refused with what is allowed', () => {
  for (const text of ['91', '39 75', '39 12 30 E', 'north', '39.5 12', '-39 S', '--4', '90.0001 N'])
    expect('refused' in latitude.read(text), text).toBe(true);
  expect(latitude.read('')).toEqual({ value: null });
  expect(latitude.read('91')).toEqual({ refused: '91 is outside 90 S to 90 N.' });
});

test('what is shown reads back as it was', () => {
  for (const value of [39.2, -105.61234, 0, 179.99999]) {
    const reading = longitude.read(longitude.show(value));
    expect('refused' in reading ? NaN : reading.value).toBeCloseTo(value, 9);
  }
});

test('one end of a runway gives the other', () => {
  expect(['09', '27', '36', '18', '01L', '20C', '33R'].map(otherEnd)).toEqual([
    '27',
    '09',
    '18',
    '36',
    '19R',
    '02C',
    '15L',
  ]);
  expect(otherEnd('NE')).toBeNull();
  expect(otherEnd('37')).toBeNull();
  expect(headingsFor(68)).toEqual([68, 248]);
  expect(headingsFor(360)).toEqual([0, 180]);
  expect([0, 68, 359.6, 180].map(headingText)).toEqual(['360°', '068°', '360°', '180°']);
});
