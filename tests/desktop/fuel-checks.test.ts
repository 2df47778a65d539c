import { writeFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { exampleAircraft } from '../main/example-aircraft.ts';
import { exampleFillTest } from '../main/example-fill-test.ts';
import { fromPage } from './harness/from-page.ts';
import { loopbackHost } from './harness/loopback.ts';
import { inEveryHost, withWindow } from './harness/with-window.ts';
import { readPdfPage } from './pdf-lines.ts';

const heading = async (page: Page) =>
  (await page.getByRole('heading', { level: 1 }).innerText()).replaceAll('\u00a0', ' ');

/** The example's test of the front tank, its curve adopted. */
async function adopted(page: Page, stick: boolean): Promise<void> {
  await fromPage(page, 'aircraft.put', { aircraft: exampleAircraft() });
  const measured = exampleFillTest('may-test', 'front');
  for (const run of measured.runs)
    run.pours.forEach((pour, index) => {
      if (stick) pour.stickMm = 20 + 30 * (index + 1);
    });
  await fromPage(page, 'fillTest.put', { test: measured });
  const adopt = { tankId: 'front', testIds: ['may-test'], adoptedOn: '2026-05-10' };
  await fromPage(page, 'calibration.adopt', adopt);
  await page.getByRole('link', { name: /^Fuel/ }).click();
}

/** The field that has the cursor, by its label. */
const focused = (page: Page) =>
  page.evaluate(() =>
    document.activeElement instanceof HTMLInputElement
      ? document.activeElement.labels?.[0]?.textContent
      : null,
  );

/** Enter alone leads from each field to the next. */
async function type(
  page: Page,
  figures: readonly (readonly [label: string, figure: string])[],
): Promise<void> {
  for (const [label, figure] of figures) {
    await expect.poll(() => focused(page)).toBe(label);
    await page.keyboard.type(figure);
    await page.keyboard.press('Enter');
  }
}

inEveryHost('Checks of the gauge', (host) => {
  test('are logged by keyboard alone, judged on the chart, withdrawn and undone', async () => {
    await withWindow(host, {}, async ({ page }) => {
      await adopted(page, false);
      await page.getByRole('radio', { name: 'fill test' }).focus();
      await page.keyboard.press('ArrowRight');
      await page.keyboard.press('ArrowRight');
      await expect.poll(() => heading(page)).toBe('No check can be held against the curve yet.');

      await page.getByLabel('Day', { exact: true }).focus();
      await page.keyboard.press('Control+a');
      // 7/8 down to 3/8 is about 15 L by the example's pours; the last Enter logs it.
      await type(page, [
        ['Day', '12 sep 2026'],
        ['Read before', '7/8'],
        ['Read after', '3/8'],
        ['Flight time', '0:55'],
        ['Bought', '15.2'],
        ['Same state within ±', '0.8'],
      ]);
      await expect
        .poll(() => heading(page))
        .toBe('The one check agrees with the curve, the last of 12 September 2026.');
      await expect.poll(() => page.getByRole('row', { name: /^12 Sep 2026 7\/8 to 3\/8/ }).count()).toBe(1);
      // By hand: 15.2 L in 55 min.
      await expect.poll(() => page.locator('.side').innerText()).toContain('16.6');

      // The next one goes on from the readings: the day stays. The same ones with twice the fuel.
      await type(page, [
        ['Read before', '7/8'],
        ['Read after', '3/8'],
        ['Flight time', '0:55'],
        ['Bought', '33'],
        ['Same state within ±', '0.8'],
      ]);
      await expect.poll(() => heading(page)).toContain('The gauge no longer agrees: on 12 September 2026');
      expect(await heading(page)).toContain('Repeat the fill test between 3/8 and 7/8.');
      // Wherever the curve is used it says so now.
      const index = page.getByRole('link', { name: /^Fuel/ });
      await expect.poll(() => index.innerText()).toContain('front tank: checks no longer agree');
      await page.getByRole('radio', { name: 'fill test' }).click();
      await expect
        .poll(() => page.locator('.doubt').innerText())
        .toContain('plan by the dipstick and the time flown');
      await page.getByRole('link', { name: /^Aircraft/ }).click();
      await expect
        .poll(() => page.getByText('Fuel gauges:').innerText())
        .toMatch(/front tank calibrated 10 May 2026, but its checks no longer agree: repeat the fill test/);
      await index.click();
      await page.getByRole('radio', { name: 'checks' }).click();

      await page.getByRole('button', { name: 'Undo', exact: true }).first().click();
      await expect.poll(() => heading(page)).toContain('The one check agrees');
      await page.getByRole('button', { name: 'Take in' }).first().press('Enter');
      await page.getByRole('button', { name: 'Adopt the curve with this check' }).press('Enter');
      await expect.poll(() => page.locator('.side').innerText()).toContain('part of the curve');
    });
  });
});

test('gauge and stick are held against each other, and its scale is printed to length', async () => {
  await withWindow(loopbackHost, {}, async ({ page }) => {
    await adopted(page, true);
    await page.getByRole('radio', { name: 'dipstick' }).click();
    await page.getByRole('button', { name: 'Add a dipstick' }).click();
    await page.getByLabel('The gauge reads, before the flight').fill('1/2');
    await page.keyboard.press('Enter');
    // Fourth pour, 20 L: 1/2 on the gauge and 140 mm on the stick.
    await page.getByLabel('The stick reads', { exact: true }).fill('14 cm');
    await page.keyboard.press('Enter');
    await expect.poll(() => heading(page)).toMatch(/^Gauge and dipstick agree: plan on 1\d\.\d L/);
    await page.getByLabel('The stick reads', { exact: true }).fill('60');
    await page.keyboard.press('Enter');
    await expect.poll(() => heading(page)).toMatch(/^Gauge and dipstick do not agree: .*by the dipstick/);

    await page.getByRole('button', { name: 'Make a scale for it' }).click();
    await expect.poll(() => page.getByRole('img', { name: 'A bar of 100 mm' }).count()).toBe(1);
    const bytes = await page.pdf({ format: 'A4' });
    if (process.env['STICK_SCALE_PDF'] !== undefined) writeFileSync(process.env['STICK_SCALE_PDF'], bytes);
    const { levelLinesMm, uprightLinesMm, text } = await readPdfPage(bytes);
    // A printer's rule reads tenths of a millimetre. The bar, and the two pieces of a stick of 300 mm.
    const near = (lengths: number[], mm: number) =>
      lengths.filter((length) => Math.abs(length - mm) < 0.1).length;
    expect(near(levelLinesMm, 100)).toBe(1);
    expect(near(uprightLinesMm, 180)).toBe(1);
    expect(near(uprightLinesMm, 120)).toBe(1);
    for (const words of ['Front tank', 'read to 5 mm', '9 May 2026', '20 L'])
      expect(text.replace(/\s+/g, ' ')).toContain(words);
  });
});
