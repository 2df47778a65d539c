import { expect, test } from 'vitest';
import type { Page } from 'playwright-core';
import { inEveryHost, withFolder, withWindow } from './harness/with-window.ts';

/** Asks again until it is so: other programs may be using the machine. */
function soon<T>(look: () => Promise<T>) {
  return expect.poll(look, { timeout: 8_000 });
}
const focusedLabel = (page: Page) =>
  page.evaluate(() => document.activeElement?.getAttribute('aria-label') ?? '');

/** Type a figure and press Enter: the cursor goes on by itself. */
async function figures(page: Page, texts: string[], next: string): Promise<void> {
  for (const text of texts) {
    const before = await focusedLabel(page);
    await page.keyboard.type(text);
    await page.keyboard.press('Enter');
    await soon(() => focusedLabel(page)).not.toBe(before);
  }
  await soon(() => focusedLabel(page)).toBe(next);
}

async function press(page: Page, name: string): Promise<void> {
  await page.getByRole('button', { name, exact: true }).focus();
  await page.keyboard.press('Enter');
}

const valueOf = (page: Page, label: string) => page.getByLabel(label, { exact: true }).inputValue();

inEveryHost('The manual’s take-off table', (host) => {
  test('is typed row by row, asked about where it cannot be, pasted, undone, and there after a restart', async () => {
    await withFolder(async (folder) => {
      await withWindow(host, { folder }, async ({ page }) => {
        await page.getByRole('link', { name: /^Aircraft/ }).click();
        await press(page, 'Enter an aeroplane');
        await press(page, 'Add a row');
        await soon(() => focusedLabel(page)).toBe('mass of a new row, take-off');

        // The first row in full; the next ones carry on its mass and altitude.
        await figures(page, ['600', '0', '0', '150', '245'], 'temperature of a new row, take-off');
        await soon(() => valueOf(page, 'mass of a new row, take-off')).toBe('600');
        await figures(page, ['15', '170', '280'], 'temperature of a new row, take-off');

        // A roll longer than the whole is refused at its field, and what was typed is kept.
        await figures(page, ['30', '400'], 'over 50 ft of row 3, take-off');
        await page.keyboard.type('330');
        await page.keyboard.press('Enter');
        const over = page.getByLabel('over 50 ft of row 3, take-off', { exact: true });
        await soon(() => over.getAttribute('aria-invalid')).toBe('true');
        await soon(() => page.getByText('The ground roll in row 3 is longer than').count()).toBe(1);
        await soon(() => over.inputValue()).toBe('330');

        // Over 50 ft the same 270 m as a shorter row would be suspected: the figure falls although it is hotter.
        await page.keyboard.press('Escape');
        await page.getByLabel('ground roll of row 3, take-off', { exact: true }).focus();
        await page.keyboard.press('ControlOrMeta+A');
        await page.keyboard.type('195');
        await page.keyboard.press('Enter');
        await soon(() => focusedLabel(page)).toBe('over 50 ft of row 3, take-off');
        await page.keyboard.type('270');
        await page.keyboard.press('Enter');
        await soon(() => page.getByText('although it is hotter').count()).toBe(1);
        await press(page, 'Correct it');
        await soon(() => focusedLabel(page)).toBe('over 50 ft of row 3, take-off');
        await page.keyboard.type('330');
        await page.keyboard.press('Enter');
        await soon(() => page.getByText('although it is hotter').count()).toBe(0);

        // The rest from a spreadsheet, with one slip first.
        await press(page, 'Paste rows from a spreadsheet');
        const area = page.locator('textarea');
        await area.fill('600\t2000\t0\t18o\t300\n\t\t30\t240\t415');
        await soon(() => page.getByText('Line 1, ground roll:').count()).toBe(1);
        await area.fill('600\t2000\t0\t180\t300\n\t\t30\t240\t415');
        await press(page, 'Take these rows');
        await soon(() => valueOf(page, 'over 50 ft of row 5, take-off')).toBe('415');
        await soon(() =>
          page
            .getByRole('group', {
              name: 'over 50 ft against temperature: 2 lines, one for each pressure altitude',
            })
            .count(),
        ).toBe(1);

        // One act, one step back and forth.
        await page.keyboard.press('ControlOrMeta+z');
        await soon(() => page.getByLabel('over 50 ft of row 5, take-off', { exact: true }).count()).toBe(0);
        await page.keyboard.press('ControlOrMeta+Shift+z');
        await soon(() => valueOf(page, 'over 50 ft of row 5, take-off')).toBe('415');

        // One more column for rows that are there, a half row with them; undone it is gone, and no figure is lost.
        await page.getByLabel('mass of a new row, take-off', { exact: true }).fill('560');
        await page.keyboard.press('Enter');
        await page.getByText('Columns of the take-off table').click();
        await page
          .getByLabel('Add a column for headwind to the take-off table, the same in every row')
          .fill('0');
        await page.keyboard.press('Enter');
        await soon(() => valueOf(page, 'headwind of row 1, take-off')).toBe('0');
        await soon(() => valueOf(page, 'over 50 ft of row 5, take-off')).toBe('415');
        await soon(() => valueOf(page, 'mass of row 6, take-off')).toBe('560');
        // Half a row would lose its place: first it is completed or removed.
        await press(page, 'Take away headwind');
        await soon(() => page.getByText('Rows that are not whole yet are kept here only').count()).toBe(1);
        await press(page, 'Remove row 6, take-off');
        await press(page, 'Take away headwind');
        await soon(() => page.getByLabel('headwind of row 1, take-off', { exact: true }).count()).toBe(0);
        // Rows that only their temperature tells apart keep it.
        await press(page, 'Take away temperature');
        await soon(() => page.locator('.refusal', { hasText: 'row' }).count()).toBeGreaterThan(0);
        await soon(() => valueOf(page, 'temperature of row 2, take-off')).toBe('15');
      });
      await withWindow(host, { folder }, async ({ page }) => {
        await page.getByRole('link', { name: /^Aircraft/ }).click();
        await soon(() => valueOf(page, 'over 50 ft of row 3, take-off')).toBe('330');
        await soon(() => valueOf(page, 'pressure altitude of row 5, take-off')).toBe('2000');
      });
    });
  });
});
