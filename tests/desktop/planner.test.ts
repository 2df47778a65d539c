import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { buildDemo } from '../../fixtures/demo/build.ts';
import { inEveryHost, withFolder, withWindow } from './harness/with-window.ts';

const heading = (page: Page) => page.getByRole('heading', { level: 1 });
/** Figures with the spaces of the look made plain. */
const plain = (text: string) => text.replaceAll(/[\u2009\u2060]/g, '').replaceAll('\u00a0', ' ');
const answer = async (page: Page) => plain(await heading(page).innerText());
const windowWords = /^Between (\d\d:\d\d) and (\d\d:\d\d) local, /;

async function untilOf(page: Page): Promise<string> {
  const found = windowWords.exec(await answer(page));
  return found?.[2] ?? '';
}

inEveryHost('The planner', (host) => {
  test('with the demo the answer stands there after one act, and each part of the question changes it by mouse', async () => {
    await withFolder(async (folder) => {
      await withWindow(host, { folder, isDemo: true }, async ({ page }) => {
        // One act: the sheet. What the demo's pilot asked last is answered.
        await page.getByRole('link', { name: /^Weather/ }).click();
        await expect.poll(() => answer(page)).toMatch(windowWords);
        await expect
          .poll(() => answer(page))
          .toMatch(
            /nine days in ten \(\w+ to \w+ with the years at hand\); then take-off distance fails first.*Up to .* not inside: .* do not go\.$/,
          );
        const until = await untilOf(page);
        // The index of screens gives the same in short.
        await expect
          .poll(() => page.getByRole('link', { name: /^Weather/ }).innerText())
          .toContain(`until ${until}`);

        // An act each: another runway, loading, date, share of days.
        await page
          .getByLabel('Runway', { exact: true })
          .selectOption({ label: 'runway 06 or 24, into the wind' });
        await expect
          .poll(() => page.getByRole('textbox', { name: 'Take-off within' }).inputValue())
          .toBe('1180');
        await expect.poll(() => untilOf(page)).not.toBe(until);
        await page
          .getByLabel('Runway', { exact: true })
          .selectOption({ label: 'runway 15 or 33, into the wind' });
        await expect
          .poll(() => page.getByRole('textbox', { name: 'Take-off within' }).inputValue())
          .toBe('640');
        const within = page.getByRole('textbox', { name: 'Take-off within' });
        await within.fill('600');
        await within.press('Enter');
        await expect.poll(() => untilOf(page)).toBe(until);
        await page.getByLabel('How sure').selectOption({ label: 'one day in two' });
        await expect.poll(() => answer(page)).toMatch(/ local, one day in two \(/);
        await page.getByLabel('How sure').selectOption({ label: 'nine days in ten' });
        await expect.poll(() => untilOf(page)).toBe(until);

        // Asked backwards: what a lighter load buys is taken over by one press, and taken along again by another.
        const lighter = page.getByRole('button', { name: /^Set: 20 kg left behind buys/ });
        const promised = /to (\d\d:\d\d)/.exec((await lighter.getAttribute('aria-label')) ?? '')?.[1];
        await lighter.click();
        await expect.poll(() => untilOf(page)).toBe(promised);
        await page.getByRole('button', { name: 'Take them along again' }).click();
        await expect.poll(() => untilOf(page)).toBe(until);

        // From an hour to its observations: as many as were counted, each that fails with what it fails.
        const row = page
          .getByRole('table', { name: /^Hours of daylight/ })
          .getByRole('row', { name: /^14:00/ });
        await row.getByRole('button').click();
        const counted = /(\d+) of (\d+)/.exec(plain(await row.innerText()));
        await page.getByText('Observations at 14:00').click();
        const days = page.getByRole('table', { name: /^Observations behind 14:00/ }).locator('tbody tr');
        await expect.poll(() => days.count()).toBeGreaterThan(100);
        const fails = await days.locator('td:last-child').allInnerTexts();
        expect(fails.filter((each) => each === '')).toHaveLength(Number(counted?.[1]));
        expect(fails.filter((each) => each !== 'not counted')).toHaveLength(Number(counted?.[2]));

        // Side by side, and one of the lines taken over.
        await page.getByRole('button', { name: 'Mara alone, circuits', exact: true }).click();
        await expect
          .poll(() => page.getByLabel('Loading', { exact: true }).locator('option:checked').innerText())
          .toBe('Mara alone, circuits');
        await expect.poll(() => untilOf(page)).not.toBe(until);
      });
    });
  });

  test('the whole question is asked by keyboard, limits are added and taken away, and it is found after a restart', async () => {
    await withFolder(async (folder) => {
      // The demo as a library of its own: a copy that the program opens would be gone after the restart.
      const libraryPath = join(folder, 'own.tarewing');
      await buildDemo(libraryPath, folder);
      let said = '';
      await withWindow(host, { folder, libraryPath }, async ({ page }) => {
        const { keyboard } = page;
        // Keys work once the window has drawn.
        await expect.poll(() => answer(page)).toMatch(/^Empty /);
        await keyboard.press('Alt+4');
        await expect.poll(() => answer(page)).toMatch(windowWords);
        const named = () =>
          page.evaluate(() => {
            const at = document.activeElement;
            return at?.getAttribute('aria-label') ?? at?.textContent ?? '';
          });
        const tabTo = async (label: string) => {
          for (let i = 0; i < 60; i++) {
            if ((await named()) === label) return;
            await keyboard.press('Tab');
          }
          throw new Error(`no Tab leads to ${label}`);
        };
        await tabTo('Loading');
        const before = await answer(page);
        await keyboard.type('Mara');
        await expect
          .poll(() => page.getByLabel('Loading', { exact: true }).locator('option:checked').innerText())
          .toMatch(/^Mara alone/);
        await expect.poll(() => answer(page)).not.toBe(before);
        await tabTo('Departure date');
        await keyboard.press('Control+A');
        await keyboard.type('15 October 2026');
        await keyboard.press('Enter');
        await expect
          .poll(() => page.getByRole('textbox', { name: 'Date', exact: true }).inputValue())
          .toBe('15 October 2026');
        await tabTo('Crosswind at most');
        await keyboard.press('Control+A');
        await keyboard.press('Delete');
        await keyboard.press('Enter');
        await expect.poll(() => page.getByRole('textbox', { name: 'Crosswind at most' }).count()).toBe(0);
        // The field that was emptied is gone; the way goes on from the sentence's beginning.
        await page.getByLabel('Loading', { exact: true }).focus();
        await tabTo('Ask one more limit');
        await keyboard.type('gusts');
        await expect.poll(() => page.getByRole('textbox', { name: 'Gusts at most' }).inputValue()).toBe('20');
        await tabTo('Daylight');
        await keyboard.type('between dawn');
        await expect
          .poll(() => page.getByLabel('Daylight').locator('option:checked').innerText())
          .toBe('between dawn and dusk');
        await expect.poll(() => answer(page)).toMatch(/local, nine days in ten/);
        await expect.poll(() => page.getByRole('textbox', { name: 'Gusts at most' }).count()).toBe(1);
        await expect.poll(() => answer(page)).toMatch(/by dusk at/);
        said = await answer(page);
      });
      await withWindow(host, { folder, libraryPath }, async ({ page }) => {
        await page.getByRole('link', { name: /^Weather/ }).click();
        await expect.poll(() => answer(page)).toBe(said);
        expect(await page.getByRole('textbox', { name: 'Gusts at most' }).inputValue()).toBe('20');
      });
    });
  });
});
