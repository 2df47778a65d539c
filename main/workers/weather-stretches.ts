import { closeSync, openSync } from 'node:fs';
import { parentPort } from 'node:worker_threads';
import { recognise } from '../weather-import/recognise.ts';
import type { SharedFile } from '../weather-import/scan-in-stretches.ts';
import { readStretch, type Findings, type Stretch, type StretchSource } from '../weather-import/stretch.ts';

// A thread that reads stretches of long weather files for the thread that reads the files (weather-import.ts), which is
// the one that starts it and puts together what both have found.

export type ToStretchThread =
  | { type: 'file'; file: SharedFile }
  /** Of the file that was named last; `turn` names the answer. */
  | { type: 'stretch'; turn: number; stretch: Stretch };

export interface FromStretchThread {
  turn: number;
  findings: Findings | null;
}

if (parentPort === null)
  throw new Error('This file is a worker: helper-thread.ts in weather-import starts it.');
const port = parentPort;

let shared: (SharedFile & StretchSource) | null = null;
// One after the other: a kind may have to be loaded before its first stretch is read.
let before = Promise.resolve();
port.on('message', (message: ToStretchThread) => {
  before = before.then(() => (message.type === 'file' ? begin(message.file) : read(message)));
});

async function begin(file: SharedFile): Promise<void> {
  if (shared !== null) closeSync(shared.file);
  shared = null;
  try {
    const kind = await recognise(Buffer.from(file.head), file.options);
    shared = { ...file, kind, file: openSync(file.path, 'r') };
  } catch {
    // What is wrong with it is said by the thread that reads the file.
  }
}

function read({ turn, stretch }: { turn: number; stretch: Stretch }): void {
  const findings = shared === null ? null : readStretch(shared, stretch, shared.carried);
  const answer: FromStretchThread = { turn, findings };
  port.postMessage(answer, findings === null ? [] : [findings.rows.memory]);
}
