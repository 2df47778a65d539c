import { existsSync, mkdtempSync, rmSync } from 'node:fs';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { chromium, type Browser } from 'playwright-core';
import { prepare, root } from '../../main/hosts/prepare.mjs';
import { browserForTests } from '../browser.ts';
import { startProgram } from '../desktop/harness/program.ts';
import { machineLine, report, spreadOf } from './measure.ts';

// From the start of the built program to a window that can be used, over the loopback host: its fonts are there, its
// screen has its answer. Once in a browser that is open already, once with the browser's own start. Beside it, in
// turn, the floor: a page with one line, served by Node, in the same browser.
const ROUNDS = 15;

prepare((line) => {
  console.log(line);
});
console.log(machineLine());
const isDemo = existsSync(join(root, 'out', 'demo.tarewing'));
const { path, args, env } = browserForTests();
const launch = () => chromium.launch({ executablePath: path, args, env, headless: true });

async function ours(open: () => Promise<Browser>): Promise<number> {
  const folder = mkdtempSync(join(tmpdir(), 'tarewing-bench-'));
  const begunMs = performance.now();
  const library = isDemo ? ['--demo'] : ['--library', join(folder, 'library.tarewing')];
  const program = startProgram([join(root, 'out/main/loopback.js'), '--no-open', ...library], folder);
  const [, address = ''] = await program.waitFor(/(http:\/\/127\.0\.0\.1:\d+\/#\S+)/);
  const browser = await open();
  const page = await browser.newPage({ viewport: { width: 1280, height: 860 } });
  await page.goto(address);
  await page.waitForFunction(
    () =>
      document.fonts.status === 'loaded' &&
      // Until its answer is there, the screen's heading is empty or its name.
      !['', 'Aircraft'].includes((document.querySelector('main h1')?.textContent ?? '').trim()),
    undefined,
    { polling: 'raf' },
  );
  const tookMs = performance.now() - begunMs;
  await page.close();
  await program.end();
  rmSync(folder, { recursive: true, force: true });
  return tookMs;
}

async function floor(open: () => Promise<Browser>): Promise<number> {
  const begunMs = performance.now();
  const server = createServer((_, response) => {
    response.writeHead(200, { 'Content-Type': 'text/html' }).end('<main><h1>One line</h1></main>');
  });
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  const browser = await open();
  const page = await browser.newPage({ viewport: { width: 1280, height: 860 } });
  await page.goto(`http://127.0.0.1:${String((server.address() as AddressInfo).port)}/`);
  await page.waitForFunction(() => document.querySelector('main h1') !== null, undefined, { polling: 'raf' });
  const tookMs = performance.now() - begunMs;
  await page.close();
  server.closeAllConnections();
  server.close();
  return tookMs;
}

async function measure(
  name: string,
  open: () => Promise<Browser>,
  after: () => Promise<void>,
): Promise<void> {
  const times: { ours: number[]; floor: number[] } = { ours: [], floor: [] };
  for (let round = -2; round < ROUNDS; round += 1) {
    for (const [way, run] of [['ours', ours] as const, ['floor', floor] as const]) {
      const tookMs = await run(open);
      if (round >= 0) times[way].push(tookMs);
      await after();
    }
  }
  const [own, other] = [spreadOf(times.ours), spreadOf(times.floor)];
  const against = 'a page with one line';
  report(
    `${name}: ${own.medianMs.toFixed(0)} ms (p95 ${own.p95Ms.toFixed(0)}, ${String(ROUNDS)} starts); ${against} takes ${other.medianMs.toFixed(0)} ms`,
    { name, value: own.medianMs, unit: 'ms', n: ROUNDS, against, ratio: own.medianMs / other.medianMs },
  );
}

const what = isDemo ? 'the demo' : 'a new library';
const open = await launch();
await measure(
  `start to usable window with ${what}, browser open`,
  () => Promise.resolve(open),
  async () => undefined,
);
await open.close();

let fresh: Browser | null = null;
await measure(
  `start to usable window with ${what}, browser started too`,
  async () => (fresh = await launch()),
  async () => {
    await fresh?.close();
    fresh = null;
  },
);
