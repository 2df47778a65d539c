import { writeFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { exampleAircraft, exampleLoading, examplePerson } from '../main/example-aircraft.ts';
import { fromPage } from './harness/from-page.ts';
import { inEveryHost, withWindow } from './harness/with-window.ts';
import { readPdfPage } from './pdf-lines.ts';

const plain = (text: string) =>
  text
    .replace(/[\u00a0\u2009]/g, ' ')
    .replace(/\u2060/g, '')
    .replace(/\s+/g, ' ');

function weighing(emptyMassKg: number, weighedOn: string) {
  return {
    aircraftId: 'two-seater',
    weighedOn,
    how: 'scales',
    emptyMassKg,
    emptyArmM: 1.776,
    massSdKg: 1,
    armSdM: 0.002,
    unusableFuelIncluded: true,
    oilIncluded: true,
    note: '',
    readings: [],
  };
}

async function openSheet(page: Page, paper: string): Promise<void> {
  await fromPage(page, 'aircraft.put', { aircraft: exampleAircraft() });
  await fromPage(page, 'weighing.add', weighing(318, '2026-03-14'));
  await fromPage(page, 'people.put', { person: examplePerson('mara', 'Mara', 68) });
  await fromPage(page, 'loading.put', { loading: exampleLoading() });
  await page.getByRole('link', { name: /^Loading/ }).click();
  await page.getByRole('button', { name: 'Loading sheet' }).click();
  await page.getByRole('radio', { name: paper, exact: true }).click();
  // The browser's own print dialog would keep the page from being printed below.
  await page.evaluate(() => {
    window.print = () => undefined;
  });
  await page.getByRole('button', { name: 'Print this sheet' }).click();
  await expect.poll(() => page.getByRole('article').innerText()).toContain('Sheet 1');
}

/** What a rule would find on the paper. */
async function measured(bytes: Uint8Array) {
  const { levelLinesMm, text, pieces } = await readPdfPage(bytes);
  const middleOf = (words: string) => pieces.find((piece) => plain(piece.text) === words)?.middleMm ?? NaN;
  return {
    text: plain(text),
    // A printer's rule reads tenths of a millimetre.
    barCount: levelLinesMm.filter((length) => Math.abs(length - 100) < 0.1).length,
    // From 1 780 to 1 880 mm of arm along the axis; the thousands stand apart in the file.
    isArmFullSize: Math.abs(middleOf('880') - middleOf('780') - 100) < 0.3,
  };
}

async function onScreenOf(page: Page, deviceScaleFactor: number): Promise<void> {
  const session = await page.context().newCDPSession(page);
  const size = { width: 1280, height: 800, mobile: false };
  await session.send('Emulation.setDeviceMetricsOverride', { ...size, deviceScaleFactor });
  await expect.poll(() => page.evaluate(() => window.devicePixelRatio)).toBe(deviceScaleFactor);
}

inEveryHost('The loading sheet', (host) => {
  for (const paper of ['A4', 'US Letter']) {
    test(`on ${paper} has a bar of 100 mm at scale factors 1 and 1.5, the arm at full size, and all that a flight needs`, async () => {
      await withWindow(host, {}, async ({ page }) => {
        await openSheet(page, paper);
        const bytes = await page.pdf({ preferCSSPageSize: true });
        if (process.env['LOADING_SHEET_PDF'] !== undefined)
          writeFileSync(`${process.env['LOADING_SHEET_PDF']}-${paper}.pdf`, bytes);
        const { text, ...onPaper } = await measured(bytes);
        expect(onPaper).toEqual({ barCount: 1, isArmFullSize: true });
        // The same page, as a screen of 144 dots an inch would have it.
        await onScreenOf(page, 1.5);
        const { text: finer, ...onFiner } = await measured(await page.pdf({ preferCSSPageSize: true }));
        expect(onFiner).toEqual(onPaper);
        expect(finer).toBe(text);
        for (const words of [
          '1 mm is 1 mm of arm',
          'Sheet 1',
          'Two friends',
          'Left seat',
          'weighed 3 October 2026, ±1.0 kg',
          'Ramp',
          'Take-off',
          'Landing',
          'Zero fuel',
          'Envelope: Take-off',
          'The whole flight stays inside',
          'Uncertainty where the margin is least: CG ±',
          '14 March 2026, scales',
          'Pilot, signature',
          'The approved flight manual, the placards and local rules decide.',
        ])
          expect(text).toContain(words);
      });
    });
  }

  test('is superseded by name when the aeroplane is weighed again, and can be read as it was printed', async () => {
    await withWindow(host, {}, async ({ page }) => {
      await openSheet(page, 'A4');
      const row = page.getByRole('row', { name: /sheet 1/i });
      await expect.poll(() => row.innerText()).toContain('counts');
      await fromPage(page, 'weighing.add', weighing(321, '2026-05-02'));
      await expect
        .poll(() => row.innerText())
        .toContain('superseded, print it anew: it was weighed anew on 2 May 2026');
      await expect.poll(() => page.getByRole('article').innerText()).toContain('not printed yet');
      await page.getByRole('button', { name: 'Show sheet 1' }).click();
      await expect.poll(() => page.getByRole('article').innerText()).toContain('318.0');
      expect(await page.getByRole('article').innerText()).toContain('Sheet 1');
    });
  });
});
