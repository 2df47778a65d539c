import { expect, test } from 'vitest';
import { reviewCsv } from '../../../../renderer/screens/loading/review/reviewCsv.ts';

const cell = {
  verdict: 'outside' as const,
  lead: 'Outside the aft limit by 1\u2060\u2009\u2060004\u00a0mm',
  where: 'met 1\u00a0h 52\u00a0min after take-off',
  met: '',
  isHidden: false,
  whole: '',
  share: -0.1,
  limitId: 'envelope.normal.aft',
  marginM: -0.0041234567,
  marginKg: null,
  afterTakeOffS: 6720,
  span: null,
};

test('a cell is a line of plain text, quoted after RFC 4180, with its figures in SI units', () => {
  const text = reviewCsv(
    [{ name: 'Ines, "small" bag', cells: [cell] }],
    ['60\u00a0L'],
    () => '57\u00a0times in 1\u2060\u2009\u2060000',
    () => 'was inside',
  );
  const [, line, end] = text.split('\r\n');
  expect(line).toBe(
    '"Ines, ""small"" bag",60 L,outside,Outside the aft limit by 1 004 mm,met 1 h 52 min after take-off,' +
      '57 times in 1 000,envelope.normal.aft,-0.0041234567,,6720,was inside',
  );
  expect(end).toBe('');
});

test('a name that a spreadsheet would take for a formula is text', () => {
  const text = reviewCsv(
    [{ name: '=1+1', cells: [cell] }],
    ['60 L'],
    () => null,
    () => null,
  );
  expect(text.split('\r\n')[1]?.startsWith("'=1+1,")).toBe(true);
});
