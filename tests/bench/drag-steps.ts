import type { Page } from 'playwright-core';
import { report, spreadOf } from './measure.ts';

const STEPS = 200;
const WARMUPS = 20;
const FRAME_MS = 1000 / 60;

export interface Drag {
  /** Selector of the grip. */
  grip: string;
  /** Arrow keys go so many steps the one way before they turn back. */
  sameWay: number;
  /** What has to be another within each step: an attribute of what a selector finds, or its text where that is null. */
  moves: { selector: string; attribute: string | null }[];
  /** What a step that moved nothing is called. */
  stuck: string;
}

/**
 * Step a grip of the open window, and print the time from the event until all that hangs on it is laid out again, beside
 * the floor: one word of the page changed and laid out, in turn. Arrow keys go the same way as a pointer's moves; each
 * step waits for the frame after it.
 */
export async function reportDrag(page: Page, name: string, drag: Drag): Promise<void> {
  const { oursMs, floorMs } = await stepped(page, drag);
  const [own, floor] = [spreadOf(oursMs), spreadOf(floorMs)];
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
}

function stepped(page: Page, drag: Drag): Promise<{ oursMs: number[]; floorMs: number[] }> {
  return page.evaluate(
    async ({ steps, warmups, grip: gripSelector, sameWay, moves, stuck }) => {
      const grip = document.querySelector<SVGGElement>(gripSelector);
      const heading = document.querySelector('main h1');
      const sheet = document.querySelector('main');
      if (grip === null || heading === null || sheet === null) throw new Error('There is no grip.');
      grip.focus();
      const frame = () => new Promise((resolve) => requestAnimationFrame(resolve));
      const seen = () =>
        moves
          .map(({ selector, attribute }) => {
            const found = document.querySelector(selector);
            return (attribute === null ? found?.textContent : found?.getAttribute(attribute)) ?? '';
          })
          .join();
      const word = document.createElement('span');
      heading.append(word);
      const oursMs: number[] = [];
      const floorMs: number[] = [];
      for (let step = -warmups; step < steps; step += 1) {
        await frame();
        const before = seen();
        let begunMs = performance.now();
        const key = Math.floor(step / sameWay) % 2 === 0 ? 'ArrowUp' : 'ArrowDown';
        grip.dispatchEvent(new KeyboardEvent('keydown', { key, bubbles: true, cancelable: true }));
        // Svelte brings the page up to date in a microtask.
        await Promise.resolve();
        await Promise.resolve();
        sheet.getBoundingClientRect();
        const oneMs = performance.now() - begunMs;
        if (seen() === before) throw new Error(stuck);
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
    },
    { steps: STEPS, warmups: WARMUPS, ...drag },
  );
}
