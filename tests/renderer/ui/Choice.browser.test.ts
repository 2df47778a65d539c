import { userEvent } from 'vitest/browser';
import { expect, test, vi } from 'vitest';
import { render } from 'vitest-browser-svelte';
import Choice from '../../../renderer/ui/Choice.svelte';
import { stepChoice } from '../../../renderer/ui/stepChoice.ts';

const options = [
  { value: 'arm', word: 'arm' },
  { value: 'moment', word: 'moment' },
  { value: 'mac', word: '% MAC' },
];

test('a word is chosen by pressing it', async () => {
  const onChoose = vi.fn();
  const screen = await render(Choice, { label: 'Mass against', options, value: 'arm', onChoose });
  await screen.getByRole('radio', { name: 'moment' }).click();
  expect(onChoose).toHaveBeenCalledExactlyOnceWith('moment');
});

test('the tab key stops once, at the chosen word, and arrows move and choose', async () => {
  const onChoose = vi.fn();
  const screen = await render(Choice, { label: 'Mass against', options, value: 'moment', onChoose });
  await userEvent.keyboard('{Tab}');
  await expect.element(screen.getByRole('radio', { name: 'moment' })).toHaveFocus();
  await userEvent.keyboard('{ArrowRight}');
  await expect.element(screen.getByRole('radio', { name: '% MAC' })).toHaveFocus();
  expect(onChoose).toHaveBeenLastCalledWith('mac');
  await userEvent.keyboard('{ArrowRight}');
  expect(onChoose).toHaveBeenLastCalledWith('arm');
});

test.each([
  ['ArrowRight', 2, 0],
  ['ArrowLeft', 0, 2],
  ['Home', 2, 0],
  ['End', 0, 2],
  ['x', 1, null],
])('%s from word %s of three leads to %s', (key, from, to) => {
  expect(stepChoice(key, from, 3)).toBe(to);
});
