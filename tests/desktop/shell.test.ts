import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { exampleAircraft } from '../main/example-aircraft.ts';
import { exampleFillTest } from '../main/example-fill-test.ts';
import { fromPage } from './harness/from-page.ts';
import { inEveryHost, withFolder, withWindow } from './harness/with-window.ts';

inEveryHost('The shell', (host) => {
  test('leads a newcomer in the demo to each of the three tasks, until the list is put away', async () => {
    await withWindow(host, { isDemo: true }, async ({ page }) => {
      for (const [task, screen] of [
        ['Calibrate the fuel gauge after a fill test', 'Fuel'],
        ['Plan the best time of day for a hot-field departure', 'Weather'],
        ['Review loading scenarios with passengers', 'Loading'],
      ] as const) {
        await page.getByRole('link', { name: task }).click();
        await expect
          .poll(() => page.locator('nav a[aria-current="page"]').textContent())
          .toMatch(new RegExp(`^${screen}`));
        await page.getByRole('link', { name: /^Aircraft/ }).click();
      }
      await page.getByRole('button', { name: 'Put away' }).click();
      await page.getByRole('link', { name: /^Fuel/ }).click();
      await page.getByRole('link', { name: /^Aircraft/ }).click();
      await page.getByRole('heading', { name: 'Empty weight' }).waitFor();
      expect(await page.getByRole('heading', { name: 'To try in this copy of the demo' }).count()).toBe(0);
    });
  });

  test('saves a plot as SVG and as PNG under the page’s own policy', async () => {
    await withWindow(host, {}, async ({ page }) => {
      await fromPage(page, 'aircraft.put', { aircraft: exampleAircraft() });
      await fromPage(page, 'fillTest.put', { test: exampleFillTest('may-test', 'front') });
      await page.getByRole('link', { name: /^Fuel/ }).click();
      await page.getByRole('slider', { name: 'Gauge reading' }).waitFor();
      const save = async (ending: 'SVG' | 'PNG') => {
        const [download] = await Promise.all([
          page.waitForEvent('download'),
          page.getByRole('button', { name: `Save as ${ending}` }).click(),
        ]);
        expect(download.suggestedFilename()).toBe(`fuel-front-tank.${ending.toLowerCase()}`);
        return readFileSync(await download.path());
      };
      const svg = (await save('SVG')).toString('utf8');
      expect(svg).toContain('planning line');
      expect(svg).not.toContain('var(--');
      const png = await save('PNG');
      // The signature of the format, and its width and height as big-endian words (ISO/IEC 15948, 5.2 and 11.2.2).
      expect(png.subarray(0, 8).toString('hex')).toBe('89504e470d0a1a0a');
      expect(png.readUInt32BE(16)).toBeGreaterThan(800);
      expect(png.length).toBeGreaterThan(10_000);
    });
  });

  test('prints one white sheet from a dark window, its plot inside the paper and no verbs on it', async () => {
    await withWindow(host, {}, async ({ page }) => {
      await fromPage(page, 'aircraft.put', { aircraft: exampleAircraft() });
      await fromPage(page, 'fillTest.put', { test: exampleFillTest('may-test', 'front') });
      await fromPage(page, 'settings.put', { key: 'theme', value: 'dark', named: 'dark' });
      await page.getByRole('link', { name: /^Fuel/ }).click();
      await page.getByRole('slider', { name: 'Gauge reading' }).waitFor();
      await expect.poll(() => page.evaluate(() => document.documentElement.dataset['theme'])).toBe('dark');
      await page.emulateMedia({ media: 'print' });
      const paper = await page.evaluate(() => {
        const figure = document.querySelector('svg.figure')?.getBoundingClientRect();
        return {
          ground: getComputedStyle(document.body).backgroundColor,
          ink: getComputedStyle(document.body).color,
          figureRight: figure?.right ?? Infinity,
          width: document.documentElement.clientWidth,
          verbs: [...document.querySelectorAll('button.do, .btn, nav, .grip')].filter(
            (each) => each.getClientRects().length > 0,
          ).length,
        };
      });
      expect(paper).toMatchObject({ ground: 'rgb(255, 255, 255)', ink: 'rgb(0, 0, 0)', verbs: 0 });
      expect(paper.figureRight).toBeLessThanOrEqual(paper.width);
    });
  });

  test('keeps theme, size of the text and screen over a restart, and undoes them by keyboard', async () => {
    const look = () => ({
      theme: document.documentElement.dataset['theme'],
      size: getComputedStyle(document.documentElement).fontSize,
    });
    await withFolder(async (folder) => {
      await withWindow(host, { folder }, async ({ page }) => {
        await page.getByRole('link', { name: /^Settings/ }).click();
        await page.getByRole('radio', { name: 'dark' }).click();
        await page.getByRole('radio', { name: '150 %' }).click();
        await expect.poll(() => page.evaluate(look)).toEqual({ theme: 'dark', size: '24px' });
      });
      await withWindow(host, { folder }, async ({ page }) => {
        await page.getByRole('heading', { level: 1, name: 'Settings' }).waitFor();
        await expect.poll(() => page.evaluate(look)).toEqual({ theme: 'dark', size: '24px' });
        await page.getByRole('radio', { name: '150 %' }).focus();
        await page.keyboard.press('Control+z');
        await page.keyboard.press('Control+z');
        await expect.poll(() => page.evaluate(look)).toEqual({ theme: 'light', size: '16px' });
        await page.keyboard.press('Control+Shift+z');
        await expect.poll(() => page.evaluate(look)).toEqual({ theme: 'dark', size: '16px' });
        await page.keyboard.press('Alt+1');
        await expect
          .poll(() => page.getByRole('link', { name: /^Aircraft/ }).getAttribute('aria-current'))
          .toBe('page');
      });
    });
  });

  test('puts back a backup in the place of a damaged library, which is kept', async () => {
    await withFolder(async (folder) => {
      const own = join(folder, 'own.tarewing');
      await withWindow(host, { folder, libraryPath: own }, async ({ page }) => {
        await fromPage(page, 'aircraft.put', { aircraft: exampleAircraft() });
        await fromPage(page, 'library.backUp', {});
      });
      writeFileSync(own, readFileSync(own).fill(0x21, 0, 4096));
      await withWindow(host, { folder, libraryPath: own }, async ({ page }) => {
        await page.getByRole('heading', { name: 'The library could not be opened.' }).waitFor();
        await page.getByRole('button', { name: 'Put back' }).first().click();
        await page.getByRole('button', { name: 'Put it back' }).click();
        await page.getByRole('link', { name: /^Settings/ }).waitFor();
        await expect.poll(() => page.locator('nav').innerText()).toContain('Heron two-seater');
      });
    });
  });

  test('says why a file is no library, leaves it as it is, and opens another', async () => {
    await withFolder(async (folder) => {
      const letter = join(folder, 'letter.tarewing');
      writeFileSync(letter, 'Dear Mara, the rear tank reads low again. '.repeat(200));
      const before = readFileSync(letter, 'utf8');
      await withWindow(host, { folder, libraryPath: join(folder, 'own.tarewing') }, async ({ page }) => {
        await page.getByRole('link', { name: /^Settings/ }).waitFor();
      });
      await withWindow(host, { folder, libraryPath: letter }, async ({ page }) => {
        await page.getByRole('heading', { name: 'The library could not be opened.' }).waitFor();
        expect(await page.locator('.refusal').first().innerText()).not.toBe('');
        await page.getByRole('button', { name: 'own.tarewing' }).click();
        await expect.poll(() => page.locator('footer').innerText()).toContain('own.tarewing');
        await page.getByRole('link', { name: /^Settings/ }).click();
        await expect.poll(() => page.locator('body').innerText()).toContain(join(folder, 'own.tarewing'));
      });
      expect(readFileSync(letter, 'utf8')).toBe(before);
    });
  });
});
