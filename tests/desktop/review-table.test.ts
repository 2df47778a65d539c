import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { exampleAircraft, exampleLoading, examplePerson } from '../main/example-aircraft.ts';
import { fromPage } from './harness/from-page.ts';
import { inEveryHost, withFolder, withWindow } from './harness/with-window.ts';

/** Without spaces that do not break and joiners, as a person reads it. */
const plain = (text: string) => text.replaceAll(/[\u00a0\u2009]/g, ' ').replaceAll('\u2060', '');
const words = [
  '',
  'One',
  'Two',
  'Three',
  'Four',
  'Five',
  'Six',
  'Seven',
  'Eight',
  'Nine',
  'Ten',
  'Eleven',
  'Twelve',
];
const answer = async (page: Page) => plain(await page.locator('main h1').innerText());
const button = (page: Page, name: string) => page.getByRole('button', { name, exact: true });
const focused = async (page: Page) =>
  plain(await page.evaluate(() => document.activeElement?.getAttribute('aria-label') ?? ''));

const weighing = {
  aircraftId: 'two-seater',
  weighedOn: '2026-03-14',
  how: 'scales',
  emptyMassKg: 318,
  emptyArmM: 1.776,
  massSdKg: 1,
  armSdM: 0.002,
  unusableFuelIncluded: true,
  oilIncluded: true,
  note: '',
  readings: [],
};

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

  test('a lower maximum marks, in words, each cell that it moves out, also after a restart, until the marks are taken off', async () => {
    await withFolder(async (folder) => {
      await withWindow(host, { folder }, async ({ page }) => {
        await fromPage(page, 'aircraft.put', { aircraft: exampleAircraft() });
        await fromPage(page, 'weighing.add', weighing);
        await fromPage(page, 'people.put', { person: examplePerson('mara', 'Mara', 68) });
        await fromPage(page, 'loading.put', { loading: exampleLoading() });
        await page.getByRole('link', { name: /^Loading/ }).click();
        await button(page, 'Many side by side').click();
        await button(page, 'Begin the table').click();
        await expect.poll(() => page.locator('td.inside').count()).toBeGreaterThan(1);
        const insideBefore = await page.locator('td.inside').count();
        expect(await page.locator('td .change').count()).toBe(0);
        await page.getByRole('link', { name: /^Aircraft/ }).click();
        const { maxMasses, ...rest } = exampleAircraft();
        // Empty 318 kg, Mara 68 and a bag of 15 kg: 436 kg holds 40 L of 0.72 kg/L, but not 60.
        await fromPage(page, 'aircraft.put', {
          aircraft: { ...rest, maxMasses: { ...maxMasses, takeOffKg: 436, landingKg: 436 } },
        });
        await page.getByRole('link', { name: /^Loading/ }).click();
        await expect.poll(() => page.locator('td .change').count()).toBeGreaterThan(0);
        const marks = await page.locator('td .change').allInnerTexts();
        expect(new Set(marks)).toEqual(new Set(['was inside']));
        expect(await page.locator('td.inside').count()).toBe(insideBefore - marks.length);
        const said = plain(await page.getByText('changed verdict since you last looked').innerText());
        expect(said).toMatch(
          new RegExp(`^${words[marks.length] ?? String(marks.length)} of five scenarios `),
        );
        expect(said).toMatch(/(is|are) now outside \((was|were) inside\)/);
      });
      await withWindow(host, { folder }, async ({ page }) => {
        await page.getByRole('link', { name: /^Loading/ }).click();
        await button(page, 'Many side by side').click();
        await expect.poll(() => page.locator('td .change').count()).toBeGreaterThan(0);
        await expect
          .poll(async () =>
            plain((await page.locator('td:has(.change) button').first().getAttribute('aria-label')) ?? ''),
          )
          .toMatch(/was inside$/);
        await button(page, 'Take the marks off').click();
        await expect.poll(() => page.locator('td .change').count()).toBe(0);
        await button(page, 'Undo').first().click();
        await expect.poll(() => page.locator('td .change').count()).toBeGreaterThan(0);
      });
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
