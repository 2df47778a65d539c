import fc from 'fast-check';
import { expect, test } from 'vitest';
import { toSi } from '../../../shared-calc/units/convert.ts';
import { columnDuration, shownDuration } from '../../../shared-calc/units/duration-text.ts';
import { figureText } from '../../../shared-calc/units/figure-text.ts';
import { QUANTITIES, digitsOf, type Quantity, type UnitOf } from '../../../shared-calc/units/quantities.ts';
import { DIRECTION, roundSafely, type Question } from '../../../shared-calc/units/round-safely.ts';
import {
  fieldText,
  roundedFor,
  shown,
  shownFigure,
  shownRange,
  stepped,
} from '../../../shared-calc/units/shown.ts';

const NBSP = '\u00a0';
const THIN = '\u2060\u2009\u2060';

test('a margin of 36.97 mm reads 36 and one of 0.2 mm "less than 1 mm"', () => {
  expect(shown(0.03697, 'arm', 'mm', 'margin')).toBe(`36${NBSP}mm`);
  expect(shown(0.0002, 'arm', 'mm', 'margin')).toBe(`less than 1${NBSP}mm`);
  expect(shown(0, 'arm', 'mm', 'margin')).toBe(`0${NBSP}mm`);
});

test('a margin below nothing reads further outside, not less', () => {
  expect(shown(-0.0036, 'arm', 'mm', 'margin')).toBe(`\u22124${NBSP}mm`);
  expect(shown(-0.0002, 'arm', 'mm', 'margin')).toBe(`\u22121${NBSP}mm`);
});

test('what is outside, what is needed and what counts against a limit round up; what may be used rounds down', () => {
  expect(shown(0.00301, 'arm', 'mm', 'excess')).toBe(`4${NBSP}mm`);
  expect(shown(401, 'distance', 'm', 'needed')).toBe(`405${NBSP}m`);
  expect(shown(404.9, 'distance', 'm', 'available')).toBe(`400${NBSP}m`);
  expect(shown(20.09, 'volume', 'L', 'plan')).toBe(`20.0${NBSP}L`);
  expect(shown(569.91, 'mass', 'kg', 'load')).toBe(`570.0${NBSP}kg`);
  expect(shown(18.19, 'mass', 'kg', 'allowance')).toBe(`18.1${NBSP}kg`);
});

test('noise of conversion neither takes a whole step away nor adds one', () => {
  // 0.036 m times 1000 is 36 exactly here, but 0.035 and 0.057 are not; all must stay themselves, either way.
  for (let mm = 0; mm <= 3000; mm += 1) {
    expect(roundedFor(mm / 1000, 'arm', 'mm', 'margin')).toBe(mm);
    expect(roundedFor(mm / 1000, 'arm', 'mm', 'excess')).toBe(mm);
    const pounds = toSi(mm / 10, 'lb');
    expect(roundedFor(pounds, 'mass', 'lb', 'allowance')).toBe(mm / 10);
    expect(roundedFor(pounds, 'mass', 'lb', 'load')).toBe(mm / 10);
  }
  expect(roundSafely(35.99999999999, 1, 'margin')).toBe(36);
  expect(roundSafely(36.0000000001, 1, 'excess')).toBe(36);
  // Well above noise: a ten thousandth of a millimetre is a real difference.
  expect(roundSafely(35.9999, 1, 'margin')).toBe(35);
  expect(roundSafely(36.0001, 1, 'excess')).toBe(37);
});

test('a shown figure is never on the unsafe side by more than noise, and never a whole step away', () => {
  const questions = Object.keys(DIRECTION) as Question[];
  fc.assert(
    fc.property(
      fc.constantFrom(...(Object.keys(QUANTITIES) as Quantity[])),
      fc.nat(),
      fc.constantFrom(...questions),
      fc.double({ min: 0, max: 50_000, noNaN: true }),
      (quantity, pick, question, value) => {
        const units = QUANTITIES[quantity].units;
        const unit = units[pick % units.length]?.unit;
        if (unit === undefined) return;
        const own = unit as UnitOf[Quantity];
        const { resolution } = digitsOf(quantity, own);
        const rounded = roundedFor(toSi(value, unit), quantity, own, question);
        const noise = 3e-9 * Math.max(value, resolution);
        if (DIRECTION[question] === 'down') expect(rounded).toBeLessThanOrEqual(value + noise);
        if (DIRECTION[question] === 'up') expect(rounded).toBeGreaterThanOrEqual(value - noise);
        expect(Math.abs(rounded - value)).toBeLessThan(resolution + noise);
      },
    ),
    { seed: 6, numRuns: 5000 },
  );
});

test('figures are written as the look asks: true minus, thousands apart, no break before the unit', () => {
  expect(shown(1004.2, 'altimeterSetting', 'hPa')).toBe(`1${THIN}004${NBSP}hPa`);
  expect(shown(-3.5, 'temperature', 'degC')).toBe(`\u22124${NBSP}°C`);
  expect(figureText(-3.5, 1)).toBe('\u22123.5');
  expect(figureText(-0.04, 1)).toBe('0.0');
  expect(figureText(1234567.891, 2)).toBe(`1${THIN}234${THIN}567.89`);
  expect(figureText(999, 0)).toBe('999');
  expect(shown(0.25, 'chordShare', '%MAC')).toBe(`25.0${NBSP}% MAC`);
  expect(shown(toSi(30, 'deg'), 'angle', 'deg')).toBe('30°');
  expect(shown(toSi(5, 'deg'), 'direction', 'deg')).toBe('005°');
  expect(shown(0, 'direction', 'deg')).toBe('360°');
  expect(shown(toSi(29.92, 'inHg'), 'altimeterSetting', 'inHg')).toBe(`29.92${NBSP}inHg`);
});

// The project's look, wording: "Digits: kg 0.1, mm 1, L 0.1, ft 10, °C 1, m of runway 5".
test.each([
  [digitsOf('mass', 'kg'), 0.1],
  [digitsOf('arm', 'mm'), 1],
  [digitsOf('volume', 'L'), 0.1],
  [digitsOf('altitude', 'ft'), 10],
  [digitsOf('temperature', 'degC'), 1],
  [digitsOf('distance', 'm'), 5],
])('digits are those of the look: %o', ({ resolution }, expected) => {
  expect(resolution).toBe(expected);
});

test('an arrow key never moves less than what is shown, so that every press is seen', () => {
  for (const { units } of Object.values(QUANTITIES)) {
    for (const { step, resolution } of units) {
      expect(step).toBeGreaterThanOrEqual(resolution);
      expect(Math.abs(step / resolution - Math.round(step / resolution))).toBeLessThan(1e-9);
    }
  }
});

test('a change carries its sign', () => {
  expect(shown(2.04, 'mass', 'kg', 'change')).toBe(`+2.0${NBSP}kg`);
  expect(shown(-2.04, 'mass', 'kg', 'change')).toBe(`\u22122.0${NBSP}kg`);
  expect(shown(0, 'mass', 'kg', 'change')).toBe(`0.0${NBSP}kg`);
  expect(shown(toSi(9, 'F deg'), 'temperatureDifference', 'F deg', 'change')).toBe(`+9${NBSP}°F`);
});

test('an interval is rounded outward, a window to act in inward', () => {
  expect(shownRange(31.4, 34.6, 'temperature', 'degC')).toBe(`31 to 35${NBSP}°C`);
  expect(shownRange(31.4, 34.6, 'temperature', 'degC', 'inward')).toBe(`32 to 34${NBSP}°C`);
});

test('columns leave the unit to the head', () => {
  expect(shownFigure(1234.56, 'mass', 'kg')).toBe(`1${THIN}234.6`);
});

test('spans read as words and as columns, endurance down and waiting up', () => {
  const span = 2 * 3600 + 35 * 60;
  expect(shownDuration(span)).toBe(`2${NBSP}h${NBSP}35${NBSP}min`);
  expect(columnDuration(span)).toBe('2:35');
  expect(shownDuration(span + 59, 'plan')).toBe(`2${NBSP}h${NBSP}35${NBSP}min`);
  expect(shownDuration(span + 1, 'until inside')).toBe(`2${NBSP}h${NBSP}36${NBSP}min`);
  expect(shownDuration(3600)).toBe(`1${NBSP}h`);
  expect(shownDuration(0)).toBe(`0${NBSP}min`);
  expect(shownDuration(20, 'duration left')).toBe(`less than 1${NBSP}min`);
  expect(shownDuration(0, 'duration left')).toBe(`0${NBSP}min`);
  expect(shownDuration(-90, 'plan')).toBe(`\u22122${NBSP}min`);
  expect(columnDuration(300)).toBe('0:05');
  expect(shownDuration(span, 'plan', 600)).toBe(`2${NBSP}h${NBSP}30${NBSP}min`);
});

test('a field shows what was typed, whatever unit it is kept in', () => {
  expect(fieldText(toSi(1320, 'lb'), 'mass', 'lb')).toBe('1320');
  expect(fieldText(toSi(84.375, 'in'), 'arm', 'in')).toBe('84.375');
  expect(fieldText(600, 'mass', 'lb')).toBe('1322.77');
  expect(fieldText(-3.5, 'temperature', 'degC')).toBe('\u22123.5');
  expect(fieldText(0, 'arm', 'mm')).toBe('0');
});

test('an arrow key goes to the next place on the grid of steps', () => {
  expect(stepped(80.3, 'mass', 'kg', 1)).toBe(80.5);
  expect(stepped(80.3, 'mass', 'kg', -1)).toBe(80);
  expect(stepped(80.5, 'mass', 'kg', 1)).toBe(81);
  expect(stepped(toSi(29.92, 'inHg'), 'altimeterSetting', 'inHg', 1)).toBeCloseTo(toSi(29.93, 'inHg'), 9);
  expect(stepped(0, 'temperature', 'degC', -10)).toBe(-10);
  // Tenths of a gallon kept in litres are never exact: each press must still move by one step and land on it.
  let volumeL = 0;
  for (let tenths = 1; tenths <= 300; tenths += 1) {
    volumeL = stepped(volumeL, 'volume', 'US gal', 1);
    expect(fieldText(volumeL, 'volume', 'US gal')).toBe(String(tenths / 10));
  }
  for (let tenths = 299; tenths >= 0; tenths -= 1) {
    volumeL = stepped(volumeL, 'volume', 'US gal', -1);
    expect(fieldText(volumeL, 'volume', 'US gal')).toBe(String(tenths / 10));
  }
});
