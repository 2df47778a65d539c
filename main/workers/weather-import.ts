import { parentPort } from 'node:worker_threads';
import type { MonthBlock } from '../store/observation-columns.ts';
import type { Content } from '../weather-import/content.ts';
import { FileProblem } from '../weather-import/file-problem.ts';
import { helperThread } from '../weather-import/helper-thread.ts';
import type { ReaderOptions } from '../weather-import/reader.ts';
import type { StretchHelper } from '../weather-import/scan-in-stretches.ts';
import { scanFile, type ScanSummary } from '../weather-import/scan.ts';

// A thread that reads weather files one after the other, so that neither the window nor a save waits for it. It never
// opens the library: months go to the writing thread, which says 'more' when it has put them away. It can be given files
// again when it is through with some.

export interface FilesToRead {
  files: (Content & { options: ReaderOptions })[];
  /** Hand months over; without, the files are only looked at. */
  keepBlocks: boolean;
  /** Where the worker lies that reads stretches of long files beside this one. */
  helperUrl: string;
}

export type ToScanThread = ({ type: 'read' } & FilesToRead) | { type: 'more' };

/** `at` is the file's place in the list. Everything about a file is said before anything about the next one. */
export type FromScanThread =
  | { type: 'blocks'; at: number; blocks: MonthBlock[] }
  | { type: 'progress'; at: number; readBytes: number; rowCount: number }
  | { type: 'done'; at: number; summary: ScanSummary }
  | { type: 'failed'; at: number; sentence: string; code: string };

/** A few months a message: small enough that a save in between never waits long for their commit. */
const blocksAtOnce = 8;
const progressEveryMs = 100;

if (parentPort === null) throw new Error('This file is a worker: run-scans.ts in weather-import starts it.');
const port = parentPort;
const say = (message: FromScanThread, memory: ArrayBuffer[] = []) => {
  port.postMessage(message, memory);
};

let more: (() => void) | null = null;
let taken: Promise<void> = Promise.resolve();
let helper: StretchHelper | null = null;
port.on('message', (message: ToScanThread) => {
  if (message.type === 'more') more?.();
  else void read(message);
});

/** One message ahead of the writing thread, so that reading goes on while the last months are put away; no more. */
async function handOver(at: number, blocks: MonthBlock[]): Promise<void> {
  for (let i = 0; i < blocks.length; i += blocksAtOnce) {
    await taken;
    taken = new Promise((resolve) => {
      more = resolve;
    });
    const some = blocks.slice(i, i + blocksAtOnce);
    say(
      { type: 'blocks', at, blocks: some },
      some.map(({ minuteOfMonth }) => minuteOfMonth.buffer as ArrayBuffer),
    );
  }
}

async function read({ files, keepBlocks, helperUrl }: FilesToRead): Promise<void> {
  helper ??= helperThread(new URL(helperUrl));
  let lastProgressMs = 0;
  for (const [at, { path, entry, options }] of files.entries()) {
    try {
      const summary = await scanFile(
        { path, entry },
        {
          ...options,
          helper,
          ...(keepBlocks ? { onBlocks: (blocks: MonthBlock[]) => handOver(at, blocks) } : {}),
          onProgress: (readBytes, rowCount) => {
            const nowMs = performance.now();
            if (nowMs - lastProgressMs < progressEveryMs) return;
            lastProgressMs = nowMs;
            say({ type: 'progress', at, readBytes, rowCount });
          },
        },
      );
      say({ type: 'done', at, summary });
    } catch (error) {
      const code = error instanceof Error && 'code' in error ? String(error.code) : '';
      const words = error instanceof Error ? error.message : String(error);
      say({ type: 'failed', at, sentence: words, code: error instanceof FileProblem ? error.need : code });
    }
  }
}
