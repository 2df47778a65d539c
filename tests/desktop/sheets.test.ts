import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { loopbackHost } from './harness/loopback.ts';
import { inEveryHost, withWindow } from './harness/with-window.ts';

/** Count the frames that are painted without a sheet, from now on. */
async function watchForBlanks(page: Page): Promise<() => Promise<number>> {
  await page.evaluate(() => {
    const seen = globalThis as unknown as { framesWithoutSheet: number };
    seen.framesWithoutSheet = 0;
    const look = () => {
      if (document.querySelector('main') === null) seen.framesWithoutSheet += 1;
      requestAnimationFrame(look);
    };
    requestAnimationFrame(look);
  });
  return () =>
    page.evaluate(() => (globalThis as unknown as { framesWithoutSheet: number }).framesWithoutSheet);
}

const link = (page: Page, name: string) => page.getByRole('link', { name: new RegExp(`^${name}`) });

inEveryHost('The screens', (host) => {
  test('are all read soon after the start, and follow each other without an empty page', async () => {
    await withWindow(host, { isDemo: true }, async ({ page }) => {
      await page.locator('main h1').waitFor();
      const read = () =>
        page.evaluate(() =>
          performance
            .getEntriesByType('resource')
            .map(({ name }) => /(Aircraft|Loading|Fuel|Weather)\w+-[\w-]+\.js$/.exec(name)?.[1])
            .filter((each) => each !== undefined),
        );
      await expect.poll(async () => new Set(await read()).size).toBe(4);
      const blanks = await watchForBlanks(page);
      for (const name of ['Loading', 'Fuel', 'Weather', 'Settings', 'Aircraft', 'Weather']) {
        await link(page, name).click();
        await expect.poll(() => page.locator('main h1').textContent()).not.toBe('');
      }
      expect(await blanks()).toBe(0);
    });
  });
});

/** Begin again with what lies behind `path` held back by `hold`, and nothing read ahead. */
async function beginAgain(page: Page, path: RegExp, hold: () => Promise<boolean>): Promise<void> {
  await page.locator('main h1').waitFor();
  await page.route(path, async (route) => ((await hold()) ? route.continue() : route.abort()));
  await page.addInitScript(() => {
    window.requestIdleCallback = () => 0;
  });
  await page.reload();
  await page.locator('main h1').waitFor();
}

test('A screen that is slow to come leaves the one before in its place', async () => {
  await withWindow(loopbackHost, { isDemo: true }, async ({ page }) => {
    const released = Promise.withResolvers<boolean>();
    await beginAgain(page, /WeatherSheet-.*\.js$/, () => released.promise);
    const isAircraft = /^Empty/;
    await expect.poll(() => page.locator('main h1').textContent()).toMatch(isAircraft);
    const blanks = await watchForBlanks(page);
    await link(page, 'Weather').click();
    await page.waitForTimeout(300);
    expect(await page.locator('main h1').textContent()).toMatch(isAircraft);
    released.resolve(true);
    await expect.poll(() => page.locator('main h1').textContent()).toMatch(/local/);
    expect(await blanks()).toBe(0);
  });
});

test('A screen that cannot be read says so, leaves the others alone, and comes when tried again', async () => {
  await withWindow(loopbackHost, { isDemo: true, expected: /ERR_FAILED/ }, async ({ page }) => {
    let isThere = false;
    await beginAgain(page, /WeatherSheet-.*\.js$/, () => Promise.resolve(isThere));
    await link(page, 'Weather').click();
    await page.getByText('The part of the program that shows Weather could not be read.').waitFor();
    await link(page, 'Loading').click();
    await expect.poll(() => page.locator('main h1').textContent()).toMatch(/limits/);
    await link(page, 'Weather').click();
    await page.getByText('The part of the program that shows Weather could not be read.').waitFor();
    isThere = true;
    await page.getByRole('button', { name: 'Try again' }).click();
    await expect.poll(() => page.locator('main h1').textContent()).toMatch(/local/);
  });
});
