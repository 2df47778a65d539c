import { expect, test } from 'vitest';
import { gridMove } from '../../../../renderer/screens/loading/review/gridMove.ts';

// Five rows and four columns, the heads among them. Moves after the grid pattern of the WAI-ARIA Authoring Practices.
const from = { row: 2, column: 2 };
const to = (key: string, withControl = false, at = from) => {
  const next = gridMove(key, withControl, at, 5, 4);
  return next === null ? null : [next.row, next.column];
};

test('arrows move by one place and stop at the edges', () => {
  expect(to('ArrowUp')).toEqual([1, 2]);
  expect(to('ArrowDown')).toEqual([3, 2]);
  expect(to('ArrowLeft')).toEqual([2, 1]);
  expect(to('ArrowRight')).toEqual([2, 3]);
  expect(to('ArrowDown', false, { row: 4, column: 2 })).toEqual([4, 2]);
  expect(to('ArrowRight', false, { row: 2, column: 3 })).toEqual([2, 3]);
  expect(to('ArrowUp', false, { row: 0, column: 2 })).toEqual([0, 2]);
});

test('Home and End go to the ends of the row, with Ctrl to the ends of the grid', () => {
  expect(to('Home')).toEqual([2, 0]);
  expect(to('End')).toEqual([2, 3]);
  expect(to('Home', true)).toEqual([0, 0]);
  expect(to('End', true)).toEqual([4, 3]);
});

test('page keys stay among the rows, and other keys mean nothing', () => {
  expect(to('PageUp')).toEqual([1, 2]);
  expect(to('PageDown')).toEqual([4, 2]);
  expect(to('Enter')).toBeNull();
  expect(to('a')).toBeNull();
});
