import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { exampleAircraft } from '../main/example-aircraft.ts';
import { exampleFillTest } from '../main/example-fill-test.ts';
import { fromPage } from './harness/from-page.ts';
import { loopbackHost } from './harness/loopback.ts';
import { withWindow } from './harness/with-window.ts';

const heading = (page: Page) => page.getByRole('heading', { level: 1 });
const side = async (page: Page) => (await page.locator('.side').innerText()).replaceAll('\u00a0', ' ');
const planL = async (page: Page) => Number(/plan on ([\d.]+)/.exec(await heading(page).innerText())?.[1]);

/** The example's fill test with every pour so much larger, on another day. */
function poured(id: string, testedOn: string, factor: number, tankId = 'front') {
  const made = exampleFillTest(id, tankId);
  for (const run of made.runs) for (const pour of run.pours) pour.volumeL = 5 * factor;
  return { ...made, testedOn };
}

async function openFuel(page: Page): Promise<void> {
  await page.getByRole('link', { name: /^Fuel/ }).click();
  await expect.poll(() => heading(page).innerText()).toContain('plan on');
}

test('two runs that are alike make one curve; one unlike says why it may not', async () => {
  await withWindow(loopbackHost, {}, async ({ page }) => {
    await fromPage(page, 'aircraft.put', { aircraft: exampleAircraft() });
    await fromPage(page, 'fillTest.put', { test: poured('spring', '2026-05-09', 1) });
    await fromPage(page, 'fillTest.put', {
      test: { ...poured('running', '2026-04-01', 1), power: 'engine running' },
    });
    await fromPage(page, 'fillTest.put', { test: poured('summer', '2026-07-09', 1) });
    await openFuel(page);
    const alone = await planL(page);
    const other = page.getByRole('checkbox', { name: /^9 May 2026, 8 rows$/ });
    await other.focus();
    await page.keyboard.press('Space');
    await expect.poll(() => planL(page)).not.toBe(alone);
    await expect.poll(() => page.getByRole('checkbox', { name: /^1 April 2026/ }).isDisabled()).toBe(true);
    expect(await side(page)).toMatch(/1 April 2026, 8 rows: .*so not one curve with this test/);
    await page.getByRole('button', { name: 'Adopt this curve' }).press('Enter');
    await expect.poll(() => page.getByRole('row', { name: /counts now/ }).count()).toBe(1);
    // Five readings between the stops in either.
    expect(await fromPage(page, 'calibration.list', { tankId: 'front' })).toMatchObject({
      output: [{ testIds: ['spring', 'summer'], curve: { readingCount: 10 } }],
    });
    await page.getByRole('button', { name: 'Make a report' }).click();
    await expect.poll(() => page.getByRole('article').innerText()).toContain('9 May 2026');
    expect(await page.getByRole('article').innerText()).toContain('9 July 2026');
  });
});

test('an older and a newer curve are laid over each other, and the sentence says whether they differ', async () => {
  await withWindow(loopbackHost, {}, async ({ page }) => {
    await fromPage(page, 'aircraft.put', { aircraft: exampleAircraft() });
    const adopt = (id: string, adoptedOn: string) =>
      fromPage(page, 'calibration.adopt', { tankId: 'front', testIds: [id], adoptedOn });
    await fromPage(page, 'fillTest.put', { test: poured('spring', '2026-05-09', 1) });
    await adopt('spring', '2026-05-10');
    await fromPage(page, 'fillTest.put', { test: poured('summer', '2026-07-09', 1.02) });
    await adopt('summer', '2026-07-10');
    await openFuel(page);
    await page.getByRole('button', { name: 'Compare with the curve of 10 May 2026' }).press('Enter');
    // Two parts in a hundred are less than a can that nobody checked is good for.
    await expect
      .poll(() => side(page))
      .toContain('The curve of 10 July 2026 and the curve of 10 May 2026 do not differ beyond their doubt');
    await expect.poll(() => page.locator('svg.figure').first().innerHTML()).toContain('curve of 10 May 2026');
    await page.getByRole('button', { name: 'Take the curve of 10 May 2026 out of the plot' }).press('Enter');

    // A third less in the tank at every mark is more than that.
    await fromPage(page, 'fillTest.put', { test: poured('autumn', '2026-09-09', 0.66) });
    await adopt('autumn', '2026-09-10');
    await expect.poll(() => page.getByRole('row', { name: /^10 September 2026 counts now/ }).count()).toBe(1);
    await page.getByRole('button', { name: 'Compare with the curve of 10 May 2026' }).press('Enter');
    await expect.poll(() => side(page)).toMatch(/differ beyond their doubt at .*Look for a reason/s);
  });
});

test('both tanks have a total by their gauges, and a flight asks for pairs of readings', async () => {
  await withWindow(loopbackHost, {}, async ({ page }) => {
    await fromPage(page, 'aircraft.put', { aircraft: exampleAircraft() });
    for (const tankId of ['front', 'rear']) {
      await fromPage(page, 'fillTest.put', { test: poured(`${tankId}-test`, '2026-05-09', 1, tankId) });
      await fromPage(page, 'calibration.adopt', {
        tankId,
        testIds: [`${tankId}-test`],
        adoptedOn: '2026-05-10',
      });
    }
    await openFuel(page);
    const front = await planL(page);
    await page.getByRole('radio', { name: 'for a flight' }).click();
    const total = async () => Number(/Both tanks together: plan on ([\d.]+)/.exec(await side(page))?.[1]);
    // The one can under both goes together, their readings do not: more than twice the one, less than twice 20 L.
    await expect.poll(total).toBeGreaterThan(2 * front);
    expect(await total()).toBeLessThan(40);
    const half = await total();
    const rear = page.getByLabel('The gauge of the rear tank reads');
    await rear.fill('3/8');
    await rear.press('Enter');
    await expect.poll(total).toBeLessThan(half);

    // 18 L/h for 45 min with 45 min kept is 27 L.
    const flight = page.getByLabel('Flight time');
    await flight.fill('0:45');
    await flight.press('Enter');
    await expect.poll(() => side(page)).toContain('The flight and its reserve take 27.0 L');
    const rows = page.getByRole('table', { name: 'Least readings for this flight' }).getByRole('row');
    await expect.poll(() => rows.count()).toBeGreaterThan(2);
    const pairs = (await rows.allInnerTexts()).slice(1).map((row) => row.split('\t'));
    // The reading in each of them, asked forwards, promises the flight.
    const [lead = '', other = ''] = pairs[1] ?? [];
    await rear.fill(other);
    await rear.press('Enter');
    const gauge = page.getByLabel('The gauge reads', { exact: true });
    await gauge.fill(lead);
    await gauge.press('Enter');
    await expect.poll(total).toBeGreaterThanOrEqual(27);

    await flight.fill('9:00');
    await flight.press('Enter');
    await expect.poll(() => side(page)).toContain('Even both at the full stop do not promise enough');
  });
});
