import { expect, test } from 'vitest';
import { dateKind, dayText } from '../../../renderer/ui/dateKind.ts';

const kind = dateKind(() => '2026-07-21');

test.each([
  ['19 July 2026', '2026-07-19'],
  ['19 jul 2026', '2026-07-19'],
  ['July 19, 2026', '2026-07-19'],
  ['2026-07-19', '2026-07-19'],
  ['today', '2026-07-21'],
  ['29 February 2028', '2028-02-29'],
])('%s is the day %s', (text, day) => {
  expect(kind.read(text)).toMatchObject({ value: day });
});

test.each([
  ['29 February 2026', 'There is no 29 February 2026.'],
  ['07/19/2026', 'day and month could be either'],
  ['soon', 'is not a date'],
  ['19 Jully 2026', 'is not a date'],
])('%s is refused', (text, why) => {
  const reading = kind.read(text);
  expect('refused' in reading ? reading.refused : '').toContain(why);
});

test('an empty field means no day', () => {
  expect(kind.read('  ')).toEqual({ value: null });
});

test('a step from the last day of a month leads into the next', () => {
  expect(kind.step?.('2026-12-31', 1)).toBe('2027-01-01');
  expect(dayText('2027-01-01')).toBe('1 January 2027');
});
