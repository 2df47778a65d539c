import { expect, test } from 'vitest';
import { csvRows } from '../../../../shared-calc/fuel/csv/cells.ts';
import { checksToCsv } from '../../../../shared-calc/fuel/csv/write-checks.ts';
import { exampleCheck } from '../checks/example-checks.ts';

const EIGHTHS = { kind: 'fractions', denominator: 8 } as const;
const OHMS = { kind: 'numbers', atEmpty: 240, atFull: 33, step: 5 } as const;

test('each check is a row with its units in the header, the earliest first, as a spreadsheet opens it', () => {
  const text = checksToCsv(
    [
      exampleCheck({ id: 'b', checkedOn: '2026-10-03', refillL: 17.25, flightS: null, note: 'rain; "wet"' }),
      exampleCheck({ id: 'a', checkedOn: '2026-09-12', refillL: 25, flightS: 4500, containerId: 'can' }),
      exampleCheck({ id: 'c', checkedOn: '2026-10-04', withdrawn: true }),
    ],
    EIGHTHS,
    [{ id: 'can', name: 'Can, green' }],
    new Map([['a', { differsL: -0.5, remark: '' }]]),
  );
  const [header, first, second, third] = csvRows(text).map(({ cells }) => cells);
  expect(header?.slice(0, 8)).toEqual([
    'checked_on',
    'kind',
    'attitude',
    'before_fraction',
    'after_fraction',
    'flight_min',
    'refill_L',
    'state_sd_L',
  ]);
  expect(first?.slice(0, 7)).toEqual(['2026-09-12', 'refill', 'level flight', '3/4', '1/4', '75', '25']);
  expect(first?.slice(8, 11)).toEqual(['Can, green', '-0.5', '']);
  expect(second?.slice(5, 7)).toEqual(['', '17.25']);
  expect(second?.at(-1)).toBe('rain; "wet"');
  expect(third?.[10]).toBe('withdrawn');
});

test('a zero is a row of its own, and a gauge in ohms that runs backwards is written as it is printed', () => {
  const common = {
    tankId: 'tank',
    checkedOn: '2026-08-01',
    attitude: 'level flight',
    note: '',
    withdrawn: false,
  } as const;
  const text = checksToCsv(
    [
      { kind: 'zero', id: 'z', ...common, reading: { at: 'emptyStop' } },
      // 240 - 0.5 x 207 = 136.5 ohms.
      exampleCheck({ id: 'a', checkedOn: '2026-09-12', before: { at: 'scale', positionRatio: 0.5 } }),
    ],
    OHMS,
    [],
    new Map(),
  );
  const [header, zero, refill] = csvRows(text).map(({ cells }) => cells);
  expect(header?.[3]).toBe('before_printed');
  expect(zero?.slice(0, 7)).toEqual(['2026-08-01', 'zero', 'level flight', '', 'E', '', '']);
  expect(refill?.[3]).toBe('136.5');
});
