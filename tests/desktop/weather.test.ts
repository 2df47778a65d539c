import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { inEveryHost, withFolder, withWindow } from './harness/with-window.ts';

const sample = (name: string) => fileURLToPath(new URL(`../samples/weather/${name}`, import.meta.url));
const heading = (page: Page) => page.getByRole('heading', { level: 1 });
/** Figures with the spaces of the look made plain. */
const plain = (text: string) => text.replaceAll(/[\u2009\u2060]/g, '').replaceAll('\u00a0', ' ');

const chooser = (page: Page) => page.getByLabel('Weather files', { exact: true });

inEveryHost('Weather', (host) => {
  test('a real file is looked through, imported, given a field, read, found after a restart, repeated and taken back', async () => {
    await withFolder(async (folder) => {
      await withWindow(host, { folder }, async ({ page, chooseFiles }) => {
        await page.getByRole('link', { name: /^Weather/ }).click();
        await expect.poll(() => heading(page).innerText()).toBe('No weather yet.');
        await chooseFiles(chooser(page), [sample('725300-94846-2016.gz')]);
        // Read off the sample: 1500 lines, 1 January to 3 March 2016; NOAA's list has the station's name and place.
        await expect
          .poll(async () => plain(await page.locator('.files').innerText()))
          .toMatch(/1500 observations, 1 January 2016 to 3 March 2016/);
        expect(plain(await page.locator('.files').innerText())).toMatch(
          // 201.8 m are 662 ft.
          /Chicago O'Hare International Airport, IL \(KORD\), 662 ft/,
        );
        await page.getByRole('button', { name: 'Import', exact: true }).press('Enter');
        await expect
          .poll(() => heading(page).innerText())
          .toMatch(/is imported\. Say for which field it stands\.$/);
        await page.getByLabel('Name').fill('Lake strip');
        await page.getByLabel('Name').press('Enter');
        await page.getByRole('button', { name: 'Add the field' }).press('Enter');
        // Two months of one winter are too few for nine days in ten, and enough for medians, from one year only.
        await expect
          .poll(() => heading(page).innerText())
          .toMatch(
            /^Too few days: the fullest hour has \d+ of the 100 that nine days in ten needs, with 21 days on either side\. Import more years, or ask for one day in two\.$/,
          );
        await page.getByRole('textbox', { name: 'Departure date' }).fill('20 January 2026');
        await page.getByRole('textbox', { name: 'Departure date' }).press('Enter');
        await page.getByLabel('Drawn').selectOption('0.5');
        await expect
          .poll(() => heading(page).innerText())
          .toMatch(/^Between \d\d:\d\d and \d\d:\d\d local, one day in two .* From one year only/);
        expect(await page.locator('.block').innerText()).toMatch(/sea-level pressure, the least certain way/);
      });
      await withWindow(host, { folder }, async ({ page, chooseFiles }) => {
        await page.getByRole('link', { name: /^Weather/ }).click();
        // What was asked is found again.
        await expect.poll(() => heading(page).innerText()).toMatch(/^Between .* one day in two/);
        // By keyboard: the hour and date in hand, each with its figures and days. Half the days needs 20: ten days to
        // either side of the 17th of January, or a little more for hours that the file lacks.
        const hour = page.getByRole('slider', { name: 'Hour of the day' });
        const date = page.getByRole('textbox', { name: 'Date', exact: true });
        await date.fill('16 January 2026');
        await date.press('Enter');
        await page.getByRole('slider', { name: 'Date' }).press('ArrowRight');
        await expect.poll(() => date.inputValue()).toBe('17 January 2026');
        await hour.press('Home');
        await hour.press('ArrowRight');
        await expect
          .poll(() => hour.getAttribute('aria-valuetext'))
          .toMatch(/^01:00\. 01:00: .* or less on half the days; 2\d days of 1 year$/);
        // The single observations behind that hour, the worst first, and this morning among them.
        await page.getByRole('radio', { name: 'days', exact: true }).click();
        await expect.poll(() => page.locator('.side').innerText()).toMatch(/days, the worst first/);
        expect(await page.locator('.side tbody tr').count()).toBeGreaterThanOrEqual(20);
        expect(await page.locator('.side').innerText()).toMatch(/Too few years to tell whether/);
        await page.getByRole('radio', { name: 'today', exact: true }).click();
        await page
          .getByRole('textbox', { name: 'Report' })
          .fill('METAR KORD 171451Z 24008KT 10SM CLR M02/M07 A3012 RMK AO2 SLP204 T10221067');
        await page.getByRole('textbox', { name: 'Report' }).press('Enter');
        await expect
          .poll(() => page.getByRole('textbox', { name: 'Temperature' }).inputValue())
          .toMatch(/2\.2$/);
        await expect
          .poll(async () => plain(await page.locator('.side').innerText()))
          .toMatch(/200 days around the date are needed to choose 100 from/);
        // Temperature instead of density altitude, through the same pictures.
        await page.getByLabel('Figure', { exact: true }).selectOption('temperature');
        await expect.poll(() => page.locator('.day svg').innerHTML()).toMatch(/temperature, /);
        await page.getByRole('radio', { name: 'files' }).click();
        await chooseFiles(chooser(page), [sample('725300-94846-2016.gz')]);
        await expect
          .poll(() => page.locator('.files').innerText())
          .toMatch(/725300-94846-2016\.gz: in the library already, byte for byte/);
        expect(await page.getByRole('button', { name: 'Import', exact: true }).count()).toBe(0);
        await page.getByRole('button', { name: 'Leave this file out' }).click();
        await page.getByRole('button', { name: 'Take back 725300-94846-2016.gz' }).click();
        await page.getByRole('button', { name: 'Take it back' }).click();
        await expect.poll(() => heading(page).innerText()).toMatch(/has no observations/);
      });
    });
  });

  test('a file that cannot be read says what it is, and one that tells no place asks for it', async () => {
    await withFolder(async (folder) => {
      const files = [
        ['page.csv', '<!DOCTYPE html><title>Not found</title>'],
        [
          'strip.csv',
          'station,valid,tmpf,dwpf,alti\nQQQ,2020-01-01 00:53,50.00,40.00,29.92\nQQQ,2020-01-01 01:53,M,40.00,29.92\n',
        ],
      ].map(([name = '', content = '']) => {
        const path = join(folder, name);
        writeFileSync(path, content);
        return path;
      });
      await withWindow(host, { folder }, async ({ page, chooseFiles }) => {
        await page.getByRole('link', { name: /^Weather/ }).click();
        await expect.poll(() => heading(page).innerText()).toBe('No weather yet.');
        await chooseFiles(chooser(page), files);
        await expect.poll(() => page.locator('.files').innerText()).toMatch(/It is a web page/);
        await expect.poll(() => page.locator('.files').innerText()).toMatch(/not known from the file/);
        await expect
          .poll(() => page.locator('main').innerText())
          .toMatch(/Say which station strip\.csv is from\./);
        for (const [label, text] of [
          ["Station's name", 'Strip mast'],
          ['Latitude', '39 12 N'],
          ['Longitude', '105.6 W'],
          ['Elevation', '4500 ft'],
        ] as const) {
          await page.getByLabel(label).fill(text);
          await page.getByLabel(label).press('Enter');
        }
        await page.getByRole('button', { name: 'Take this place' }).click();
        await page.getByRole('button', { name: 'Import', exact: true }).click();
        await expect
          .poll(async () => plain(await page.getByRole('status', { name: 'Notices' }).innerText()))
          .toMatch(/strip\.csv: 2 new observations of 2/);
      });
    });
  });
});
