import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { prepare } from '../../main/hosts/prepare.mjs';
import { machineLine, report, spreadOf } from './measure.ts';
import { withOpenedWindow } from './opened-window.ts';
import { writeShortCsv } from './short-csv.ts';

// A large file through the window's own way, from choosing it to the season's picture: how long the window's thread is ever
// kept busy by one task, by the clock (the browser tells of each over 50 ms) and by the thread's own computing time, which a
// machine busy with other work does not lengthen; and how long a save waits meanwhile.
const ROWS = 2_000_000;
const MOST_TASK_MS = 50;
const MOST_SAVE_MS = 20;

interface Heard {
  longTasks: { startMs: number; durationMs: number }[];
  savesMs: number[];
}

/** Hear of long tasks from the page's first moment on. */
async function listen(page: Page): Promise<void> {
  await page.addInitScript(() => {
    const heard: Heard = { longTasks: [], savesMs: [] };
    Object.assign(globalThis, { heard });
    new PerformanceObserver((list) => {
      for (const { startTime, duration } of list.getEntries())
        heard.longTasks.push({ startMs: startTime, durationMs: duration });
    }).observe({ type: 'longtask', buffered: true });
  });
}

const heard = (page: Page) => page.evaluate(() => (globalThis as unknown as { heard: Heard }).heard);

interface TraceEvent {
  name: string;
  pid: number;
  tid: number;
  /** Microseconds of the thread's own time. */
  tdur?: number;
  args: { name?: string };
}

/** The longest task of the page's main thread by the processor time that the thread had for it. */
function longestComputingMs(trace: string): number {
  const { traceEvents } = JSON.parse(trace) as { traceEvents: TraceEvent[] };
  const mains = new Set(
    traceEvents
      .filter(({ name, args }) => name === 'thread_name' && args.name === 'CrRendererMain')
      .map(({ pid, tid }) => `${String(pid)} ${String(tid)}`),
  );
  const tasks = traceEvents.filter(
    ({ name, pid, tid, tdur }) =>
      name.endsWith('RunTask') && tdur !== undefined && mains.has(`${String(pid)} ${String(tid)}`),
  );
  if (tasks.length === 0) throw new Error('The browser recorded no task of the window.');
  return Math.max(...tasks.map(({ tdur = 0 }) => tdur)) / 1000;
}

/** As a screen would save, ten times a second, timed in the page. */
async function saveAgainAndAgain(page: Page): Promise<void> {
  await page.evaluate(() => {
    const { savesMs } = (globalThis as unknown as { heard: Heard }).heard;
    const token = sessionStorage.getItem('tarewing-token') ?? '';
    const save = async () => {
      const begun = performance.now();
      await fetch('/request', {
        method: 'POST',
        headers: { 'Content-Type': 'application/json', 'X-Tarewing-Token': token },
        body: JSON.stringify({
          name: 'settings.put',
          input: { key: 'bench', value: savesMs.length, named: 'a save' },
          call: crypto.randomUUID(),
        }),
      });
      savesMs.push(performance.now() - begun);
    };
    setInterval(() => void save(), 100);
  });
}

prepare((line) => {
  console.log(line);
});
console.log(machineLine());
const folder = mkdtempSync(join(tmpdir(), 'tarewing-bench-'));
try {
  const csv = join(folder, 'ORD.csv');
  await writeShortCsv(csv, ROWS, 15);
  await withOpenedWindow(
    ['--library', join(folder, 'bench.tarewing')],
    async ({ page, browser }) => {
      const nowMs = () => page.evaluate(() => performance.now());
      await page.getByRole('link', { name: /^Weather/ }).click();
      const chooser = page.getByLabel('Weather files', { exact: true });
      await chooser.waitFor({ state: 'attached' });
      await page.waitForTimeout(1500);
      await browser.startTracing(page, { categories: ['toplevel'] });
      const marks: [string, number][] = [['reading the file', await nowMs()]];
      await chooser.setInputFiles(csv);
      await page.getByRole('button', { name: 'Import', exact: true }).click({ timeout: 300_000 });
      await saveAgainAndAgain(page);
      const done = page.getByRole('status', { name: 'Notices' }).getByText('new observations');
      await done.waitFor({ timeout: 600_000 });
      const { savesMs } = await heard(page);
      marks.push(['showing its season', await nowMs()]);
      await page.waitForTimeout(10_000);
      const endMs = await nowMs();
      const longestMs = longestComputingMs((await browser.stopTracing()).toString('utf8'));
      const { longTasks } = await heard(page);
      marks.forEach(([name, fromMs], i) => {
        const toMs = marks[i + 1]?.[1] ?? endMs;
        const within = longTasks.filter(({ startMs }) => startMs >= fromMs && startMs < toMs);
        const longest = Math.max(0, ...within.map(({ durationMs }) => durationMs));
        report(
          `the window's thread while ${name} (${((toMs - fromMs) / 1000).toFixed(1)} s): ${String(within.length)} tasks over ${String(MOST_TASK_MS)} ms by the clock, the longest ${longest.toFixed(0)} ms`,
          { name: `tasks over 50 ms while ${name}`, value: within.length, unit: 'tasks', n: ROWS },
        );
      });
      report(
        `the longest task of all these by its computing time: ${longestMs.toFixed(1)} ms; at most ${String(MOST_TASK_MS)} wanted`,
        {
          name: "longest task of the window's thread, computing time",
          value: longestMs,
          unit: 'ms',
          n: ROWS,
        },
      );
      const saves = spreadOf(savesMs);
      report(
        `a save during the import, from the window and back: ${saves.medianMs.toFixed(1)} ms (p95 ${saves.p95Ms.toFixed(1)}, ${String(saves.runs)} saves; at most ${String(MOST_SAVE_MS)} wanted)`,
        { name: 'a save during the import', value: saves.medianMs, unit: 'ms', n: saves.runs },
      );
    },
    { preparePage: listen },
  );
} finally {
  rmSync(folder, { recursive: true, force: true });
}
