import fc from 'fast-check';
import { expect, test } from 'vitest';
import { convert, fromSi, toSi } from '../../../shared-calc/units/convert.ts';
import { SI_UNIT, UNITS, type Unit } from '../../../shared-calc/units/unit-table.ts';

const unitNames = Object.keys(UNITS) as Unit[];

// NIST SP 811 (2008), appendix B.8, as printed to seven figures (from memory of the table; exact ones marked there in bold).
test.each<[number, Unit, number, Unit]>([
  [1, 'lb/US gal', 119.8264, 'kg/m3'],
  [1, 'lb/imp gal', 99.77637, 'kg/m3'],
  [1, 'lb/ft3', 16.01846, 'kg/m3'],
  // 1 kg/L is 1000 / 119.8264 lb/US gal.
  [1, 'kg/L', 8.345404, 'lb/US gal'],
  [1, 'mph', 0.44704, 'm/s'],
  [1, 'ft/min', 0.00508, 'm/s'],
  [1, 'km/h', 0.2777778, 'm/s'],
  [1, 'mmHg', 1.333224, 'hPa'],
  [1, 'ft2', 0.09290304, 'm2'],
  [1, 'NM', 1852, 'm'],
  [1, 'deg', 0.01745329, 'rad'],
  [1, 'US gal', 3.785412, 'L'],
  [1, 'imp gal', 4.54609, 'L'],
  // 1 lb in of moment is 0.45359237 kg times 0.0254 m: 0.01152125 kg m (SP 811 gives 11.52125 kg mm).
  [1, 'lb in', 11.52125, 'kg mm'],
  [-40, 'degF', -40, 'degC'],
  [212, 'degF', 100, 'degC'],
  [9, 'F deg', 5, 'C deg'],
])('%d %s is %d %s', (value, from, expected, to) => {
  // Half of the seventh figure.
  expect(Math.abs(convert(value, from, to) - expected)).toBeLessThanOrEqual(Math.abs(expected) * 5e-7);
});

test('exact definitions come out exactly', () => {
  expect(convert(1, 'in', 'mm')).toBe(25.4);
  expect(convert(1, 'US gal', 'L')).toBe(3.785411784);
  expect(convert(1, 'lb', 'kg')).toBe(0.45359237);
  expect(convert(32, 'degF', 'degC')).toBe(0);
  expect(convert(1320, 'lb', 'lb')).toBe(1320);
});

/** The distance of neighbouring doubles at x. */
function ulp(x: number): number {
  const exponent = Math.max(Math.floor(Math.log2(Math.abs(x) || Number.MIN_VALUE)), -1022);
  return 2 ** (exponent - 52);
}

test.each(unitNames)('%s there and back is within one unit in the last place', (unit) => {
  const zero = Math.abs(UNITS[unit].zero);
  fc.assert(
    fc.property(fc.double({ min: -1e6, max: 1e6, noNaN: true }), (typed) => {
      const value = UNITS[unit].dimension === 'temperature' ? Math.abs(typed) : typed;
      fc.pre(value === 0 || Math.abs(value) > 1e-200);
      const back = fromSi(toSi(value, unit), unit);
      if (zero === 0) expect(Math.abs(back - value)).toBeLessThanOrEqual(ulp(value));
      // Where the scale is shifted too, the offset sets the size of a last place and each way rounds once more.
      else expect(Math.abs(back - value)).toBeLessThanOrEqual(2 * ulp(Math.max(Math.abs(value), 459.67)));
    }),
    { seed: 1, numRuns: 2000 },
  );
});

test.each(unitNames)('more %s is more of what is kept', (unit) => {
  fc.assert(
    fc.property(
      fc.double({ min: 0, max: 1e6, noNaN: true }),
      fc.double({ min: 1e-3, max: 1e6, noNaN: true }),
      (value, more) => {
        expect(toSi(value + more, unit)).toBeGreaterThan(toSi(value, unit));
      },
    ),
    { seed: 2 },
  );
});

test('the kept unit of every dimension is kept as it is', () => {
  for (const unit of Object.values(SI_UNIT)) expect(toSi(12.375, unit)).toBe(12.375);
});

test('units of different dimensions are not converted', () => {
  expect(() => convert(1, 'lb', 'L')).toThrow('lb is a unit of mass and L one of volume');
});
