import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { prepare } from '../../main/hosts/prepare.mjs';
import { calibrate, fillDataOf } from '../../shared-calc/fuel/fit/calibrate.ts';
import { fitRows } from '../../shared-calc/fuel/fit/fill-data.ts';
import { modesToFollow, quickCurve } from '../../shared-calc/fuel/fit/quick-curve.ts';
import type { FillTestRecord } from '../../shared-calc/fuel/records.ts';
import { exampleAircraft } from '../main/example-aircraft.ts';
import { exampleFillTest } from '../main/example-fill-test.ts';
import { fillLibrary } from './bench-library.ts';
import { machineLine, report, seeded, spreadOf } from './measure.ts';
import { withOpenedWindow } from './opened-window.ts';

// A point of a 25-pour test in hand. First from data to the curve by its modes, as the window works it out at each step;
// beside it the whole fit with its band, which follows. Then the same step in the real window and a real browser, from
// the event until the curve has moved and everything that hangs on it is laid out again.
const STEPS = 200;
const FRAME_MS = 1000 / 60;
const tank = { capacityL: 50, unusableL: 1.5 };

/** Twenty-five pours of about 1.8 L into the example's front tank, read to the nearest sixteenth. */
function pours(): FillTestRecord {
  const random = seeded(25);
  const fillTest = exampleFillTest('bench', 'front');
  const [run] = fillTest.runs;
  const [first] = run?.pours ?? [];
  if (run === undefined || first === undefined) throw new Error('the example has a run with pours');
  run.pours = Array.from({ length: 25 }, (_, index) => ({
    ...first,
    id: `pour-${String(index)}`,
    volumeL: Math.round(10 * (1.8 + 0.1 * random())) / 10,
    reading: {
      at: 'scale' as const,
      positionRatio: Math.min(15, Math.max(1, Math.round(index * 0.62 + random()))) / 16,
    },
  }));
  return { ...fillTest, scale: { kind: 'fractions', denominator: 16 } };
}

console.log(machineLine());
const fillTest = pours();
/** The middle pour as a hand moves it: to and fro by up to a litre. */
const moved = (step: number): FillTestRecord => ({
  ...fillTest,
  runs: fillTest.runs.map((run) => ({
    ...run,
    pours: run.pours.map((pour, index) =>
      index === 12 ? { ...pour, volumeL: pour.volumeL + Math.sin(step / 20) } : pour,
    ),
  })),
});
const found = calibrate([fillTest], [], tank);
if (found.kind !== 'curve') throw new Error('25 pours make a curve');
const start = { curve: found.curve, modes: modesToFollow(found.fit.modes) };
const quickMs: number[] = [];
const wholeMs: number[] = [];
for (let step = -20; step < STEPS; step += 1) {
  let begunMs = performance.now();
  const drawn = quickCurve(fitRows(fillDataOf([moved(step)], [], tank)), start);
  const oneMs = performance.now() - begunMs;
  if (drawn.length === 0) throw new Error('no curve was drawn');
  if (step >= 0) quickMs.push(oneMs);
  if (step % 10 !== 0) continue;
  begunMs = performance.now();
  if (calibrate([moved(step)], [], tank).kind !== 'curve') throw new Error('25 pours make a curve');
  if (step >= 0) wholeMs.push(performance.now() - begunMs);
}
const [quick, all] = [spreadOf(quickMs), spreadOf(wholeMs)];
const calcName = 'fuel gauge: one step of a drag, from data to the curve by its modes';
report(
  `${calcName}: median ${quick.medianMs.toFixed(1)} ms, p95 ${quick.p95Ms.toFixed(1)} ms (${String(quick.runs)} steps, ${String(start.modes.length)} modes); the whole fit with its band takes ${all.medianMs.toFixed(0)} ms`,
  {
    name: calcName,
    value: quick.p95Ms,
    unit: 'ms',
    n: quick.runs,
    against: 'the whole fit with its band',
    ratio: quick.medianMs / all.medianMs,
  },
);

prepare((line) => {
  console.log(line);
});
const folder = mkdtempSync(join(tmpdir(), 'tarewing-bench-'));
const library = join(folder, 'fuel.tarewing');
await fillLibrary(library, [
  ['aircraft.put', { aircraft: exampleAircraft() }],
  ['fillTest.put', { test: fillTest }],
]);
try {
  await withOpenedWindow(['--library', library], async ({ page }) => {
    await page.getByRole('link', { name: /^Fuel/ }).click();
    await page.getByLabel('Pour 13, gauge reads').focus();
    await page.getByRole('slider', { name: 'Volume of the pour in hand' }).waitFor();
    await page.getByRole('heading', { level: 1, name: /plan on/ }).waitFor();
    const { oursMs, floorMs } = await stepped(page);
    const [own, floor] = [spreadOf(oursMs), spreadOf(floorMs)];
    const name = 'fuel gauge: one step of a drag in the window, curve and points laid out';
    report(
      `${name}: median ${own.medianMs.toFixed(1)} ms, p95 ${own.p95Ms.toFixed(1)} ms of a frame's ${FRAME_MS.toFixed(1)} (${String(own.runs)} steps); one word changed and laid out takes ${floor.medianMs.toFixed(1)} ms, p95 ${floor.p95Ms.toFixed(1)}`,
      {
        name,
        value: own.p95Ms,
        unit: 'ms',
        n: own.runs,
        against: 'one word changed and laid out',
        ratio: own.medianMs / floor.medianMs,
      },
    );
  });
} finally {
  rmSync(folder, { recursive: true, force: true });
}

/**
 * Arrow keys on the grip go the same way as a pointer's moves. A step counts only where the best estimate itself has
 * another path within it. Whole fits come back in between, as they do under a hand.
 */
function stepped(page: Page): Promise<{ oursMs: number[]; floorMs: number[] }> {
  return page.evaluate(async (steps) => {
    const grip = document.querySelector<SVGGElement>('[role=slider][aria-label^="Volume of the"]');
    const heading = document.querySelector('main h1');
    const sheet = document.querySelector('main');
    if (grip === null || heading === null || sheet === null) throw new Error('There is no grip.');
    grip.focus();
    const frame = () => new Promise((resolve) => requestAnimationFrame(resolve));
    const curve = () => document.querySelector('svg.figure path.line')?.getAttribute('d') ?? '';
    const word = document.createElement('span');
    heading.append(word);
    const oursMs: number[] = [];
    const floorMs: number[] = [];
    for (let step = -20; step < steps; step += 1) {
      await frame();
      const before = curve();
      let begunMs = performance.now();
      const key = Math.floor(step / 8) % 2 === 0 ? 'ArrowUp' : 'ArrowDown';
      grip.dispatchEvent(new KeyboardEvent('keydown', { key, bubbles: true, cancelable: true }));
      // Svelte brings the page up to date in a microtask.
      await Promise.resolve();
      await Promise.resolve();
      sheet.getBoundingClientRect();
      const oneMs = performance.now() - begunMs;
      if (curve() === before) throw new Error('The step did not move the curve.');
      await frame();
      begunMs = performance.now();
      word.textContent = ` ${String(step)}`;
      sheet.getBoundingClientRect();
      const floorOneMs = performance.now() - begunMs;
      if (step < 0) continue;
      oursMs.push(oneMs);
      floorMs.push(floorOneMs);
    }
    return { oursMs, floorMs };
  }, STEPS);
}
