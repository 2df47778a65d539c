import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Browser, Page } from 'playwright-core';
import { prepare } from '../../main/hosts/prepare.mjs';
import { fromPage } from '../desktop/harness/from-page.ts';
import type { Program } from '../desktop/harness/program.ts';
import { machineLine, report } from './measure.ts';
import { withOpenedWindow, type OpenedWindow } from './opened-window.ts';
import { writeShortCsv } from './short-csv.ts';

// What the whole program holds in memory with seven million observations of one station loaded (a report every five minutes
// over 66 years) and its season, its day and the planner's answer shown: each process by name, and each thread of ours by
// its heap and by what lies outside of it (the columns). Beside it the same program with an empty library.
const ROWS = 7_000_000;
const probe = fileURLToPath(new URL('memory-probe.mjs', import.meta.url));
const mb = (bytes: number) => bytes / 1e6;

interface Held {
  /** Process to its memory in RAM, in MB. */
  processes: Map<string, number>;
  threads: { name: string; heapBytes: number; outsideHeapBytes: number }[];
  windowHeapMb: number;
}

/** What of a process is in RAM, shared pages by its share of them. */
function residentMb(processId: number): number {
  const line = /^Pss:\s+(\d+) kB/m.exec(readFileSync(`/proc/${String(processId)}/smaps_rollup`, 'utf8'));
  return (Number(line?.[1]) * 1024) / 1e6;
}

async function threadsOf(program: Program): Promise<Held['threads']> {
  const told = new Promise<Held['threads']>((resolve) => {
    program.child.on('message', (message) => {
      if (typeof message === 'object' && 'memory' in message) resolve(message.memory as Held['threads']);
    });
  });
  program.child.send('memory');
  return told;
}

async function browserProcesses(browser: Browser): Promise<{ type: string; id: number }[]> {
  const session = await browser.newBrowserCDPSession();
  const { processInfo } = await session.send('SystemInfo.getProcessInfo');
  return processInfo;
}

async function held({ program, browser, page }: OpenedWindow): Promise<Held> {
  const session = await page.context().newCDPSession(page);
  await session.send('HeapProfiler.collectGarbage');
  await session.send('Performance.enable');
  const { metrics } = await session.send('Performance.getMetrics');
  const threads = await threadsOf(program);
  const processes = new Map([['the host with its threads', residentMb(program.child.pid ?? 0)]]);
  for (const { type, id } of await browserProcesses(browser)) {
    const name = type === 'renderer' ? "the window's page" : `the browser's ${type.replaceAll('.', ' ')}`;
    processes.set(name, (processes.get(name) ?? 0) + residentMb(id));
  }
  return {
    processes,
    threads,
    windowHeapMb: mb(metrics.find(({ name }) => name === 'JSHeapUsedSize')?.value ?? NaN),
  };
}

/** @param beforeMb of the same program over an empty library */
function say(name: string, where: string, nowMb: number, beforeMb: number | undefined): void {
  report(
    `${name}: ${nowMb.toFixed(0)} MB ${where}; with an empty library ${String(beforeMb?.toFixed(0))} MB`,
    {
      name: `${name}, ${where}, seven million observations loaded`,
      value: nowMb,
      unit: 'MB',
      n: ROWS,
      against: 'an empty library',
      ratio: nowMb / (beforeMb ?? NaN),
    },
  );
}

const place = { name: 'Bench', identifier: null, latitudeDeg: 39.2, longitudeDeg: -105.6, elevationM: 1372 };

/** @throws Error with the refusal's sentence */
async function asked(page: Page, name: string, input: unknown): Promise<unknown> {
  const answer = await fromPage(page, name, input);
  if (answer.ok) return answer.output;
  throw new Error(answer.problem.sentence);
}

if (process.platform !== 'linux') {
  console.log('What a process holds is read as Linux tells it; skipped here.');
  process.exit(0);
}
prepare((line) => {
  console.log(line);
});
console.log(machineLine());
const folder = mkdtempSync(join(tmpdir(), 'tarewing-bench-'));
try {
  const csv = join(folder, 'archive.csv');
  await writeShortCsv(csv, ROWS, 5);
  const library = ['--library', join(folder, 'bench.tarewing')];
  const probed = { nodeArguments: ['--import', probe] };
  const empty = await withOpenedWindow(
    library,
    async (window) => {
      const before = await held(window);
      const { stationId } = (await asked(window.page, 'weather.import', {
        path: csv,
        station: { place },
      })) as { stationId: string };
      await asked(window.page, 'fields.put', {
        field: { ...place, weatherStationId: stationId, runways: [] },
      });
      return before;
    },
    probed,
  );
  const loaded = await withOpenedWindow(
    library,
    async (window) => {
      await window.page.getByRole('link', { name: /^Weather/ }).click();
      await window.page.locator('.season svg').waitFor({ timeout: 300_000 });
      // The planner's answer, its tables and the days behind the picture come after it.
      await window.page.waitForTimeout(10_000);
      return held(window);
    },
    probed,
  );
  for (const [name, mbNow] of loaded.processes) say(name, 'in RAM', mbNow, empty.processes.get(name));
  loaded.threads.forEach((thread, i) => {
    const before = empty.threads[i];
    say(thread.name, 'on its heap', mb(thread.heapBytes), mb(before?.heapBytes ?? NaN));
    say(thread.name, 'outside its heap', mb(thread.outsideHeapBytes), mb(before?.outsideHeapBytes ?? NaN));
  });
  say("the window's scripts", 'on their heap', loaded.windowHeapMb, empty.windowHeapMb);
} finally {
  rmSync(folder, { recursive: true, force: true });
}
