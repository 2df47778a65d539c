import axe from 'axe-core';
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { fromPage } from './harness/from-page.ts';
import { loopbackHost } from './harness/loopback.ts';
import { inEveryHost, withWindow } from './harness/with-window.ts';

const plain = (text: string) => text.replace(/[\u00a0\u2009]/g, ' ').replace(/\u2060/g, '');
const answer = async (page: Page) => plain(await page.locator('main h1').innerText());

function soon<T>(look: () => Promise<T>) {
  return expect.poll(look, { timeout: 15_000 });
}

/** Broken rules of accessibility on the page as it stands. */
async function violations(page: Page): Promise<string[]> {
  await page.evaluate(axe.source);
  return page.evaluate(async () => {
    const { axe: runner } = window as unknown as { axe: typeof axe };
    const found = await runner.run(document.body, { runOnly: ['wcag2a', 'wcag2aa', 'wcag21aa', 'wcag22aa'] });
    return found.violations.map(({ id, nodes }) => `${id}: ${nodes.map((node) => node.html).join(' | ')}`);
  });
}

interface Listed {
  ok: true;
  output: { id: string }[];
}

/** The demo as somebody finds it who is to enter their own people: none on the list, no loading. */
async function emptyTheLists(page: Page): Promise<void> {
  const people = (await fromPage(page, 'people.list', {})) as unknown as Listed;
  for (const { id } of people.output) await fromPage(page, 'people.remove', { id });
  const list = (await fromPage(page, 'loading.list', { aircraftId: 'demo-two-seater' })) as unknown as {
    output: { loadings: { id: string }[] };
  };
  for (const { id } of list.output.loadings) await fromPage(page, 'loading.remove', { id });
}

inEveryHost('Asked backwards', (host) => {
  test('a remedy is taken by one press of the keyboard, stands inside, and is one step of undo', async () => {
    await withWindow(host, { isDemo: true }, async ({ page }) => {
      await page.getByRole('link', { name: /^Loading/ }).click();
      await page
        .getByLabel('Loading', { exact: true })
        .selectOption({ label: 'Ansel and Jonas, full tanks' });
      await soon(() => answer(page)).toContain('Too heavy to take off');
      const section = page.getByRole('region', { name: 'Asked backwards' });
      await soon(async () => plain(await section.innerText())).toContain('Leave behind Camera case, 6.0 kg.');
      // 600 − 596.84 kg.
      await soon(async () => plain(await section.innerText())).toContain('Least margin 3.1 kg');
      await page.getByRole('button', { name: 'Leave it behind' }).focus();
      await page.keyboard.press('Enter');
      await soon(() => answer(page)).toContain('Least margin 3.1 kg');
      await soon(async () => plain(await section.innerText())).toContain('What there is still room for');
      await soon(() => page.locator('nav').innerText()).toContain('Camera case left behind');
      await page.getByRole('button', { name: 'Undo', exact: true }).first().click();
      await soon(() => answer(page)).toContain('Too heavy to take off');
      await soon(async () => plain(await section.innerText())).toContain('Leave behind Camera case, 6.0 kg.');
    });
  });
});

test('from an empty list to an answer for two passengers in eight acts, and from a row into its loading', async () => {
  await withWindow(loopbackHost, { isDemo: true }, async ({ page }) => {
    await emptyTheLists(page);
    let acts = 0;
    const act = async (doing: () => Promise<unknown>) => {
      acts += 1;
      await doing();
    };
    const focused = () => page.evaluate(() => document.activeElement?.getAttribute('aria-label') ?? '');
    await act(() => page.getByRole('link', { name: /^Loading/ }).click());
    await act(() => page.getByRole('button', { name: 'Two friends this afternoon' }).click());
    // Who flies comes first, then who may come along; each figure typed is an act.
    for (const [name, kg] of [
      ['Mara', '68'],
      ['Ines', '59'],
      ['Ansel', '104'],
    ] as const) {
      await soon(focused).toBe('Name of somebody new');
      await act(async () => {
        await page.keyboard.type(name);
        await page.keyboard.press('Tab');
      });
      await soon(focused).toBe('Stated mass of somebody new');
      await act(async () => {
        await page.keyboard.type(kg);
        await page.keyboard.press('Enter');
      });
    }
    const row = (name: string) => page.getByRole('row', { name: new RegExp(`^${name}`) });
    await soon(() => row('Ines').count()).toBe(1);
    await soon(() => row('Ansel').count()).toBe(1);
    expect(acts).toBeLessThanOrEqual(8);
    // A new loading burns both wing tanks together, so both may be full: 96 L. Stated masses count with 4.5 kg more, and
    // 1.5 L are burned in taxiing: 328.8 + 72.5 + 63.5 + 94.5 × 0.72 = 532.84 kg of 600.
    expect(plain(await row('Ines').innerText())).toContain('67.1 kg, if the CG allows');
    expect(plain(await row('Ines').innerText())).toContain('to 96.0 L');

    await page.getByRole('button', { name: /with Ines$/ }).focus();
    await page.keyboard.press('Enter');
    await soon(() => answer(page)).toContain('Inside all limits');
    await soon(() =>
      page.getByLabel('Who or what is at Right seat').locator('option:checked').innerText(),
    ).toBe('Ines');
    await soon(() =>
      page.getByLabel('Who or what is at Left seat').locator('option:checked').innerText(),
    ).toBe('Mara');
    await soon(() => page.getByLabel('Usable fuel in Left wing tank').inputValue()).toBe('48');
    await soon(() => page.getByLabel('Landing, time after take-off').inputValue()).toBe('1 h 30 min');
    await soon(() => page.locator('nav').innerText()).toContain('With Ines added');
  });
});

test('a grip stops at its station’s limit and says so; climb and return line are typed and counted', async () => {
  await withWindow(loopbackHost, { isDemo: true }, async ({ page }) => {
    await page.getByRole('link', { name: /^Loading/ }).click();
    await page.getByLabel('Loading', { exact: true }).selectOption({ label: 'Ansel and Jonas, full tanks' });
    const grip = page.getByRole('slider', { name: 'Jonas', exact: true });
    await grip.focus();
    await page.keyboard.press('End');
    // 107 kg and the 3 kg added to a stated mass are the seat's 110.
    await soon(async () => plain((await grip.getAttribute('aria-valuetext')) ?? '')).toContain(
      'Jonas 107.0 kg of 107.0 kg; Right seat takes no more than 110.0 kg',
    );
    await soon(() => page.getByLabel('Mass of Jonas', { exact: true }).inputValue()).toBe('107');
    await page.keyboard.press('PageUp');
    await soon(() => page.getByLabel('Mass of Jonas', { exact: true }).inputValue()).toBe('107');

    const type = async (label: string, text: string) => {
      await page.getByLabel(label, { exact: true }).focus();
      await page.keyboard.press('ControlOrMeta+A');
      await page.keyboard.type(text);
      await page.keyboard.press('Enter');
    };
    await type('Fuel for the climb', '4');
    await type('Time of the climb', '10 min');
    // Low figures: 94.8 − 1.5 − 4 L at 17 L/h are 5 h 15 min, and the climb's 10 min.
    const plan = page.locator('section.side');
    await soon(async () => plain(await plan.innerText())).toContain(
      'it lasts 5 h 25 min after take-off, the climb',
    );
    await page.getByLabel('Return line', { exact: true }).selectOption({ label: 'into Right wing tank' });
    await type('Flow of the pump', '60');
    // What the engine does not burn fills the right tank, which is full already.
    await soon(() => answer(page)).toContain('fuel is lost overboard');
  });
});

test('answers, passengers, the loading sheet and the check page pass the accessibility rules', async () => {
  await withWindow(loopbackHost, { isDemo: true }, async ({ page }) => {
    await page.getByRole('link', { name: /^Loading/ }).click();
    await page.getByLabel('Loading', { exact: true }).selectOption({ label: 'Ansel and Jonas, full tanks' });
    await page.getByRole('button', { name: 'Leave it behind' }).waitFor();
    expect(await violations(page)).toEqual([]);
    await page.getByRole('button', { name: 'Two friends this afternoon' }).click();
    await page.getByRole('checkbox', { name: /Mara/ }).check();
    await page.getByRole('row', { name: /^Mara/ }).waitFor();
    expect(await violations(page)).toEqual([]);
    await page.getByRole('button', { name: 'Loading sheet' }).click();
    await page.getByRole('article', { name: 'Loading sheet' }).waitFor();
    expect(await violations(page)).toEqual([]);
    await page.getByRole('link', { name: /^Aircraft/ }).click();
    await page.getByRole('button', { name: 'Compare with the manual, on paper' }).click();
    await page.getByRole('article', { name: 'Figures to compare with the manual' }).waitFor();
    expect(await violations(page)).toEqual([]);
    await page.getByRole('button', { name: 'Both have compared all of it today' }).click();
    await expect
      .poll(() => page.locator('nav').innerText())
      .toContain('all figures compared with the manual');
  });
});
