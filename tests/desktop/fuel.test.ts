import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { exampleAircraft } from '../main/example-aircraft.ts';
import { fromPage } from './harness/from-page.ts';
import { inEveryHost, withFolder, withWindow } from './harness/with-window.ts';

/** An invented page of a notebook: what was poured, in the units in which it was written down, and what was read. */
const notebook = [
  ['5', 'E'],
  ['5', '1/8'],
  ['5', '3/8'],
  ['5 L', '1/2'],
  ['1.5 gal', '5/8'],
  ['5', '7/8'],
  ['5', 'F'],
] as const;

const heading = (page: Page) => page.getByRole('heading', { level: 1 });

/** The figure to plan on as the answer says it, litres. */
async function planL(page: Page): Promise<number> {
  return Number(/plan on ([\d.]+)/.exec(await heading(page).innerText())?.[1]);
}

inEveryHost('A fill test', (host) => {
  test('is typed by keyboard alone, draws a curve, is adopted, undone, and found again after a restart', async () => {
    await withFolder(async (folder) => {
      await withWindow(host, { folder }, async ({ page }) => {
        await fromPage(page, 'aircraft.put', { aircraft: exampleAircraft() });
        await page.getByRole('link', { name: /^Fuel/ }).click();
        await expect.poll(() => heading(page).innerText()).toBe('No fill test of the front tank yet.');
        await page.getByRole('button', { name: 'Start a fill test' }).press('Enter');
        await page.getByLabel('Pour 1, volume').focus();
        for (const [index, [volume, reading]] of notebook.entries()) {
          // Enter alone leads from each field to the next.
          await expect.poll(() => focused(page)).toBe(`Pour ${String(index + 1)}, volume`);
          await page.keyboard.type(volume);
          await page.keyboard.press('Enter');
          await expect.poll(() => focused(page)).toBe(`Pour ${String(index + 1)}, gauge reads`);
          await page.keyboard.type(reading);
          await page.keyboard.press('Enter');
        }
        // By hand: 5, 10, 15, 20 L and 20 + 1.5 x 3.785411784 = 25.678 L at 5/8. The figure to plan on lies below what
        // was poured, by less than 6 L with a container that was not written down; read to the nearest eighth, lower still.
        await page.getByRole('radio', { name: 'needle on the mark' }).click();
        await setReading(page, '5/8');
        await expect.poll(() => heading(page).innerText()).toMatch(/^Needle on 5\/8: plan on /);
        const onMarkL = await planL(page);
        expect(onMarkL).toBeLessThan(25.678);
        expect(onMarkL).toBeGreaterThan(19.678);
        await page.getByRole('radio', { name: /to the nearest/ }).click();
        await expect.poll(() => planL(page)).toBeLessThan(onMarkL);
        // The other way round.
        await page.getByRole('radio', { name: 'for a flight' }).click();
        await page.getByLabel('Fuel to plan on').fill(String(await planL(page)));
        await expect
          .poll(() => page.locator('.both-ways').innerText())
          .toContain('it must read at least 5/8');
        await page.getByRole('radio', { name: 'fill test' }).click();

        await page.getByRole('button', { name: 'Adopt this curve' }).click();
        await expect.poll(() => page.getByRole('row', { name: /counts now/ }).count()).toBe(1);
        await page.getByRole('button', { name: 'Undo', exact: true }).first().click();
        await expect.poll(() => page.getByRole('row', { name: /withdrawn/ }).count()).toBe(1);
        await page.getByRole('button', { name: 'Redo', exact: true }).first().click();
        await expect.poll(() => page.getByRole('row', { name: /counts now/ }).count()).toBe(1);
      });
      await withWindow(host, { folder }, async ({ page }) => {
        await page.getByRole('link', { name: /^Fuel/ }).click();
        await expect.poll(() => page.getByLabel('Pour 5, volume').inputValue()).toBe('5.68');
        await expect.poll(() => page.getByLabel('Pour 6, gauge reads').inputValue()).toBe('7/8');
        await expect.poll(() => page.getByRole('row', { name: /counts now/ }).count()).toBe(1);
      });
    });
  });

  test('loses no key of fingers that do not wait for the library', async () => {
    await withWindow(host, {}, async ({ page }) => {
      await fromPage(page, 'aircraft.put', { aircraft: exampleAircraft() });
      await page.getByRole('link', { name: /^Fuel/ }).click();
      await page.getByRole('button', { name: 'Start a fill test' }).press('Enter');
      // What was pressed is gone; the hands go on where a test begins.
      await expect
        .poll(() => page.evaluate(() => document.activeElement?.textContent))
        .toContain('Before the first pour');
      await page.getByLabel('Pour 1, volume').focus();
      for (const [volume, reading] of notebook) {
        await page.keyboard.type(volume);
        await page.keyboard.press('Enter');
        await page.keyboard.type(reading);
        await page.keyboard.press('Enter');
      }
      await expect.poll(() => focused(page)).toBe('Pour 8, volume');
      const values = (of: string) =>
        page
          .locator(`input[aria-label^="Pour"][aria-label$="${of}"]`)
          .evaluateAll((fields) => fields.map((field) => (field as HTMLInputElement).value));
      await expect.poll(() => values('gauge reads')).toEqual([...notebook.map(([, reading]) => reading), '']);
      // Each shows what was typed until it is saved.
      await expect.poll(() => values('volume')).toEqual(['5', '5', '5', '5', '5.68', '5', '5', '']);
    });
  });

  test('says what is wrong with a figure, keeps it, and sets a row aside with its reason', async () => {
    await withWindow(host, {}, async ({ page }) => {
      await fromPage(page, 'aircraft.put', { aircraft: exampleAircraft() });
      await page.getByRole('link', { name: /^Fuel/ }).click();
      await page.getByRole('button', { name: 'Start a fill test' }).click();
      const volume = page.getByLabel('Pour 1, volume');
      await volume.fill('5 kg');
      await volume.press('Enter');
      await expect.poll(() => page.locator('.refusal').innerText()).toContain('a volume was expected');
      expect(await volume.inputValue()).toBe('5 kg');
      await volume.fill('60');
      await volume.press('Enter');
      const reading = page.getByLabel('Pour 1, gauge reads');
      await reading.fill('9/8');
      await reading.press('Enter');
      await expect.poll(() => page.locator('.refusal').innerText()).toContain('outside the scale');
      await reading.fill('7/8');
      await reading.press('Enter');
      // The front tank holds 50 L, of which 1.5 are unusable: 60 L are 11.5 L too many.
      await expect
        .poll(() => page.locator('tr.says').innerText())
        .toContain('is 11.5\u00a0L more than the tank holds');
      await page.getByLabel('Pour 1: set aside because').selectOption('misread');
      await expect.poll(() => page.getByRole('row', { name: /^1 .*misread/ }).count()).toBe(1);
    });
  });

  test('moves its reading by the grip on the gauge, with keys and with the pointer', async () => {
    await withWindow(host, {}, async ({ page }) => {
      await fromPage(page, 'aircraft.put', { aircraft: exampleAircraft() });
      await page.getByRole('link', { name: /^Fuel/ }).click();
      await page.getByRole('button', { name: 'Start a fill test' }).click();
      for (const [index, [volume, reading]] of notebook.entries()) {
        await page.getByLabel(`Pour ${String(index + 1)}, volume`).fill(volume);
        await page.keyboard.press('Enter');
        await expect.poll(() => focused(page)).toBe(`Pour ${String(index + 1)}, gauge reads`);
        await page.keyboard.type(reading);
        await page.keyboard.press('Enter');
        await expect.poll(() => focused(page)).toBe(`Pour ${String(index + 2)}, volume`);
      }
      const grip = page.getByRole('slider', { name: 'Gauge reading' });
      await grip.focus();
      await grip.press('ArrowRight');
      await expect.poll(() => heading(page).innerText()).toContain('Reading 5/8 to the nearest eighth');
      await grip.press('Home');
      await expect.poll(() => heading(page).innerText()).toContain('At E: plan on 0');
      await grip.hover();
      const box = await grip.boundingBox();
      const plot = await page.locator('svg.figure').boundingBox();
      if (box === null || plot === null) throw new Error('the plot is not there');
      await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2);
      await page.mouse.down();
      await page.mouse.move(plot.x + plot.width, box.y + 5, { steps: 4 });
      await page.mouse.up();
      await expect.poll(() => heading(page).innerText()).toContain('At F: plan on');
    });
  });
});

function focused(page: Page): Promise<string | null> {
  return page.evaluate(() => document.activeElement?.getAttribute('aria-label') ?? null);
}

async function setReading(page: Page, reading: string): Promise<void> {
  const field = page.getByLabel('The gauge reads', { exact: true });
  await field.fill(reading);
  await field.press('Enter');
}
