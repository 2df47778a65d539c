import { expect, test } from 'vitest';
import type { Page } from 'playwright-core';
import { inEveryHost, withFolder, withWindow } from './harness/with-window.ts';

/** Type each text and go on with Tab; null only goes on. */
async function typed(page: Page, texts: (string | null)[]): Promise<void> {
  for (const text of texts) {
    if (text !== null) await page.keyboard.type(text);
    await page.keyboard.press('Tab');
  }
}

/** Put the cursor into a field by its label and type; Enter saves. */
async function fill(page: Page, label: string, text: string): Promise<void> {
  await page.getByLabel(label, { exact: true }).focus();
  await page.keyboard.press('ControlOrMeta+A');
  await page.keyboard.type(text);
  await page.keyboard.press('Enter');
}

/** Press a button by keyboard. */
async function press(page: Page, name: string): Promise<void> {
  await page.getByRole('button', { name, exact: true }).focus();
  await page.keyboard.press('Enter');
}

/** Asks again until it is so: other programs may be using the machine. */
function soon<T>(look: () => Promise<T>) {
  return expect.poll(look, { timeout: 8_000 });
}

const answer = (page: Page) => page.locator('main h1').innerText();
const focusedLabel = (page: Page) =>
  page.evaluate(() => document.activeElement?.getAttribute('aria-label') ?? '');

/** Without spaces that do not break and joiners, as a person reads it. */
const plain = (text: string) => text.replace(/[\u00a0\u2009]/g, ' ').replace(/\u2060/g, '');

inEveryHost('Aircraft and Loading', (host) => {
  test('an own aeroplane typed in by keyboard, and a loading of it, are all there after a restart', async () => {
    await withFolder(async (folder) => {
      await withWindow(host, { folder }, async ({ page }) => {
        await page.getByRole('link', { name: /^Aircraft/ }).click();
        await enterAeroplane(page);
        await enterLoading(page);
      });
      await withWindow(host, { folder }, async ({ page }) => {
        await soon(async () => plain(await answer(page))).toContain('Least margin');
        await soon(() => page.getByLabel('Mass of Mara', { exact: true }).inputValue()).toBe('68');
        await page.getByRole('link', { name: /^Aircraft/ }).click();
        await soon(async () => plain(await answer(page))).toContain('Empty 318.0 kg at 1 776 mm');
        await soon(() => page.getByLabel('Arm of Seats', { exact: true }).inputValue()).toBe('1965');
        await soon(() => page.getByLabel('arm of vertex 3, Flight', { exact: true }).inputValue()).toBe(
          '1890',
        );
      });
    });
  });

  test('lateral arms are asked for by one switch, named where they are missing, and put away by undo', async () => {
    await withWindow(host, { isDemo: true }, async ({ page }) => {
      await page.getByRole('link', { name: /^Loading/ }).click();
      await soon(async () => plain(await answer(page))).toContain('limit');
      const before = await answer(page);
      await page.getByRole('link', { name: /^Aircraft/ }).click();
      const besides = page.getByLabel(/^Lateral arm of /);
      await soon(() => page.getByLabel('the manual gives lateral arms').count()).toBe(1);
      expect(await besides.count()).toBe(0);
      await page.getByLabel('the manual gives lateral arms').focus();
      await page.keyboard.press('Space');
      await soon(() => besides.count()).toBeGreaterThan(2);
      // A limit on the wrong side is asked about; nothing is guessed.
      await fill(page, 'Limit to the left', '80 mm');
      await soon(() => page.getByRole('button', { name: /^Take it as \u221280/ }).count()).toBe(1);
      await page.getByRole('button', { name: /^Take it as \u221280/ }).click();
      await soon(() => page.getByLabel('Limit to the left', { exact: true }).inputValue()).toBe('\u221280');
      // From the answer to the first field that is missing.
      await page.getByRole('button', { name: /^the lateral arm of Left seat/ }).click();
      await soon(() => focusedLabel(page)).toBe('Lateral arm of Left seat');
      await page.getByRole('link', { name: /^Loading/ }).click();
      await soon(async () => plain(await answer(page))).toContain('No verdict yet.');
      await soon(async () => plain(await answer(page))).toContain('Left seat has no lateral arm yet');
      for (let step = 0; step < 2; step++)
        await page.getByRole('button', { name: 'Undo', exact: true }).first().click();
      await soon(() => answer(page)).toBe(before);
    });
  });

  test('a vertex of the envelope is moved by its grip, in one step of undo, and not into a crossing', async () => {
    await withWindow(host, { isDemo: true }, async ({ page }) => {
      await page.getByRole('link', { name: /^Aircraft/ }).click();
      const arm = (vertex: number) =>
        page.getByLabel(`arm of vertex ${String(vertex)}, Flight`, { exact: true });
      await page.getByRole('button', { name: 'Take vertex 4 in hand' }).focus();
      await page.keyboard.press('Enter');
      await page.getByRole('slider', { name: 'Vertex 4, arm' }).focus();
      await page.keyboard.press('ArrowRight');
      await page.keyboard.press('ArrowRight');
      // The table follows at once; the library once the keys rest.
      await soon(() => arm(4).inputValue()).toBe('1959');
      await soon(() => page.getByText('vertices of Flight, in Aircraft').count()).toBe(1);
      await page.keyboard.press('Home');
      await soon(() => page.getByText(/meets the edge from .*: enter the vertices in order/).count()).toBe(1);
      await soon(() => arm(4).inputValue()).toBe('1959');
      await page.getByRole('button', { name: 'Undo' }).first().click();
      await soon(() => arm(4).inputValue()).toBe('1957');
    });
  });

  test('a maximum typed lower tells, on the Aircraft screen, which saved loading it moves out of limits', async () => {
    await withWindow(host, { isDemo: true }, async ({ page }) => {
      await page.getByRole('link', { name: /^Aircraft/ }).click();
      const notices = page.getByRole('status', { name: 'Notices' });
      // The evening round takes off at 495 kg, Mara alone at less: 480 kg parts them.
      await fill(page, 'Maximum at landing', '480');
      await fill(page, 'Maximum at take-off', '480');
      await soon(async () => plain(await notices.innerText())).toMatch(
        /Take care\s+“Evening round, Mara and Ines” is now outside by .* \(was inside by .*\)\./,
      );
      await notices.getByRole('button', { name: 'Show' }).click();
      await soon(async () => plain(await answer(page))).toMatch(/^Too heavy to take off/);
    });
  });
});

async function enterAeroplane(page: Page): Promise<void> {
  await press(page, 'Enter an aeroplane');
  await page.getByLabel('The datum is', { exact: true }).waitFor();
  await fill(page, 'The datum is', 'face of the propeller flange');

  await press(page, 'Add a station');
  await soon(() => focusedLabel(page)).toBe('Name of the new station');
  await typed(page, ['Seats', null, '1965']);
  // Once it has a name and an arm the row is kept, and the cursor stands in the figure that comes next.
  await soon(() => focusedLabel(page)).toBe('Most load of Seats');
  await page.keyboard.type('220');
  await page.keyboard.press('Enter');

  await press(page, 'Add a tank');
  await soon(() => focusedLabel(page)).toBe('Name of the new tank');
  await typed(page, ['Wing tank', null, '70', '2', '1900', 'unleaded 95', '0.75']);
  await page.getByLabel('Capacity of Wing tank', { exact: true }).waitFor();

  await press(page, 'Add an envelope');
  await page.getByLabel('arm of a new vertex, Flight', { exact: true }).focus();
  await vertices(page, [
    [1766, 390],
    [1766, 600],
    [1890, 390],
  ]);
  // The fourth in the wrong order: the edges cross, and it is said which.
  await vertices(page, [[1890, 600]]);
  await soon(() => page.getByRole('alert').innerText()).toContain(
    'the edge from vertex 2 to 3 meets the edge from 4 to 1',
  );
  await fill(page, 'mass of vertex 3, Flight', '600');
  await fill(page, 'mass of vertex 4, Flight', '390');
  await soon(() => page.getByRole('alert').count()).toBe(0);

  await fill(page, 'Maximum at take-off', '600');
  await fill(page, 'Fuel flow in cruise', '18');
  await press(page, 'Enter it');
  await page.getByRole('radio', { name: 'a weighing record', exact: true }).click();
  await fill(page, 'Empty weight', '318');
  await fill(page, 'its arm', '1.776 m');
  await press(page, 'Keep this weighing');
  await soon(async () => plain(await answer(page))).toBe(
    'Empty 318.0 kg at 1 776 mm; 282.0 kg may be loaded, if the CG allows.',
  );
}

async function vertices(page: Page, rows: [armMm: number, massKg: number][]): Promise<void> {
  for (const [armMm, massKg] of rows) {
    await page.keyboard.type(String(armMm));
    await page.keyboard.press('Enter');
    await soon(() => focusedLabel(page)).toMatch(/^mass of/);
    await page.keyboard.type(String(massKg));
    await page.keyboard.press('Enter');
    await soon(() => focusedLabel(page)).toBe('arm of a new vertex, Flight');
  }
}

async function enterLoading(page: Page): Promise<void> {
  await page.getByRole('link', { name: /^Loading/ }).click();
  await press(page, 'Begin a loading');
  await press(page, 'People and things');
  await press(page, 'Add one');
  await soon(() => focusedLabel(page)).toBe('Name of somebody or something new');
  await typed(page, ['Mara', null, '68']);
  await page.getByLabel('Mass of Mara on the list', { exact: true }).waitFor();
  await press(page, 'Back to the plot');
  await page.getByLabel('Who or what is at Seats', { exact: true }).selectOption({ label: 'Mara' });
  await fill(page, 'Usable fuel in Wing tank', '60');
  await fill(page, 'Landing, time after take-off', '2:00');
  // By hand at take-off, nothing burned in taxi: (318 × 1.776 + (68 + 4.5) × 1.965 + 45 × 1.9) / 435.5 = 1.820 m; the
  // stated mass counts with 4.5 kg more. Fuel lies aft of that, so the forward limit is nearest with no fuel left:
  // (318 × 1.776 + 72.5 × 1.965) / 390.5 = 1.811 m, 45 mm aft of 1.766 m.
  await soon(async () => plain(await answer(page))).toContain('Inside all limits');
  await soon(async () => plain(await answer(page))).toContain('Least margin');
  // Of a stated mass known to 6.5 / 1.645 = 3.95 kg the CG moves 3.95 × (1.965 − 1.811) / 390.5 = 1.6 mm: 45 mm are far more.
  // The envelope's lowest mass, 0.5 kg below, is no least mass of the manual, and enters neither margin nor odds.
  await soon(async () => plain(await page.locator('header.answer p').innerText())).toMatch(
    /^The whole flight stays inside more than 999 times in 1.*000; .* of the doubt is /,
  );
  const row = page.getByRole('row', { name: /^Take-off/ });
  await soon(async () => plain(await row.innerText())).toMatch(/435\.5\s+1 820/);
  const end = page.getByRole('row', { name: /^Usable fuel exhausted/ });
  await soon(async () => plain(await end.innerText())).toMatch(/390\.5\s+1 811\s+45\s+78/);

  // Drag by keyboard: the grip is a slider. What it says follows at once, and undo takes it back as one step.
  const grip = page.getByRole('slider', { name: 'Mara', exact: true });
  await grip.focus();
  await page.keyboard.press('PageUp');
  await soon(() => page.getByLabel('Mass of Mara', { exact: true }).inputValue()).toBe('73');
  await soon(() => page.locator('nav').innerText()).toContain('Mara to 73.0');
  await page.getByRole('button', { name: 'Undo', exact: true }).first().click();
  await soon(() => page.getByLabel('Mass of Mara', { exact: true }).inputValue()).toBe('68');
}
