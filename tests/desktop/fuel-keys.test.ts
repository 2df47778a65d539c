import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { aircraft } from '../../fixtures/demo/aircraft.ts';
import { containers, fillTests } from '../../fixtures/demo/fill-tests.ts';
import { readingText } from '../../shared-calc/fuel/gauge-scale.ts';
import type { FillTestRecord } from '../../shared-calc/fuel/records.ts';
import { fromPage } from './harness/from-page.ts';
import { inEveryHost, withWindow } from './harness/with-window.ts';

/** The demo's first fill test as a page of a notebook: for each run what was poured and what was read. */
function notebook(): { test: FillTestRecord; rows: { volume: string; reading: string }[][] } {
  const [test] = fillTests();
  if (test === undefined) throw new Error('the demo has a fill test');
  const rows = test.runs.map((run) =>
    run.pours.map((pour) => ({
      volume: String(pour.volumeL),
      reading: pour.reading === null ? '' : readingText(pour.reading, test.scale),
    })),
  );
  return { test, rows };
}

/** Types by real key presses and counts those that are no digit. */
class Keys {
  count = 0;
  readonly #page: Page;
  constructor(page: Page) {
    this.#page = page;
  }
  async press(key: string): Promise<void> {
    if (!/^\d$/.test(key)) this.count += 1;
    await this.#page.keyboard.press(key);
  }
  async type(text: string): Promise<void> {
    for (const letter of text) await this.press(letter);
  }
}

const focused = (page: Page) =>
  page.evaluate(() => {
    const at = document.activeElement;
    return at?.getAttribute('aria-label') ?? at?.textContent ?? '';
  });

/** On by Tab to the field or button of a name, as a person without a pointer would. */
async function tabTo(page: Page, name: RegExp, mostTabs = 40): Promise<void> {
  for (let tab = 0; tab < mostTabs; tab++) {
    if (name.test(await focused(page))) return;
    await page.keyboard.press('Tab');
  }
  throw new Error(`${String(name)} was not reached by ${String(mostTabs)} tabs; at ${await focused(page)}`);
}

inEveryHost('A page of a notebook', (host) => {
  test('is typed with at most four keys a row besides the digits, without a pointer, and draws its curve', async () => {
    await withWindow(host, {}, async ({ page }) => {
      const { test: asked, rows } = notebook();
      await fromPage(page, 'aircraft.put', { aircraft });
      for (const container of containers) await fromPage(page, 'container.put', { container });
      const touched: string[] = [];
      await page.exposeFunction('noteTouch', (what: string) => touched.push(what));
      await page.evaluate(() => {
        const note = (event: Event) =>
          void (window as unknown as { noteTouch: (what: string) => void }).noteTouch(event.type);
        for (const type of ['pointerdown', 'mousedown', 'touchstart']) addEventListener(type, note, true);
      });
      await page.keyboard.press('Alt+3');
      await expect.poll(() => page.getByRole('heading', { level: 1 }).innerText()).toContain('No fill test');
      await tabTo(page, /^Start a fill test$/);
      await page.keyboard.press('Enter');
      await expect.poll(() => page.getByLabel('Pour 1, volume').count()).toBe(1);
      await tabTo(page, /^Scale of the gauge$/);
      await page.keyboard.type('sixteenths');
      await tabTo(page, /^Container$/);
      await page.keyboard.type('Three');

      const keys = new Keys(page);
      let number = 0;
      let most = 0;
      for (const [index, run] of rows.entries()) {
        const word = index === 0 ? 'Pour' : 'Drain';
        if (index === 0) await tabTo(page, /^Pour 1, volume$/);
        else {
          await tabTo(page, /^Add a draining run$/);
          await page.keyboard.press('Enter');
        }
        for (const { volume, reading } of run) {
          number += 1;
          const before = keys.count;
          await expect.poll(() => focused(page)).toBe(`${word} ${String(number)}, volume`);
          await keys.type(volume);
          await keys.press('Enter');
          await expect.poll(() => focused(page)).toBe(`${word} ${String(number)}, gauge reads`);
          await keys.type(reading);
          await keys.press('Enter');
          most = Math.max(most, keys.count - before);
        }
      }
      expect(number).toBe(rows.flat().length);
      expect(number).toBeGreaterThanOrEqual(23);
      expect(most).toBeLessThanOrEqual(4);
      expect(touched).toEqual([]);

      await expect.poll(() => page.getByRole('heading', { level: 1 }).innerText()).toContain('plan on');
      const kept = async () => {
        const answer = await fromPage(page, 'fillTest.list', { tankId: asked.tankId });
        if (!answer.ok) throw new Error(answer.problem.sentence);
        return (answer.output as FillTestRecord[])[0];
      };
      const figures = ({ runs }: FillTestRecord) =>
        runs.map(({ direction, pours }) => [
          direction,
          pours.map(({ volumeL, reading }) => [volumeL, reading]),
        ]);
      // The last figures are saved while the curve is drawn already.
      await expect
        .poll(async () => {
          const test = await kept();
          return test === undefined ? null : figures(test);
        })
        .toEqual(figures(asked));
      expect((await kept())?.scale).toEqual(asked.scale);
    });
  });
});
