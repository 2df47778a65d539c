import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { inEveryHost, withWindow } from './harness/with-window.ts';

/** Without spaces that do not break and joiners, as a person reads it. */
const plain = (text: string) => text.replaceAll(/[\u00a0\u2009]/g, ' ').replaceAll('\u2060', '');
const answer = async (page: Page) => plain(await page.locator('main h1').innerText());
const button = (page: Page, name: string) => page.getByRole('button', { name, exact: true });
const focused = async (page: Page) =>
  plain(await page.evaluate(() => document.activeElement?.getAttribute('aria-label') ?? ''));

/** By mouse: the demo's loadings side by side. */
async function beginTable(page: Page): Promise<void> {
  await page.getByRole('link', { name: /^Loading/ }).click();
  await button(page, 'Many side by side').click();
  await button(page, 'Begin the table').click();
  await expect.poll(() => answer(page)).toMatch(/^5 of 20 are outside/);
}

inEveryHost('Scenarios side by side', (host) => {
  test('a cell says what its loading says, opens it by one press, and undo takes the loading back', async () => {
    await withWindow(host, { isDemo: true }, async ({ page }) => {
      await beginTable(page);
      const cell = page.getByRole('button', { name: /^Ansel and Jonas, full tanks, 60/ });
      // Words and odds of the cell are those of the loading's own sheet.
      await expect
        .poll(async () => plain((await cell.getAttribute('aria-label')) ?? ''))
        .toMatch(/times in 1 000$/);
      const said = plain((await cell.getAttribute('aria-label')) ?? '');
      const [, margin = '', odds = ''] =
        /least margin (\d+ mm to the aft limit), .*?, ((?:more than )?\d+ times in 1 000)$/.exec(said) ?? [];
      expect(margin).not.toBe('');
      await cell.click();
      await expect.poll(() => answer(page)).toContain(`Least margin ${margin}`);
      await expect
        .poll(async () => plain(await page.locator('header.answer p').first().innerText()))
        .toContain(`stays inside ${odds}`);
      // 60 L in equal parts.
      expect(await page.getByLabel('Usable fuel in Left wing tank', { exact: true }).inputValue()).toBe('30');
      await button(page, 'Many side by side').click();
      await expect.poll(() => focused(page)).toMatch(/^Ansel and Jonas, full tanks, 60 L/);
      // Opened again it is the same loading, not a second one.
      await page.keyboard.press('Enter');
      await expect.poll(() => page.getByLabel('Loading', { exact: true }).locator('option').count()).toBe(5);
      await button(page, 'Undo').first().click();
      await expect.poll(() => page.getByLabel('Loading', { exact: true }).locator('option').count()).toBe(4);
    });
  });

  test('by keyboard alone: among the cells, to a head, to another amount', async () => {
    await withWindow(host, { isDemo: true }, async ({ page }) => {
      await beginTable(page);
      await page.getByRole('gridcell').getByRole('button').first().focus();
      await page.keyboard.press('ArrowRight');
      await page.keyboard.press('ArrowDown');
      await expect.poll(() => focused(page)).toMatch(/^Ansel and Jonas, full tanks, 40 L:/);
      await page.keyboard.press('Control+End');
      await expect.poll(() => focused(page)).toMatch(/^Evening round, Mara and Ines, full tanks:/);
      await page.keyboard.press('Home');
      await page.keyboard.press('Enter');
      await expect.poll(() => focused(page)).toBe('Name of this row');
      await page.keyboard.press('ControlOrMeta+A');
      await page.keyboard.type('Ines along');
      await page.keyboard.press('Enter');
      await expect.poll(() => page.getByRole('rowheader').last().innerText()).toMatch(/^Ines along/);
      await page.getByLabel('Usable fuel in all tanks', { exact: true }).focus();
      await page.keyboard.press('ControlOrMeta+A');
      await page.keyboard.type('25');
      await page.keyboard.press('Enter');
      await expect
        .poll(async () => plain(await page.getByRole('columnheader').first().innerText()))
        .toMatch(/^25 L/);
      await expect.poll(() => page.locator('nav').innerText()).toMatch(/column of 25/);
    });
  });

  test('without any loading there is an answer for two passengers in a few presses', async () => {
    await withWindow(host, { isDemo: true }, async ({ page }) => {
      // The demo with an empty list of loadings.
      await page.getByRole('link', { name: /^Loading/ }).click();
      for (let left = 4; left > 0; left -= 1) {
        await expect
          .poll(() => page.getByLabel('Loading', { exact: true }).locator('option').count())
          .toBe(left);
        await button(page, 'Remove').click();
      }
      // 1: side by side, 2: begin. The first person alone and with each of the others, from little fuel to full tanks.
      await button(page, 'People and fuel side by side').click();
      await button(page, 'Begin the table').click();
      await expect.poll(() => page.getByRole('rowheader').count()).toBe(4);
      await expect.poll(() => answer(page)).toMatch(/^(All|\d+ of 20) /);
    });
  });
});
