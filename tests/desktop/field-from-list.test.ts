import { expect, test } from 'vitest';
import { inEveryHost, withFolder, withWindow } from './harness/with-window.ts';

const plain = (text: string) => text.replaceAll(/[\u2009\u2060]/g, '').replaceAll('\u00a0', ' ');

inEveryHost('A field from the list of airports', (host) => {
  test('is found as its name is typed, taken, corrected and marked as corrected, by keyboard', async () => {
    await withFolder(async (folder) => {
      await withWindow(host, { folder }, async ({ page }) => {
        await page.getByRole('link', { name: /^Weather/ }).click();
        await page.getByRole('button', { name: 'Add a field first' }).press('Enter');
        const search = page.getByRole('combobox', { name: 'Find it in the list of United States airports' });
        await search.pressSequentially('boulder munic');
        const first = page.getByRole('option').first();
        await expect
          .poll(async () => plain(await first.innerText()))
          .toMatch(/^KBDU Boulder Municipal Airport, CO/);
        expect(await search.getAttribute('aria-expanded')).toBe('true');
        await search.press('ArrowDown');
        await expect.poll(() => first.getAttribute('aria-selected')).toBe('true');
        expect(await search.getAttribute('aria-activedescendant')).toBe(await first.getAttribute('id'));
        await search.press('Enter');
        expect(await search.getAttribute('aria-expanded')).toBe('false');
        // OurAirports: 5 288 ft; the paved runway's heading comes from the places of its ends, the glider strip has none.
        await expect.poll(() => page.getByLabel('Elevation', { exact: true }).inputValue()).toBe('5288');
        expect(await page.getByLabel('True heading from 08', { exact: true }).inputValue()).toBe('90');
        const heading = page.getByLabel('True heading to take 08G/26G');
        await heading.fill('90');
        await heading.press('Enter');
        await expect
          .poll(() => page.getByLabel('True heading from 08G', { exact: true }).inputValue())
          .toBe('90');
        await page.getByRole('button', { name: 'Add the field' }).press('Enter');
        await expect
          .poll(() => page.getByRole('heading', { level: 1 }).innerText())
          .toBe('Boulder Municipal Airport has no weather station yet.');
        await page.getByLabel('Elevation', { exact: true }).fill('5300 ft');
        await page.getByLabel('Elevation', { exact: true }).press('Enter');
        await expect
          .poll(async () => plain(await page.locator('main').innerText()))
          .toMatch(/Corrected: elevation \(the list has 5288 ft\)/);
        expect(await page.locator('main').innerText()).toMatch(
          /Check against the current official publication/,
        );
        expect(await page.getByLabel('Time zone').inputValue()).toBe('America/Denver');
      });
      await withWindow(host, { folder }, async ({ page }) => {
        await page.getByRole('link', { name: /^Weather/ }).click();
        await expect
          .poll(async () => plain(await page.locator('main').innerText()))
          .toMatch(/Corrected: elevation \(the list has 5288 ft\)/);
      });
    });
  });
});
