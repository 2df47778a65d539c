import { expect, test } from 'vitest';
import { usableAfterRows } from '../../../shared-calc/fuel/fill-run.ts';
import type { FillRun } from '../../../shared-calc/fuel/fill-run.ts';
import { filling, rows, TANK } from './fill-tests.ts';

const usableL = (run: FillRun) => usableAfterRows(run, TANK).map((row) => row.usableL);

// The sums are worked by hand.
test('a run drained at the engine feed starts with nothing usable and sums its pours', () => {
  expect(usableL(filling([0, 'E'], [5, 'E'], [5, 0.25], [2.5, 0.3]))).toEqual([0, 5, 10, 12.5]);
});

test('a run drained at the sump has to fill the unusable quantity of the manual first', () => {
  const run: FillRun = {
    direction: 'filling',
    start: { from: 'sump' },
    rows: rows([0, 'E'], [5, 'E'], [5, 0.1]),
  };
  expect(usableL(run)).toEqual([-2, 3, 8]);
});

test('a draining run counts down from the quantity that was in the tank', () => {
  const run: FillRun = {
    direction: 'draining',
    start: { from: 'known', usableL: 50 },
    rows: rows([0, 'F'], [20, 0.5], [29.5, 'E']),
  };
  expect(usableL(run)).toEqual([50, 30, 0.5]);
});

test('a reading that is set aside keeps its volume in the sum', () => {
  const run = filling([5, 'E'], [5, 0.9], [5, 0.3]);
  const withOneAside: FillRun = { ...run, rows: run.rows.map((row, i) => ({ ...row, setAside: i === 1 })) };
  expect(usableL(withOneAside)).toEqual([5, 10, 15]);
  expect(usableAfterRows(withOneAside, TANK)[1]?.setAside).toBe(true);
});

test('a draining run cannot start from an empty tank', () => {
  const run: FillRun = { direction: 'draining', start: { from: 'engineFeed' }, rows: [] };
  expect(() => usableAfterRows(run, TANK, 2)).toThrow(
    /runs\[2\]\.start: a draining run needs the usable quantity/,
  );
});
