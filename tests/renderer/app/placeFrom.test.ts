import { expect, test } from 'vitest';
import { placeFrom } from '../../../renderer/app/placeFrom.ts';

const screens = [{ id: 'aircraft' }, { id: 'fuel' }] as const;

test('the address wins over what was left, what was left over the first screen', () => {
  expect(placeFrom('fuel', '#aircraft', screens)).toBe('aircraft');
  expect(placeFrom('fuel', '', screens)).toBe('fuel');
  expect(placeFrom('fuel', '#nowhere', screens)).toBe('fuel');
  expect(placeFrom({ odd: 1 }, '', screens)).toBe('aircraft');
  expect(placeFrom('weather', '', screens)).toBe('aircraft');
  expect(placeFrom(null, '', [])).toBe('settings');
});
