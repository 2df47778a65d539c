import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { exampleAircraft, exampleLoading } from '../main/example-aircraft.ts';
import { exampleFillTest } from '../main/example-fill-test.ts';
import { fromPage } from './harness/from-page.ts';
import { loopbackHost } from './harness/loopback.ts';
import { withWindow } from './harness/with-window.ts';

const heading = (page: Page) => page.getByRole('heading', { level: 1 });
const planL = async (page: Page) => Number(/plan on ([\d.]+)/.exec(await heading(page).innerText())?.[1]);
const effect = (page: Page) => page.locator('.beside').innerText();

/** The Fuel sheet over the example's fill test of the front tank: 5 L a pour, 20 L at 1/2. */
async function openFuel(page: Page): Promise<void> {
  await fromPage(page, 'aircraft.put', { aircraft: exampleAircraft() });
  await fromPage(page, 'fillTest.put', { test: exampleFillTest('may-test', 'front') });
  await page.getByRole('link', { name: /^Fuel/ }).click();
  await expect.poll(() => heading(page).innerText()).toContain('plan on');
}

test('a point is corrected by keys and by the mouse, says what that did, keeps the old figure, and is undone', async () => {
  await withWindow(loopbackHost, {}, async ({ page }) => {
    await openFuel(page);
    const before = await planL(page);
    await page.getByLabel('Pour 4, gauge reads').focus();
    const volume = page.getByRole('slider', { name: 'Volume of the pour in hand' });
    await volume.focus();
    // Ten tenths of a litre more.
    for (let step = 0; step < 10; step++) await volume.press('ArrowUp');
    await expect.poll(() => page.getByLabel('Pour 4, volume').inputValue()).toBe('6');
    await expect.poll(() => planL(page)).toBeGreaterThan(before);
    await expect.poll(() => effect(page)).toContain(`to plan on at 1/2 instead of ${before.toFixed(1)}`);
    await expect.poll(() => page.locator('tr.says').innerText()).toContain('Written down: 5.0\u00a0L, 1/2.');
    await expect.poll(() => page.locator('footer.block').innerText()).toContain('1 row corrected');

    // By the mouse: the reading goes two divisions up the scale.
    const reading = page.getByRole('slider', { name: 'Reading of the pour in hand' });
    const from = await reading.boundingBox();
    const half = await page.getByRole('slider', { name: 'Gauge reading' }).boundingBox();
    if (from === null || half === null) throw new Error('the grips are there');
    await page.mouse.move(from.x + from.width / 2, from.y + from.height / 2);
    await page.mouse.down();
    await page.mouse.move(from.x + from.width / 2 + 60, from.y + from.height / 2, { steps: 5 });
    await page.mouse.up();
    await expect.poll(() => page.getByLabel('Pour 4, gauge reads').inputValue()).not.toBe('1/2');

    await page.getByRole('button', { name: 'Put it back' }).click();
    await expect.poll(() => page.getByLabel('Pour 4, volume').inputValue()).toBe('5');
    await expect.poll(() => page.getByLabel('Pour 4, gauge reads').inputValue()).toBe('1/2');
    await expect.poll(() => planL(page)).toBe(before);
    await page.getByRole('button', { name: 'Undo', exact: true }).first().click();
    await expect.poll(() => page.getByLabel('Pour 4, volume').inputValue()).toBe('6');
  });
});

test('a pinned value and a chosen stiffness move the figure to plan on, and are said where the curve is adopted', async () => {
  await withWindow(loopbackHost, {}, async ({ page }) => {
    await openFuel(page);
    const before = await planL(page);
    await page.getByRole('button', { name: 'Pin a value' }).click();
    const pinned = page.getByLabel('Pinned volume', { exact: true });
    await pinned.fill('18');
    await pinned.press('Enter');
    const doubt = page.getByLabel('Doubt about the pinned volume, nine times in ten');
    await doubt.fill('0.1');
    await doubt.press('Enter');
    // 18 L known to a tenth, where 20 L were poured with a poor can: the curve goes down to it.
    await page.getByRole('radio', { name: 'needle on the mark' }).click();
    await expect.poll(() => planL(page)).toBeLessThan(18);
    await page.getByRole('radio', { name: /to the nearest/ }).click();
    expect(await planL(page)).not.toBe(before);
    await page.getByRole('radio', { name: '1', exact: true }).click();
    await expect.poll(() => effect(page)).toContain('By the last edit');
    await page.getByRole('button', { name: 'Adopt this curve' }).click();
    await expect
      .poll(() => page.locator('footer.block').innerText())
      .toContain('1 value pinned and stiffness chosen');
    await page.getByRole('button', { name: 'Make a card' }).click();
    await expect
      .poll(() => page.getByRole('article').innerText())
      .toContain('1 value pinned and stiffness chosen');
  });
});

test('rows go out as CSV and come back; a figure that cannot be is refused by its line', async () => {
  await withWindow(loopbackHost, {}, async ({ page }) => {
    await openFuel(page);
    const saved = page.waitForEvent('download');
    await page.getByRole('button', { name: 'Save as CSV' }).click();
    const text = readFileSync(await (await saved).path(), 'utf8');
    expect(text.split('\r\n')[0]).toContain('volume_L,reading_fraction');
    await page.getByRole('button', { name: 'Start another' }).click();
    await expect.poll(() => page.getByLabel('Pour 1, volume').inputValue()).toBe('');
    const file = page.getByLabel('File with rows of a fill test');
    const spoilt = text.replace('1/8', 'NaN');
    await file.setInputFiles({ name: 'rows.csv', mimeType: 'text/csv', buffer: Buffer.from(spoilt) });
    await expect
      .poll(() => page.locator('.refusal').allInnerTexts())
      .toContain(
        'Nothing was taken from the file. Line 3, reading_fraction: "NaN", expected a reading on this gauge, or E or F.',
      );
    await file.setInputFiles({ name: 'rows.csv', mimeType: 'text/csv', buffer: Buffer.from(text) });
    await expect.poll(() => page.getByLabel('Pour 4, gauge reads').inputValue()).toBe('1/2');
    await expect.poll(() => page.getByLabel('Pour 8, volume').inputValue()).toBe('5');
  });
});

test('a loading takes its fuel by what the gauge reads, with the figures of the adopted curve', async () => {
  await withWindow(loopbackHost, {}, async ({ page }) => {
    await openFuel(page);
    await page.getByRole('button', { name: 'Adopt this curve' }).click();
    await expect.poll(() => page.getByRole('row', { name: /counts now/ }).count()).toBe(1);
    const lowest = await planL(page);
    await fromPage(page, 'loading.put', { loading: { ...exampleLoading(), items: [] } });
    await page.getByRole('link', { name: /^Loading/ }).click();
    const gauge = page.getByLabel('The gauge of Front tank reads');
    await gauge.fill('1/2');
    await gauge.press('Enter');
    const row = page.locator('tr.says', { has: gauge });
    await expect.poll(() => row.innerText()).toContain('by the curve of');
    await expect.poll(() => row.innerText()).toContain(`${lowest.toFixed(1)} to`);
    await page.getByRole('link', { name: /^Aircraft/ }).click();
    await expect
      .poll(() => page.getByText('Fuel gauges:').innerText())
      .toMatch(/front tank calibrated .*next check due/);
  });
});

test('under a finger the rows of a fill test are 44 pixels high, and a screen in the sun has high contrast', async () => {
  await withWindow(loopbackHost, {}, async ({ page }) => {
    await openFuel(page);
    const session = await page.context().newCDPSession(page);
    await session.send('Emulation.setDeviceMetricsOverride', {
      width: 1024,
      height: 768,
      deviceScaleFactor: 1,
      mobile: true,
    });
    await session.send('Emulation.setTouchEmulationEnabled', { enabled: true, maxTouchPoints: 5 });
    expect(await page.evaluate(() => matchMedia('(pointer: coarse)').matches)).toBe(true);
    const row = page.locator('tr', { has: page.getByLabel('Pour 1, volume') });
    await expect.poll(async () => (await row.boundingBox())?.height ?? 0).toBeGreaterThanOrEqual(44);
    await fromPage(page, 'settings.put', { key: 'contrast', value: 'high', named: 'contrast' });
    await expect
      .poll(() => page.evaluate(() => getComputedStyle(document.body).backgroundColor))
      .toBe('rgb(255, 255, 255)');
    if (process.env['FUEL_TABLET_PNG'] !== undefined)
      await page.screenshot({ path: process.env['FUEL_TABLET_PNG'] });
  });
});
