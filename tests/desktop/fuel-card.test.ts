import { writeFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { exampleAircraft } from '../main/example-aircraft.ts';
import { exampleFillTest } from '../main/example-fill-test.ts';
import { fromPage } from './harness/from-page.ts';
import { loopbackHost } from './harness/loopback.ts';
import { withWindow } from './harness/with-window.ts';
import { readPdfPage } from './pdf-lines.ts';

test('a fuel card is printed to scale with its serial, and superseded when another curve is adopted', async () => {
  await withWindow(loopbackHost, {}, async ({ page }) => {
    await fromPage(page, 'aircraft.put', { aircraft: exampleAircraft() });
    await fromPage(page, 'fillTest.put', { test: exampleFillTest('may-test', 'front') });
    const adopt = { tankId: 'front', testIds: ['may-test'], adoptedOn: '2026-05-10' };
    await fromPage(page, 'calibration.adopt', adopt);
    await page.getByRole('link', { name: /^Fuel/ }).click();
    await page.getByRole('button', { name: 'Make a card' }).click();
    // The browser's own print dialog would keep the page from being printed below.
    await page.evaluate(() => {
      window.print = () => undefined;
    });
    await page.getByRole('button', { name: 'Print this card' }).click();
    await expect.poll(() => page.getByRole('article').innerText()).toContain('Card 1.');

    const bytes = await page.pdf({ format: 'A4' });
    if (process.env['FUEL_CARD_PDF'] !== undefined) writeFileSync(process.env['FUEL_CARD_PDF'], bytes);
    const { levelLinesMm, text } = await readPdfPage(bytes);
    // A printer's rule reads tenths of a millimetre.
    const near = (mm: number) => levelLinesMm.filter((length) => Math.abs(length - mm) < 0.1).length;
    expect(near(100)).toBe(1);
    expect(near(80)).toBe(1);
    for (const words of ['Card 1.', '10 May 2027', '7/8', 'plan on, L', 'two independent means'])
      expect(text.replace(/\s+/g, ' ')).toContain(words);

    await fromPage(page, 'calibration.adopt', { ...adopt, adoptedOn: '2026-06-10' });
    await expect.poll(() => page.getByRole('row', { name: /^Card 1/ }).innerText()).toContain('superseded');
  });
});
