import { expect, test } from 'vitest';
import { burnChoiceId, burnChoices } from '../../../shared-calc/loading/burn-orders.ts';

const tanks = (count: number) =>
  Array.from({ length: count }, (_, index) => ({
    id: `t${String(index)}`,
    name: `Tank ${String(index + 1)}`,
  }));

test('one tank leaves one order, two leave each first, both together and in turn from either', () => {
  expect(burnChoices(tanks(1), null).map(({ word }) => word)).toEqual(['tank 1']);
  expect(burnChoices(tanks(2), null).map(({ word }) => word)).toEqual([
    'tank 1, then tank 2',
    'tank 2, then tank 1',
    'both tanks together',
    'in turn, tank 1 first',
    'in turn, tank 2 first',
  ]);
});

test('four tanks can be burned in 4! orders; beyond four only turns of the given order are listed', () => {
  const sequences = (count: number) =>
    burnChoices(tanks(count), null).filter(({ burn }) => burn.kind === 'sequence').length;
  expect(sequences(4)).toBe(24);
  expect(sequences(5)).toBe(5);
});

test('each choice is found again by the order that it makes, and minutes stay as chosen', () => {
  for (const choice of burnChoices(tanks(3), 20)) {
    expect(burnChoiceId({ ...choice.burn, returnLine: null })).toBe(choice.id);
    expect(choice.burn.everyMin).toBe(choice.burn.kind === 'alternate' ? 20 : null);
  }
});
