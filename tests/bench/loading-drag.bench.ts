import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { prepare } from '../../main/hosts/prepare.mjs';
import type { WeighingRecord } from '../../shared-calc/loading/records.ts';
import { busyAircraft, busyRecord } from '../shared-calc/loading/busy-table.ts';
import { weighingOf } from '../shared-calc/wording/example-weighing.ts';
import { fillLibrary } from './bench-library.ts';
import { machineLine, report, spreadOf } from './measure.ts';
import { withOpenedWindow } from './opened-window.ts';

// A grip's step in the real window and a real browser: 12 stations, 4 tanks in doubt, 4 envelopes of eight edges, both
// ellipses. Timed from the event until the answer, the plot and the tables that hang on it are laid out again (the
// painting itself is the browser's). Beside it, in turn, the floor: one word of the page changed and laid out.
const STEPS = 200;
const FRAME_MS = 1000 / 60;

prepare((line) => {
  console.log(line);
});
console.log(machineLine());
const folder = mkdtempSync(join(tmpdir(), 'tarewing-bench-'));
const library = join(folder, 'busy.tarewing');
// What a person enters of a weighing: neither its identifier nor whether it was withdrawn.
const weighing: Partial<WeighingRecord> = { ...weighingOf('busy'), emptyMassKg: 330, emptyArmM: 1.8 };
delete weighing.id;
delete weighing.withdrawn;
await fillLibrary(library, [
  ['aircraft.put', { aircraft: busyAircraft() }],
  ['weighing.add', weighing],
  ['loading.put', { loading: busyRecord() }],
]);
try {
  await withOpenedWindow(['--library', library], async ({ page }) => {
    await page.getByRole('link', { name: /^Loading/ }).click();
    await page.getByRole('slider').nth(15).waitFor();
    await page.getByRole('heading', { level: 1, name: /limit/ }).waitFor();
    const { oursMs, floorMs } = await stepped(page);
    const [own, floor] = [spreadOf(oursMs), spreadOf(floorMs)];
    const name = 'loading: one step of a drag, recomputed and laid out';
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

/** Arrow keys on the first grip go the same way as a pointer's moves; each step waits for the frame after it. */
function stepped(page: Page): Promise<{ oursMs: number[]; floorMs: number[] }> {
  return page.evaluate(async (steps) => {
    const grip = document.querySelector<SVGGElement>('svg.figure [role=slider]');
    const heading = document.querySelector('main h1');
    const sheet = document.querySelector('main');
    if (grip === null || heading === null || sheet === null) throw new Error('There is no grip.');
    grip.focus();
    const frame = () => new Promise((resolve) => requestAnimationFrame(resolve));
    const word = document.createElement('span');
    heading.append(word);
    const oursMs: number[] = [];
    const floorMs: number[] = [];
    for (let step = -20; step < steps; step += 1) {
      await frame();
      const before = heading.textContent + grip.getAttribute('aria-valuenow');
      let begunMs = performance.now();
      const key = step % 2 === 0 ? 'ArrowUp' : 'ArrowDown';
      grip.dispatchEvent(new KeyboardEvent('keydown', { key, bubbles: true, cancelable: true }));
      // Svelte brings the page up to date in a microtask.
      await Promise.resolve();
      await Promise.resolve();
      sheet.getBoundingClientRect();
      const oneMs = performance.now() - begunMs;
      if (heading.textContent + grip.getAttribute('aria-valuenow') === before)
        throw new Error('The step changed nothing.');
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
