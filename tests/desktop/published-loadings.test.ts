import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { UNIT_PRESETS } from '../../shared-calc/units/preferences.ts';
import { caseById } from '../reference/cases.ts';
import { fromPage } from './harness/from-page.ts';
import { loopbackHost } from './harness/loopback.ts';
import { withWindow } from './harness/with-window.ts';

// The handbooks' own loadings (tests/reference/published-checks.json), typed into the window by keyboard alone, and
// the handbooks' answers read from it. What a handbook leaves open (limits of the CG) is typed wide around its figures.

const plain = (text: string) => text.replace(/[\u00a0\u2009\u2060]/g, '').replace(/\u2212/g, '-');
const answer = (page: Page) => page.locator('main h1').innerText();
const focusedLabel = (page: Page) =>
  page.evaluate(() => document.activeElement?.getAttribute('aria-label') ?? '');

interface Aeroplane {
  emptyLb: number;
  emptyIn: number;
  limitsIn: [number, number];
  /** Lightest and heaviest mass of the envelope; the heaviest is the maximum at take-off. */
  massesLb: [number, number];
  stations: { name: string; kind: 'seat' | 'baggage' | 'other'; armIn: number }[];
  tankArmIn?: number;
  mac?: { beginsIn: number; lengthIn: number };
}

async function fill(page: Page, label: string, text: string, within = 'body'): Promise<void> {
  await page.locator(within).getByLabel(label, { exact: true }).focus();
  await page.keyboard.press('ControlOrMeta+A');
  await page.keyboard.type(text);
  await page.keyboard.press('Enter');
}

async function press(page: Page, name: string): Promise<void> {
  await page.getByRole('button', { name, exact: true }).focus();
  await page.keyboard.press('Enter');
}

/** Choose a word of a list by its first letters, as with any list of a browser. */
async function pick(page: Page, label: string, letters: string): Promise<void> {
  await page.getByLabel(label, { exact: true }).focus();
  await page.keyboard.type(letters);
}

async function unitsOfManual(page: Page, group: string, word: string): Promise<void> {
  await page.getByRole('radiogroup', { name: group }).getByRole('radio', { name: word, exact: true }).focus();
  await page.keyboard.press('Space');
  const chosen = page
    .getByRole('radiogroup', { name: group })
    .getByRole('radio', { name: word, exact: true });
  await expect.poll(() => chosen.getAttribute('aria-checked')).toBe('true');
}

async function beginAeroplane(page: Page): Promise<void> {
  // How the person likes to read figures; not part of the handbook's page.
  await fromPage(page, 'settings.put', { key: 'units', value: UNIT_PRESETS.US, named: 'units' });
  await press(page, 'Enter an aeroplane');
  await page.getByLabel('The datum is', { exact: true }).waitFor();
  await unitsOfManual(page, 'The manual prints masses in', 'lb');
  await unitsOfManual(page, 'arms in', 'in');
  await unitsOfManual(page, 'volumes in', 'US gal');
}

async function enterAeroplane(page: Page, plane: Aeroplane): Promise<void> {
  await beginAeroplane(page);
  for (const { name, kind, armIn } of plane.stations) {
    await press(page, 'Add a station');
    await expect.poll(() => focusedLabel(page)).toBe('Name of the new station');
    await page.keyboard.type(name);
    await page.keyboard.press('Tab');
    // A new place is a seat until something else is chosen.
    if (kind !== 'seat') await page.keyboard.type(kind);
    await page.keyboard.press('Tab');
    await page.keyboard.type(String(armIn));
    await page.keyboard.press('Tab');
    await page.getByLabel(`Arm of ${name}`, { exact: true }).waitFor();
  }
  if (plane.tankArmIn !== undefined) {
    await press(page, 'Add a tank');
    await expect.poll(() => focusedLabel(page)).toBe('Name of the new tank');
    for (const text of ['Tank', null, '100', '0', String(plane.tankArmIn), 'avgas 100LL', '6']) {
      if (text !== null) await page.keyboard.type(text);
      await page.keyboard.press('Tab');
    }
    await page.getByLabel('Capacity of Tank', { exact: true }).waitFor();
  }
  await fill(page, 'Fuel flow in cruise', '10');
  await press(page, 'Add an envelope');
  const [forward, aft] = plane.limitsIn;
  const [least, most] = plane.massesLb;
  for (const [armIn, massLb] of [
    [forward, least],
    [forward, most],
    [aft, most],
    [aft, least],
  ] as const) {
    await page.getByLabel('arm of a new vertex, Flight', { exact: true }).focus();
    await page.keyboard.type(String(armIn));
    await page.keyboard.press('Enter');
    await expect.poll(() => focusedLabel(page)).toMatch(/^mass of/);
    await page.keyboard.type(String(massLb));
    await page.keyboard.press('Enter');
    await expect.poll(() => focusedLabel(page)).toBe('arm of a new vertex, Flight');
  }
  await fill(page, 'Maximum at take-off', String(most));
  if (plane.mac !== undefined) {
    await fill(page, 'MAC begins at', String(plane.mac.beginsIn));
    await fill(page, 'Length of the MAC', String(plane.mac.lengthIn));
  }
  await press(page, 'Enter it');
  await page.getByRole('radio', { name: 'a weighing record', exact: true }).press('Space');
  await fill(page, 'Empty weight', String(plane.emptyLb));
  await fill(page, 'its arm', String(plane.emptyIn));
  await press(page, 'Keep this weighing');
  await expect.poll(async () => plain(await answer(page))).toMatch(/^Empty /);
}

async function enterLoading(page: Page, loads: Record<string, number>, fuelGal?: string): Promise<void> {
  await page.getByRole('link', { name: /^Loading/ }).focus();
  await page.keyboard.press('Enter');
  await press(page, 'Begin a loading');
  for (const [station, lb] of Object.entries(loads)) {
    await pick(page, `Who or what is at ${station}`, 'a mass');
    const mass = page.getByRole('row', { name: new RegExp(`^${station}`) }).getByLabel('Mass of Load');
    await mass.focus();
    await page.keyboard.press('ControlOrMeta+A');
    await page.keyboard.type(String(lb));
    await page.keyboard.press('Enter');
    await expect.poll(() => mass.inputValue()).toBe(String(lb));
  }
  if (fuelGal !== undefined) await fill(page, 'Usable fuel in Tank', fuelGal);
}

/** Figures of a row of the table along the flight, in the person's units: pounds, inches, percent of the MAC. */
async function figuresAt(page: Page, event: string): Promise<number[]> {
  const cells = await page
    .getByRole('row', { name: new RegExp(`^${event}`) })
    .getByRole('cell')
    .allInnerTexts();
  return cells.slice(1).flatMap((text) => (plain(text) === '' ? [] : [Number(plain(text))]));
}

/** Wait until mass and CG of the ramp are the printed ones. */
async function expectRamp(page: Page, id: string): Promise<void> {
  const { expected, tolerance } = caseById(id);
  const printed = (name: string) => Number(expected[name]?.value);
  const abs = (name: string) => {
    const one = tolerance[name];
    return one !== undefined && 'abs' in one ? one.abs : NaN;
  };
  await expect
    .poll(async () => Math.abs(((await figuresAt(page, 'Ramp'))[0] ?? NaN) - printed('total_weight')))
    // The window shows tenths of a pound, rounded up.
    .toBeLessThanOrEqual(abs('total_weight') + 0.1);
  const cgIn = (await figuresAt(page, 'Ramp'))[1] ?? NaN;
  const moment = printed('total_moment');
  // Where the source leaves its CG out, its moment over its mass.
  const wanted = expected['cg'] === undefined ? moment / printed('total_weight') : printed('cg');
  expect(Math.abs(cgIn - wanted)).toBeLessThanOrEqual(0.0501);
}

const said = async (page: Page) =>
  plain(await page.getByRole('region', { name: 'Asked backwards' }).innerText()).replace(/\s+/g, ' ');

describe('published loadings, typed into the window', () => {
  test('LOAD-001: five stations of the pilot’s handbook are 3,320 lb at 84.8 in', async () => {
    await withWindow(loopbackHost, {}, async ({ page }) => {
      await enterAeroplane(page, {
        emptyLb: 2100,
        emptyIn: 78.3,
        limitsIn: [70, 95],
        massesLb: [1500, 3400],
        stations: [
          { name: 'Front', kind: 'seat', armIn: 85 },
          { name: 'Rear', kind: 'seat', armIn: 121 },
          { name: 'Baggage', kind: 'baggage', armIn: 150 },
        ],
        tankArmIn: 75,
      });
      await enterLoading(page, { Front: 340, Rear: 350, Baggage: 80 }, '75');
      await expectRamp(page, 'LOAD-001');
    });
  });

  test('LOAD-010, 011 and 012: the extremes of AC 43.13-1B, one aeroplane and three loadings', async () => {
    await withWindow(loopbackHost, {}, async ({ page }) => {
      await enterAeroplane(page, {
        emptyLb: 1169,
        emptyIn: 10.6,
        limitsIn: [5, 25],
        massesLb: [1000, 2200],
        stations: [
          { name: 'Oil', kind: 'other', armIn: -49 },
          { name: 'Front', kind: 'seat', armIn: 16 },
          { name: 'Rear', kind: 'seat', armIn: 48 },
          { name: 'Baggage', kind: 'baggage', armIn: 75.5 },
        ],
        tankArmIn: 22,
      });
      // Its 83 lb of fuel are 13.8333 gal of 6 lb.
      await enterLoading(page, { Oil: 17, Front: 170 }, '13.83333');
      await expectRamp(page, 'LOAD-010');
      const retype = async (station: string, lb: number) => {
        const mass = page.getByRole('row', { name: new RegExp(`^${station}`) }).getByLabel('Mass of Load');
        if ((await mass.count()) === 0) await pick(page, `Who or what is at ${station}`, 'a mass');
        await mass.focus();
        await page.keyboard.press('ControlOrMeta+A');
        await page.keyboard.type(String(lb));
        await page.keyboard.press('Enter');
        await expect.poll(() => mass.inputValue()).toBe(String(lb));
      };
      await retype('Front', 340);
      await retype('Rear', 340);
      await fill(page, 'Usable fuel in Tank', '39');
      await expectRamp(page, 'LOAD-011');
      await retype('Rear', 170);
      await retype('Baggage', 100);
      await fill(page, 'Usable fuel in Tank', '40');
      await expectRamp(page, 'LOAD-012');
    });
  });

  test('LOAD-014: of 2,195 lb against 2,300, 105 lb are left for baggage', async () => {
    await withWindow(loopbackHost, {}, async ({ page }) => {
      const { expected } = caseById('LOAD-014');
      await enterAeroplane(page, {
        // Arms by the moments that the graph gives, in thousands of pound-inches.
        emptyLb: 1350,
        emptyIn: 51_500 / 1350,
        limitsIn: [35, 55],
        massesLb: [1000, 2300],
        stations: [
          { name: 'Front', kind: 'seat', armIn: 9200 / 250 },
          { name: 'Rear', kind: 'seat', armIn: 29_000 / 400 },
          { name: 'Oil', kind: 'other', armIn: -200 / 15 },
          { name: 'Baggage', kind: 'baggage', armIn: 95 },
        ],
        tankArmIn: 8700 / 180,
      });
      await enterLoading(page, { Front: 250, Rear: 400, Oil: 15 }, '30');
      await expect
        .poll(async () => (await figuresAt(page, 'Ramp'))[0])
        .toBe(Number(expected['total_weight']?.value));
      const [, cgIn = NaN] = await figuresAt(page, 'Ramp');
      // 98.2 thousand pound-inches, read from a graph to a tenth; the CG is shown to a tenth of an inch.
      expect(Math.abs(cgIn - (Number(expected['total_moment_1000']?.value) * 1000) / 2195)).toBeLessThan(
        0.08,
      );
      const leftLb = String(expected['weight_left_for_baggage']?.value);
      await expect.poll(() => said(page)).toContain(`The baggage takes at most ${leftLb}.0lb more`);
    });
  });

  test('LOAD-002: 65 lb have to go forward to bring 7,800 lb from 81.5 in to 80.5 in', async () => {
    await withWindow(loopbackHost, {}, async ({ page }) => {
      const { expected } = caseById('LOAD-002');
      await enterAeroplane(page, {
        // 7,800 lb at 81.5 in, of which 300 lb lie at 150 in.
        emptyLb: 7500,
        emptyIn: (7800 * 81.5 - 300 * 150) / 7500,
        limitsIn: [70, 80.5],
        massesLb: [5000, 9000],
        stations: [
          { name: 'Aft hold', kind: 'baggage', armIn: 150 },
          { name: 'Nose hold', kind: 'baggage', armIn: 30 },
        ],
      });
      await enterLoading(page, { 'Aft hold': 300 });
      // The example is of one mass, without fuel and without a flight.
      await fill(page, 'Reserve', '0');
      const lb = String(expected['weight_to_shift']?.value);
      await expect.poll(() => said(page)).toContain(`${lb}.0lb of Load from the aft hold to the nose hold`);
    });
  });

  test('LOAD-016: 7.7 lb of ballast at 228 in bring 1,876 lb from 32.2 in to 33.0 in', async () => {
    await withWindow(loopbackHost, {}, async ({ page }) => {
      const { expected } = caseById('LOAD-016');
      await enterAeroplane(page, {
        emptyLb: 1876,
        emptyIn: 32.2,
        limitsIn: [33, 40],
        massesLb: [1000, 2500],
        stations: [{ name: 'Tail', kind: 'other', armIn: 228 }],
      });
      await enterLoading(page, {});
      await fill(page, 'Reserve', '0');
      const lb = String(expected['ballast_weight']?.value);
      await expect.poll(() => said(page)).toContain(`At least ${lb}lb of ballast`);
    });
  });

  test('LOAD-005: three scales with tare make 2,006 lb at 114.8 in', async () => {
    await withWindow(loopbackHost, {}, async ({ page }) => {
      const { expected } = caseById('LOAD-005');
      await beginAeroplane(page);
      await press(page, 'Enter it');
      for (const [wheel, armIn, scaleLb, tareLb] of [
        ['nose wheel', 50, 348, 8],
        ['left main wheel', 128, 852, 16],
        ['right main wheel', 128, 846, 16],
      ] as const) {
        await fill(page, `Arm of the ${wheel}`, String(armIn), '[aria-label="A weighing"]');
        await fill(page, `Scale under the ${wheel}`, String(scaleLb), '[aria-label="A weighing"]');
        await fill(page, `Tare under the ${wheel}`, String(tareLb), '[aria-label="A weighing"]');
      }
      await press(page, 'Keep this weighing');
      await expect.poll(async () => plain(await answer(page))).toMatch(/^Empty /);
      const [, lb = '', inches = ''] =
        /^Empty ([\d.]+)lb at ([\d.]+)in/.exec(plain(await answer(page))) ?? [];
      expect(Number(lb)).toBe(Number(expected['net_weight']?.value));
      expect(Math.abs(Number(inches) - Number(expected['cg']?.value))).toBeLessThanOrEqual(0.0501);
    });
  });

  test('LOAD-008: 161 in are 27.4 % of a chord from 144 to 206 in', async () => {
    await withWindow(loopbackHost, {}, async ({ page }) => {
      const { expected } = caseById('LOAD-008');
      await enterAeroplane(page, {
        emptyLb: 3000,
        emptyIn: 161,
        limitsIn: [150, 170],
        massesLb: [2000, 4000],
        stations: [{ name: 'Front', kind: 'seat', armIn: 150 }],
        mac: { beginsIn: 144, lengthIn: 206 - 144 },
      });
      await enterLoading(page, {});
      await expect
        .poll(async () => (await figuresAt(page, 'Ramp'))[2])
        .toBe(Number(expected['cg_percent_mac']?.value));
    });
  });
});
