import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { inEveryHost, withFolder, withWindow } from './harness/with-window.ts';

const sample = fileURLToPath(new URL('../samples/weather/EWR_LGA_2013_excerpt.csv', import.meta.url));
const plain = (text: string) => text.replaceAll(/[\u2009\u2060]/g, '').replaceAll('\u00a0', ' ');

inEveryHost('A table of no known kind', (host) => {
  test('is read as its columns are proposed, for both of its stations; bare reports ask for their month', async () => {
    await withFolder(async (folder) => {
      const bare = join(folder, 'bare.txt');
      writeFileSync(
        bare,
        'METAR KDEN 010053Z 01006KT 9SM CLR M10/M12 A2995\nMETAR KDEN 010153Z 01006KT 9SM CLR M10/M12 A2996\n',
      );
      await withWindow(host, { folder }, async ({ page, chooseFiles }) => {
        const files = page.locator('.files');
        await page.getByRole('link', { name: /^Weather/ }).click();
        await chooseFiles(page.getByLabel('Weather files', { exact: true }), [sample, bare]);
        // The header's own words; temperatures above 50 are no degC in New York's winter.
        const temperature = page.getByLabel('What temp is', { exact: true });
        await expect.poll(() => temperature.inputValue()).toBe('temperature');
        expect(await page.getByLabel('Unit of temp', { exact: true }).inputValue()).toBe('degF');
        // Without a temperature it cannot be read, and says so.
        await temperature.selectOption('not used');
        await expect.poll(() => files.innerText()).toMatch(/Say which column is the temperature\./);
        await temperature.selectOption('temperature');
        await page.getByLabel('Unit of temp', { exact: true }).selectOption('degF');
        await page.getByRole('button', { name: 'Read it so' }).first().press('Enter');
        await expect
          .poll(async () => plain(await files.innerText()))
          .toMatch(/EWR_LGA_2013_excerpt\.csv has rows of 2 stations/);
        await page.getByRole('button', { name: 'Read the others too' }).press('Enter');
        await expect.poll(async () => plain(await files.innerText())).toMatch(/\(KEWR\)[\s\S]*\(KLGA\)/);

        await page.getByLabel('Year', { exact: true }).fill('2013');
        await page.getByLabel('Year', { exact: true }).press('Enter');
        await page.getByLabel('Month, 1 to 12').fill('1');
        await page.getByLabel('Month, 1 to 12').press('Enter');
        await page.getByRole('button', { name: 'Read it so' }).press('Enter');
        await expect
          .poll(async () => plain(await files.innerText()))
          .toMatch(/2 observations, 1 January 2013\./);
        await page.getByRole('button', { name: 'Import 3 files' }).press('Enter');
        await expect
          .poll(async () => plain(await page.getByRole('status', { name: 'Notices' }).innerText()))
          .toMatch(/3 files: (\d+) new observations of \1\./);
      });
    });
  });
});
