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
    // A level and an upright mark of 5 mm outside each corner, to cut along.
    expect(near(5)).toBe(4);
    for (const words of ['Card 1.', '10 May 2027', '7/8', 'plan on, L', 'two independent means'])
      expect(text.replace(/\s+/g, ' ')).toContain(words);

    // As large as a bank card (ISO/IEC 7810 ID-1, 85.60 by 53.98 mm), and nothing of it cut off.
    await page.getByRole('radio', { name: /^bank card/ }).click();
    await page.getByRole('radio', { name: 'imp gal' }).click();
    const small = await page.getByRole('article').evaluate((card) => ({
      isWhole: card.scrollHeight <= card.clientHeight && card.scrollWidth <= card.clientWidth,
      widthMm: (card.getBoundingClientRect().width / 96) * 25.4,
      heightMm: (card.getBoundingClientRect().height / 96) * 25.4,
    }));
    expect(small.isWhole).toBe(true);
    expect(Math.abs(small.widthMm - 85.6)).toBeLessThan(0.1);
    expect(Math.abs(small.heightMm - 54)).toBeLessThan(0.1);
    const bank = await readPdfPage(await page.pdf({ format: 'A4' }));
    expect(bank.levelLinesMm.filter((length) => Math.abs(length - 75.6) < 0.1)).toHaveLength(1);
    // 25 L at 5/8 are 5.5 imp gal of 4.54609 L; the figure to plan on lies below them, by less than 6 L (1.3 imp gal).
    expect(bank.text).toContain('imp gal to plan on');
    const figures = (bank.text.match(/\b\d\.\d\b/g) ?? []).map(Number);
    expect(figures.some((figure) => figure > 4.2 && figure < 5.5)).toBe(true);

    await fromPage(page, 'calibration.adopt', { ...adopt, adoptedOn: '2026-06-10' });
    await expect.poll(() => page.getByRole('row', { name: /^Card 1/ }).innerText()).toContain('superseded');
  });
});

test('a report holds every row, the method with its sources, and its plots to one scale', async () => {
  await withWindow(loopbackHost, {}, async ({ page }) => {
    await fromPage(page, 'aircraft.put', { aircraft: exampleAircraft() });
    const measured = exampleFillTest('may-test', 'front');
    const aside = measured.runs[0]?.pours[2];
    if (aside !== undefined) aside.asideReason = 'the needle stuck';
    await fromPage(page, 'fillTest.put', { test: measured });
    await fromPage(page, 'calibration.adopt', {
      tankId: 'front',
      testIds: ['may-test'],
      adoptedOn: '2026-05-10',
    });
    await page.getByRole('link', { name: /^Fuel/ }).click();
    await page.getByRole('button', { name: 'Make a report' }).click();
    const report = page.getByRole('article', { name: /^Report/ });
    // Eight pours of 5 L: the running sum by hand is 5 to 40 L.
    for (const usable of ['5.0', '10.0', '15.0', '20.0', '25.0', '30.0', '35.0', '40.0'])
      await expect
        .poll(() => report.getByRole('cell', { name: usable, exact: true }).count())
        .toBeGreaterThan(0);
    const text = await report.innerText();
    for (const words of ['set aside: the needle stuck', 'Ramsay', '400 refits', 'a mechanic decide'])
      expect(text).toContain(words);
    const bytes = await page.pdf({ format: 'A4' });
    if (process.env['FUEL_REPORT_PDF'] !== undefined) writeFileSync(process.env['FUEL_REPORT_PDF'], bytes);
    expect((await readPdfPage(bytes)).text).toContain('Report on the gauge of the front tank.');
  });
});
