import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { gunzipSync, gzipSync } from 'node:zlib';
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { inEveryHost, withFolder, withWindow } from './harness/with-window.ts';

const lines = gunzipSync(
  readFileSync(fileURLToPath(new URL('../samples/weather/725300-94846-2016.gz', import.meta.url))),
)
  .toString('latin1')
  .trimEnd()
  .split('\n');
/** The sample's two months, put into another year. */
const year = (of: number) => lines.map((line) => String(of) + line.slice(4)).join('\n');

const plain = (text: string) => text.replaceAll(/[\u2009\u2060]/g, '').replaceAll('\u00a0', ' ');
const chooser = (page: Page) => page.getByLabel('Folder of weather files', { exact: true });
const pending = async (page: Page) => plain(await page.locator('.files').innerText());
const notices = async (page: Page) => plain(await page.getByRole('status', { name: 'Notices' }).innerText());
const importVerb = (page: Page) => page.getByRole('button', { name: /^Import \d+ files$/ });

inEveryHost('A folder of weather files', (host) => {
  test('six years are looked through and imported by one act, add nothing again, and are taken back by one act', async () => {
    await withFolder(async (folder) => {
      const years = join(folder, 'years');
      mkdirSync(years);
      for (const of of [2008, 2009, 2010, 2011, 2012, 2013])
        writeFileSync(join(years, `725300-94846-${String(of)}.gz`), gzipSync(year(of)));
      writeFileSync(join(years, 'notes.txt'), 'fetched in spring\nfrom the archive\n');
      await withWindow(host, { folder }, async ({ page, chooseFiles }) => {
        await page.getByRole('link', { name: /^Weather/ }).click();
        await chooseFiles(chooser(page), [years]);
        await expect.poll(() => pending(page)).toMatch(/6 files\n/);
        const summary = await pending(page);
        // Of each year 1,500 lines but for the 24 of 29 February in the four that have none: 4 x 1,476 + 2 x 1,500.
        expect(summary).toMatch(/8904 observations, 1 January 2008 to 3 March 2013/);
        expect(summary).toMatch(/Chicago O'Hare International Airport, IL \(KORD\)/);
        expect(summary).toMatch(/notes\.txt was not read\. What is in it is not known here/);
        await importVerb(page).press('Enter');
        await expect.poll(() => notices(page)).toMatch(/6 files: 8904 new observations of 8904/);
      });
      await withWindow(host, { folder }, async ({ page, chooseFiles }) => {
        await page.getByRole('link', { name: /^Weather/ }).click();
        await chooseFiles(chooser(page), [years]);
        await expect.poll(() => pending(page)).toMatch(/6 files: in the library already, byte for byte/);
        expect(await importVerb(page).count()).toBe(0);
        await page.getByRole('button', { name: 'Leave them out' }).click();
        await page.getByRole('button', { name: 'Leave this file out' }).click();
        await page.getByRole('button', { name: 'Take back 6 files' }).click();
        await page.getByRole('button', { name: 'Take them back' }).click();
        await expect.poll(() => notices(page)).toMatch(/6 files were taken back: 8904 observations/);
      });
    });
  });

  test('cancelled half way, nothing of any file is kept, and they can be imported after all', async () => {
    await withFolder(async (folder) => {
      const years = join(folder, 'centuries');
      mkdirSync(years);
      const century = Array.from({ length: 90 }, (_, at) => year(1910 + at)).join('\n');
      for (const part of [1, 2, 3, 4, 5, 6])
        writeFileSync(join(years, `725300-94846-${String(part)}`), `${century}\n${'\n'.repeat(part)}`);
      await withWindow(host, { folder }, async ({ page, chooseFiles }) => {
        await page.getByRole('link', { name: /^Weather/ }).click();
        await chooseFiles(chooser(page), [years]);
        await expect.poll(() => pending(page), { timeout: 30_000 }).toMatch(/6 files\n/);
        await importVerb(page).click();
        const progress = page.getByRole('progressbar', { name: 'Import of 6 files' });
        await expect
          .poll(async () => Number(await progress.getAttribute('aria-valuenow')))
          .toBeGreaterThan(5);
        await page.getByRole('button', { name: 'Cancel, keep nothing' }).click();
        await expect
          .poll(() => notices(page))
          .toMatch(/Reading 6 files was cancelled\. Nothing of them was kept; the library is as it was\./);
        expect(await page.getByRole('button', { name: /^Take back/ }).count()).toBe(0);
        // They are still at hand.
        await expect.poll(() => importVerb(page).count()).toBe(1);
      });
      await withWindow(host, { folder }, async ({ page }) => {
        await page.getByRole('link', { name: /^Weather/ }).click();
        await expect.poll(() => page.getByRole('heading', { level: 1 }).innerText()).toBe('No weather yet.');
      });
    });
  });
});
