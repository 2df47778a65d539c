import { parentPort, workerData } from 'node:worker_threads';
import type { MonthBlock } from '../store/observation-columns.ts';
import { FileProblem } from '../weather-import/file-problem.ts';
import type { ReaderOptions } from '../weather-import/reader.ts';
import { scanFile, type ScanSummary } from '../weather-import/scan.ts';

// A thread that reads one weather file, so that neither the window nor a save waits for it. It never opens the
// library: months go to the writing thread, which says 'more' when it has put them away.

export interface ScanThreadData {
  path: string;
  options: ReaderOptions;
  /** Hand months over; without, the file is only looked at. */
  keepBlocks: boolean;
}

export type FromScanThread =
  | { type: 'blocks'; blocks: MonthBlock[] }
  | { type: 'progress'; readBytes: number; sizeBytes: number; rowCount: number }
  | { type: 'done'; summary: ScanSummary }
  | { type: 'failed'; sentence: string; code: string };

/** A few months a message: small enough that a save in between never waits long for their commit. */
const blocksAtOnce = 8;

if (parentPort === null) throw new Error('This file is a worker: run-scan.ts in weather-import starts it.');
const port = parentPort;
const { path, options, keepBlocks } = workerData as ScanThreadData;
const say = (message: FromScanThread) => {
  port.postMessage(message);
};

let more: (() => void) | null = null;
let taken: Promise<void> = Promise.resolve();
port.on('message', () => {
  more?.();
});

/** One message ahead of the writing thread, so that reading goes on while the last months are put away; no more. */
async function handOver(blocks: MonthBlock[]): Promise<void> {
  for (let i = 0; i < blocks.length; i += blocksAtOnce) {
    await taken;
    taken = new Promise((resolve) => {
      more = resolve;
    });
    say({ type: 'blocks', blocks: blocks.slice(i, i + blocksAtOnce) });
  }
}

let lastProgressMs = 0;
try {
  const summary = await scanFile(path, {
    ...options,
    ...(keepBlocks ? { onBlocks: handOver } : {}),
    onProgress: (readBytes, sizeBytes, rowCount) => {
      const nowMs = performance.now();
      if (nowMs - lastProgressMs < 100) return;
      lastProgressMs = nowMs;
      say({ type: 'progress', readBytes, sizeBytes, rowCount });
    },
  });
  say({ type: 'done', summary });
} catch (error) {
  const code = error instanceof Error && 'code' in error ? String(error.code) : '';
  const words = error instanceof Error ? error.message : String(error);
  say({ type: 'failed', sentence: words, code: error instanceof FileProblem ? error.need : code });
}
port.close();
