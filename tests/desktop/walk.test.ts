import { fileURLToPath } from 'node:url';
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { inEveryHost, withFolder, withWindow } from './harness/with-window.ts';

// The whole job by one newcomer: what the tests of each screen check one by one has to hold in a row, in one library.

const sample = fileURLToPath(new URL('../samples/weather/725300-94846-2016.gz', import.meta.url));

/** An invented page of a notebook: litres poured into the wing tank, and what the gauge then read. */
const notebook = [
  ['10', 'E'],
  ['10', '1/4'],
  ['15', '1/2'],
  ['15', '3/4'],
  ['15', 'F'],
] as const;

const answer = async (page: Page) => plain(await page.locator('main h1').innerText());

/** Without spaces that do not break and joiners, as a person reads it. */
const plain = (text: string) => text.replaceAll(/[\u00a0\u2009]/g, ' ').replaceAll('\u2060', '');

const focusedLabel = (page: Page) =>
  page.evaluate(() => document.activeElement?.getAttribute('aria-label') ?? '');

const undo = (page: Page) => page.getByRole('button', { name: 'Undo', exact: true }).first();

inEveryHost('The whole job', (host) => {
  test('from an empty start to aeroplane, loading, gauge and season, all there after a restart', async () => {
    await withFolder(async (folder) => {
      await withWindow(host, { folder }, async ({ page, chooseFiles }) => {
        // The first thing that is seen says what to do first, and offers the demo.
        await page.getByRole('button', { name: 'Enter an aeroplane', exact: true }).waitFor();
        await expect
          .poll(() => page.getByRole('button', { name: 'Open a copy of the demo' }).count())
          .toBe(1);
        await enterAeroplane(page);
        await enterLoading(page);
        await enterFillTest(page);
        await importWeather(page, (path) =>
          chooseFiles(page.getByLabel('Weather files', { exact: true }), [path]),
        );
      });
      await withWindow(host, { folder }, async ({ page }) => {
        // It opens where it was left.
        await expect.poll(() => answer(page)).toMatch(tooFewDays);
        await goTo(page, 'Fuel');
        for (const [index, [volume, reading]] of notebook.entries()) {
          await expect.poll(() => field(page, `Pour ${String(index + 1)}, volume`).inputValue()).toBe(volume);
          await expect
            .poll(() => field(page, `Pour ${String(index + 1)}, gauge reads`).inputValue())
            .toBe(reading);
        }
        await goTo(page, 'Loading');
        await expect.poll(() => answer(page)).toContain('Inside all limits');
        expect(await field(page, 'Mass of Mara').inputValue()).toBe('68');
        await goTo(page, 'Aircraft');
        await expect.poll(() => answer(page)).toContain('Empty 318.0 kg at 1 776 mm');
        expect(await field(page, 'Arm of Seats').inputValue()).toBe('1965');
        expect(await field(page, 'arm of vertex 3, Flight').inputValue()).toBe('1890');

        // The list of undo outlives the program, and still names what it would undo.
        await expect.poll(async () => plain(await page.locator('nav').innerText())).toContain('Lake strip');
        await undo(page).click();
        await goTo(page, 'Weather');
        await expect.poll(() => answer(page)).not.toMatch(tooFewDays);
        await page.getByRole('button', { name: 'Redo', exact: true }).first().click();
        await expect.poll(() => answer(page)).toMatch(tooFewDays);
      });
    });
  });
});

/** Two months of one winter: what the planner says of them. */
const tooFewDays = /^Too few days: the fullest hour has \d+ of the 100 that nine days in ten needs/;

async function enterAeroplane(page: Page): Promise<void> {
  await press(page, 'Enter an aeroplane');
  await fill(page, 'The datum is', 'face of the propeller flange');
  await press(page, 'Add a station');
  await expect.poll(() => focusedLabel(page)).toBe('Name of the new station');
  await typed(page, ['Seats', null, '1965']);
  await expect.poll(() => focusedLabel(page)).toBe('Most load of Seats');
  await page.keyboard.type('220');
  await page.keyboard.press('Enter');
  await press(page, 'Add a tank');
  await expect.poll(() => focusedLabel(page)).toBe('Name of the new tank');
  await typed(page, ['Wing tank', null, '70', '2', '1900', 'unleaded 95', '0.75']);
  await field(page, 'Capacity of Wing tank').waitFor();
  await press(page, 'Add an envelope');
  for (const [armMm, massKg] of [
    ['1766', '390'],
    ['1766', '600'],
    ['1890', '600'],
    ['1890', '390'],
  ] as const) {
    await field(page, 'arm of a new vertex, Flight').focus();
    await page.keyboard.type(armMm);
    await page.keyboard.press('Enter');
    await expect.poll(() => focusedLabel(page)).toMatch(/^mass of/);
    await page.keyboard.type(massKg);
    await page.keyboard.press('Enter');
    await expect.poll(() => focusedLabel(page)).toBe('arm of a new vertex, Flight');
  }
  await fill(page, 'Maximum at take-off', '600');
  await fill(page, 'Fuel flow in cruise', '18');
  await press(page, 'Enter it');
  await page.getByRole('radio', { name: 'a weighing record', exact: true }).press('Space');
  await fill(page, 'Empty weight', '318');
  await fill(page, 'its arm', '1.776 m');
  await press(page, 'Keep this weighing');
  // 600 - 318 = 282.
  await expect
    .poll(() => answer(page))
    .toBe('Empty 318.0 kg at 1 776 mm; 282.0 kg may be loaded, if the CG allows.');
}

async function enterLoading(page: Page): Promise<void> {
  await goTo(page, 'Loading');
  await press(page, 'Begin a loading');
  await press(page, 'People and things');
  await press(page, 'Add one');
  await expect.poll(() => focusedLabel(page)).toBe('Name of somebody or something new');
  await typed(page, ['Mara', null, '68']);
  await field(page, 'Mass of Mara on the list').waitFor();
  await press(page, 'Back to the plot');
  await field(page, 'Who or what is at Seats').selectOption({ label: 'Mara' });
  await fill(page, 'Usable fuel in Wing tank', '60');
  // By hand at take-off, Mara stated and so 4.5 kg heavier: 318 + 72.5 + 60 × 0.75 = 435.5 kg, well inside 1766 to 1890 mm.
  await expect.poll(() => answer(page)).toContain('Inside all limits');
  await expect
    .poll(async () => plain(await page.getByRole('row', { name: /^Take-off/ }).innerText()))
    .toMatch(/435\.5/);
}

async function enterFillTest(page: Page): Promise<void> {
  await goTo(page, 'Fuel');
  await press(page, 'Start a fill test');
  await field(page, 'Pour 1, volume').focus();
  for (const [index, [volume, reading]] of notebook.entries()) {
    await expect.poll(() => focusedLabel(page)).toBe(`Pour ${String(index + 1)}, volume`);
    await page.keyboard.type(volume);
    await page.keyboard.press('Enter');
    await expect.poll(() => focusedLabel(page)).toBe(`Pour ${String(index + 1)}, gauge reads`);
    await page.keyboard.type(reading);
    await page.keyboard.press('Enter');
  }
  await fill(page, 'The gauge reads', '1/2');
  // 10 + 10 + 15 = 35 L had been poured when it read 1/2: what to plan on is less, and how much less the fit's own tests say.
  await expect.poll(() => answer(page)).toMatch(/^Reading 1\/2 .*plan on (2\d|3[0-4])\.\d L usable/);
}

async function importWeather(page: Page, choose: (path: string) => Promise<void>): Promise<void> {
  await goTo(page, 'Weather');
  await expect.poll(() => answer(page)).toBe('No weather yet.');
  await choose(sample);
  await expect.poll(() => page.locator('.files').innerText()).toMatch(/O'Hare/);
  await press(page, 'Import');
  await expect.poll(() => answer(page)).toMatch(/is imported\. Say for which field it stands\.$/);
  await fill(page, 'Name', 'Lake strip');
  await press(page, 'Add the field');
  await expect.poll(() => answer(page)).toMatch(tooFewDays);
  // The picture itself: lines, and an hour in hand with its figures.
  await expect.poll(() => page.locator('svg.figure path').count()).toBeGreaterThan(3);
  const date = page.getByRole('slider', { name: 'Date' });
  await date.press('Home');
  await expect
    .poll(async () => plain((await date.getAttribute('aria-valuetext')) ?? ''))
    .toMatch(/^1 January\. \d\d:00: /);
}

function field(page: Page, label: string) {
  return page.getByLabel(label, { exact: true });
}

/** Open a screen by the keyboard. */
async function goTo(page: Page, word: string): Promise<void> {
  await page.getByRole('link', { name: new RegExp(`^${word}`) }).press('Enter');
}

/** Press a button by the keyboard. */
async function press(page: Page, name: string): Promise<void> {
  await page.getByRole('button', { name, exact: true }).press('Enter');
}

/** Put the cursor into a field by its label, type, and save by Enter. */
async function fill(page: Page, label: string, text: string): Promise<void> {
  await field(page, label).focus();
  await page.keyboard.press('ControlOrMeta+A');
  await page.keyboard.type(text);
  await page.keyboard.press('Enter');
}

/** Type each text and go on with Tab; null only goes on. */
async function typed(page: Page, texts: (string | null)[]): Promise<void> {
  for (const text of texts) {
    if (text !== null) await page.keyboard.type(text);
    await page.keyboard.press('Tab');
  }
}
