import { expect, test } from 'vitest';
import { inEveryHost, withWindow } from './harness/with-window.ts';

inEveryHost('The window', (host) => {
  test('opens with its library and shows which file that is', async () => {
    await withWindow(host, {}, async ({ page, libraryPath }) => {
      await expect.poll(() => page.locator('body').innerText()).toContain(libraryPath);
    });
  });
});
