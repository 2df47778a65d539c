import fc from 'fast-check';
import { expect, test } from 'vitest';
import { fromSi, toSi } from '../../../shared-calc/units/convert.ts';
import { parseQuantity } from '../../../shared-calc/units/parse-quantity.ts';
import { QUANTITIES, type Quantity, type UnitOf } from '../../../shared-calc/units/quantities.ts';
import { decimalsOf } from '../../../shared-calc/units/figure-text.ts';
import { fieldText, shown } from '../../../shared-calc/units/shown.ts';
import type { Unit } from '../../../shared-calc/units/unit-table.ts';

/** For rows of a table, where the tie between quantity and unit cannot be written down. */
function parse(text: string, quantity: Quantity, unit: Unit) {
  return parseQuantity(text, quantity, unit as UnitOf[Quantity]);
}

// Expected values are the definitions of the units (NIST SP 811) applied by hand to what a person means.
test.each<[text: string, Quantity, field: Unit, value: number, unit: Unit]>([
  ['13.5 gal', 'volume', 'US gal', 13.5, 'US gal'],
  ['13.5 gal', 'volume', 'L', 13.5, 'US gal'],
  ['13.5 gal', 'volume', 'imp gal', 13.5, 'imp gal'],
  ['13.5 imp gal', 'volume', 'US gal', 13.5, 'imp gal'],
  ['13.5 US gallons', 'volume', 'imp gal', 13.5, 'US gal'],
  ['1 320 lb', 'mass', 'kg', 1320, 'lb'],
  ['1\u2060\u2009\u2060320\u00a0lb', 'mass', 'kg', 1320, 'lb'],
  ['1320', 'mass', 'lb', 1320, 'lb'],
  ['1320LBS', 'mass', 'kg', 1320, 'lb'],
  ['1,320.5 lb', 'mass', 'kg', 1320.5, 'lb'],
  ['1.320,5 lb', 'mass', 'kg', 1320.5, 'lb'],
  ['1,320,500 lb', 'mass', 'kg', 1_320_500, 'lb'],
  ['1.320 m', 'arm', 'mm', 1.32, 'm'],
  ['0,320', 'arm', 'm', 0.32, 'm'],
  ['1234,567', 'arm', 'mm', 1234.567, 'mm'],
  ['29,92 inHg', 'pressure', 'hPa', 29.92, 'inHg'],
  ['29.92"', 'altimeterSetting', 'hPa', 29.92, 'inHg'],
  ['29.92 in', 'altimeterSetting', 'hPa', 29.92, 'inHg'],
  ['A2992', 'altimeterSetting', 'hPa', 29.92, 'inHg'],
  ['Q0998', 'altimeterSetting', 'inHg', 998, 'hPa'],
  ['1013 mb', 'altimeterSetting', 'inHg', 1013, 'hPa'],
  ['-3.5C', 'temperature', 'degF', -3.5, 'degC'],
  ['\u22123,5 °C', 'temperature', 'degF', -3.5, 'degC'],
  ['86 f', 'temperature', 'degC', 86, 'degF'],
  ['+12', 'temperature', 'degC', 12, 'degC'],
  ['7\' 4 1/2"', 'arm', 'mm', 7 + 4.5 / 12, 'ft'],
  ['7\u2032 4\u00bd\u2033', 'arm', 'mm', 7 + 4.5 / 12, 'ft'],
  ['7\'-4 1/2"', 'arm', 'mm', 7 + 4.5 / 12, 'ft'],
  ['7 ft 4.5 in', 'arm', 'mm', 7 + 4.5 / 12, 'ft'],
  ["7'4", 'arm', 'mm', 7 + 4 / 12, 'ft'],
  ['-7\' 6"', 'arm', 'mm', -7.5, 'ft'],
  ['84 1/2 in', 'arm', 'mm', 84.5, 'in'],
  ['84-1/2"', 'arm', 'mm', 84.5, 'in'],
  ['1/2', 'volume', 'US gal', 0.5, 'US gal'],
  ['½ gal', 'volume', 'US gal', 0.5, 'US gal'],
  ['.5', 'volume', 'L', 0.5, 'L'],
  [',5', 'volume', 'L', 0.5, 'L'],
  ['65 kts', 'speed', 'km/h', 65, 'kt'],
  ['500 fpm', 'climbRate', 'm/s', 500, 'ft/min'],
  ['5 gph', 'fuelFlow', 'L/h', 5, 'US gal/h'],
  ['6 lb/gal', 'fuelDensity', 'kg/L', 6, 'lb/US gal'],
  ['25 %', 'chordShare', '%MAC', 25, '%MAC'],
  ['2:35', 'duration', 'min', 155, 'min'],
  ['2 h 35 min', 'duration', 'min', 155, 'min'],
  ['2h35', 'duration', 'min', 155, 'min'],
  ['2.5 h', 'duration', 'min', 2.5, 'h'],
  ['35', 'duration', 'min', 35, 'min'],
])('%s typed for a %s in a field of %s is %d %s', (text, quantity, field, value, unit) => {
  const parsed = parse(text, quantity, field);
  expect(parsed).toMatchObject({ ok: true });
  if (!parsed.ok) return;
  // One rounding of the factor and one of the sum of feet and inches.
  expect(parsed.valueSi).toBeCloseTo(toSi(value, unit), 10);
});

test.each<[string, Quantity, Unit, string[]]>([
  ['1,320 lb', 'mass', 'kg', ['1320 lb', '1.320 lb']],
  ['-1,250 mm', 'arm', 'm', ['-1250 mm', '-1.250 mm']],
  ['29,920', 'altimeterSetting', 'inHg', ['29920 inHg', '29.920 inHg']],
])('%s has two readings and is refused with both', (text, quantity, unit, texts) => {
  const parsed = parse(text, quantity, unit);
  expect(parsed.ok).toBe(false);
  if (parsed.ok) return;
  expect(parsed.readings.map((reading) => reading.text)).toEqual(texts);
  for (const reading of texts) expect(parsed.sentence).toContain(reading);
});

test('both readings of an ambiguous mass carry their values', () => {
  const parsed = parseQuantity('1,320', 'mass', 'lb');
  if (parsed.ok) throw new Error('was not refused');
  expect(parsed.readings.map((reading) => reading.valueSi)).toEqual([1320 * 0.45359237, 1.32 * 0.45359237]);
});

test.each<[string, Quantity, Unit, RegExp]>([
  ['', 'mass', 'kg', /^Nothing is typed; a mass was expected\.$/],
  ['  ', 'mass', 'kg', /^Nothing is typed/],
  ['heavy', 'mass', 'kg', /does not begin with a number/],
  ['13.5 lb', 'volume', 'L', /"lb" is a unit of mass; a volume was expected, in L, US gal or imp gal\.$/],
  ['13.5 stone', 'mass', 'kg', /"stone" is not a known unit; a mass was expected, in kg or lb\.$/],
  ['1 32 lb', 'mass', 'kg', /"1 32" is not a number/],
  ['1.2.3', 'mass', 'kg', /is not a number/],
  ['1,32,0', 'mass', 'kg', /is not a number/],
  ['1e3', 'mass', 'kg', /"e3" is not a known unit/],
  ['1/0', 'mass', 'kg', /cannot have 0 below the line/],
  ['-300 C', 'temperature', 'degC', /below absolute zero/],
  ['7\' 14"', 'arm', 'mm', /in less than 12/],
  ['7.5\' 4"', 'arm', 'mm', /must be a whole number/],
  ['A2992', 'mass', 'kg', /does not begin with a number/],
])('%s typed for a %s in %s is refused in words', (text, quantity, unit, sentence) => {
  const parsed = parse(text, quantity, unit);
  expect(parsed.ok).toBe(false);
  if (!parsed.ok) expect(parsed.sentence).toMatch(sentence);
});

test('a comma that could part thousands is no ambiguity where one reading lies below absolute zero', () => {
  expect(parseQuantity('-1,320 C', 'temperature', 'degC')).toEqual({
    ok: true,
    valueSi: -1.32,
    unit: 'degC',
  });
});

test('what a field shows is read back as the same value, in every unit of every quantity', () => {
  for (const quantity of Object.keys(QUANTITIES) as Quantity[]) {
    for (const { unit, resolution } of QUANTITIES[quantity].units) {
      fc.assert(
        fc.property(
          fc.integer({ min: 0, max: 9_999_999 }),
          fc.integer({ min: 0, max: 4 }),
          (digits, shift) => {
            const typed = digits / 10 ** shift;
            const own = unit as UnitOf[Quantity];
            const text = fieldText(toSi(typed, unit), quantity, own);
            const parsed = parseQuantity(text, quantity, own);
            if (!parsed.ok) throw new Error(parsed.sentence);
            // More digits than a field keeps are rounded to one past the quantity's own.
            const allowed = 1e-9 * typed + 0.05 * 10 ** -decimalsOf(resolution);
            expect(Math.abs(fromSi(parsed.valueSi, unit) - typed)).toBeLessThanOrEqual(allowed + 1e-9);
          },
        ),
        { seed: 3, numRuns: 60 },
      );
    }
  }
});

test('what the program shows can be typed back', () => {
  expect(parseQuantity(shown(598.7419284, 'mass', 'lb'), 'mass', 'kg')).toMatchObject({
    ok: true,
    unit: 'lb',
  });
  expect(parseQuantity(shown(-3.4, 'temperature', 'degC'), 'temperature', 'degF')).toMatchObject({
    ok: true,
    valueSi: -3,
  });
});

test('no text makes the parser throw', () => {
  fc.assert(
    fc.property(
      fc.string({ unit: 'grapheme' }),
      fc.constantFrom(...(Object.keys(QUANTITIES) as Quantity[])),
      (text, quantity) => {
        const unit = QUANTITIES[quantity].units[0]?.unit;
        if (unit !== undefined) expect(typeof parse(text, quantity, unit).ok).toBe('boolean');
      },
    ),
    { seed: 4, numRuns: 3000 },
  );
  fc.assert(
    fc.property(fc.array(fc.constantFrom(...'0123456789., \'"-/+gallbftinC°½')), (characters) => {
      for (const quantity of ['arm', 'volume', 'mass', 'temperature', 'duration'] as const) {
        const unit = QUANTITIES[quantity].units[0]?.unit;
        if (unit === undefined) continue;
        const parsed = parse(characters.join(''), quantity, unit);
        if (parsed.ok) expect(Number.isFinite(parsed.valueSi)).toBe(true);
        else expect(parsed.sentence).not.toBe('');
      }
    }),
    { seed: 5, numRuns: 5000 },
  );
});
