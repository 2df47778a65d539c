import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  fixedDigits,
  hundredths,
  integer,
  notANumber,
  nothing,
} from '../../../main/weather-import/digits.ts';

const bytes = (text: string) => new TextEncoder().encode(text);
const inHundredths = (text: string) => hundredths(bytes(text), 0, text.length);
const inWhole = (text: string) => integer(bytes(text), 0, text.length);

test('a decimal number is read in hundredths, as text that was written from hundredths says', () => {
  fc.assert(
    fc.property(fc.integer({ min: -99_999_999, max: 99_999_999 }), (value) => {
      const sign = value < 0 ? '-' : '';
      const digits = String(Math.abs(value)).padStart(3, '0');
      const text = `${sign}${digits.slice(0, -2)}.${digits.slice(-2)}`;
      expect(inHundredths(text) === value).toBe(true);
    }),
  );
});

test('the third decimal rounds half away from zero', () => {
  expect(inHundredths('29.685')).toBe(2969);
  expect(inHundredths('29.684')).toBe(2968);
  expect(inHundredths('-0.005')).toBe(-1);
});

test('blanks, one decimal, no decimal, plus and leading zeros are numbers', () => {
  expect(inHundredths('  66.0 ')).toBe(6600);
  expect(inHundredths('66')).toBe(6600);
  expect(inHundredths('+0150')).toBe(15_000);
  expect(inHundredths('.5')).toBe(50);
  expect(inWhole('  -44')).toBe(-44);
});

test('blanks only are nothing, everything else is not a number', () => {
  expect(inHundredths('   ')).toBe(nothing);
  for (const text of ['M', '84s', '1e3', '--3', '-', '.', '12.3.4', '123456789'])
    expect(inHundredths(text), text).toBe(notANumber);
  for (const text of ['1.5', 'x', '-', '12345678901']) expect(inWhole(text), text).toBe(notANumber);
  expect(fixedDigits(bytes('20a9'), 0, 4)).toBe(-1);
});
