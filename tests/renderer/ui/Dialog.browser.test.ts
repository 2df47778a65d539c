import { userEvent } from 'vitest/browser';
import { expect, test, vi } from 'vitest';
import { render } from 'vitest-browser-svelte';
import Dialog from '../../../renderer/ui/Dialog.svelte';

test('a dialog holds the focus, closes on Escape and gives the focus back', async () => {
  const before = document.createElement('button');
  before.textContent = 'Before';
  document.body.append(before);
  before.focus();
  const onClose = vi.fn();
  const screen = await render(Dialog, { question: 'Put back the library of 12 October?', onClose });
  await expect.element(screen.getByRole('dialog', { name: /12 October/ })).toBeVisible();
  const close = screen.getByRole('button', { name: 'Close' });
  await userEvent.keyboard('{Tab}{Tab}{Tab}');
  expect(document.activeElement === before).toBe(false);
  await close.click();
  await userEvent.keyboard('{Escape}');
  expect(onClose).toHaveBeenCalled();
  await screen.unmount();
  expect(document.activeElement).toBe(before);
  before.remove();
});
