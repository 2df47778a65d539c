import type Database from 'better-sqlite3';
import { randomUUID } from 'node:crypto';
import { parentPort, workerData, type MessagePort } from 'node:worker_threads';
import type { WorkContext } from '../requests/define.ts';
import { problemOf, runRequest } from '../requests/run.ts';
import { findRequest } from '../requests/table.ts';
import { backUpAtStart, lastChangedMs } from '../store/backups.ts';
import { addNotice } from '../store/notices.ts';
import { openForReading, openLibrary } from '../store/open.ts';
import { logSlowStatements } from '../store/slow-log.ts';
import type { FromThread, LibraryThreadData, ToThread } from './messages.ts';
import { workerUrl } from './worker-url.ts';

// A thread that holds one connection to the library and answers requests of the table on it.

if (parentPort === null) throw new Error('This file is a worker: it is started by main/workers/service.ts.');
await serve(parentPort, workerData as LibraryThreadData);

async function serve(port: MessagePort, { role, libraryPath }: LibraryThreadData): Promise<void> {
  const say = (message: FromThread) => {
    port.postMessage(message);
  };
  // A reader is started beside the writer, to be loaded by the time that there is a library to read.
  await new Promise((resolve) => port.once('message', resolve));
  const changedMs = role === 'writer' ? lastChangedMs(libraryPath) : null;
  let db: Database.Database;
  try {
    db = role === 'writer' ? await openLibrary(libraryPath) : openForReading(libraryPath);
  } catch (error) {
    say({ type: 'failed', problem: problemOf('library.open', error) });
    port.close();
    return;
  }
  const running = new Map<string, AbortController>();

  port.on('message', (message: ToThread) => {
    if (message.type === 'request') void answer(message.call, message.name, message.input);
    else if (message.type === 'cancel') running.get(message.call)?.abort();
    else {
      for (const controller of running.values()) controller.abort();
      db.close();
      say({ type: 'closed' });
      port.close();
    }
  });
  say({ type: 'ready' });
  logSlowStatements(db, process.env.TAREWING_SLOW_MS);
  if (role === 'writer') void backUp();

  // After the window has its library: a backup is never what a person waits for.
  async function backUp(): Promise<void> {
    try {
      await backUpAtStart(db, libraryPath, changedMs, Date.now() / 1000);
    } catch (error) {
      if (!db.open) return;
      addNotice(db, Date.now() / 1000, problemOf('library.backUp', error).sentence);
      say({ type: 'changed', areas: ['library'] });
    }
  }

  async function answer(call: string, name: string, input: unknown): Promise<void> {
    const controller = new AbortController();
    running.set(call, controller);
    const context: WorkContext = {
      db,
      libraryPath,
      nowEpochS: () => Date.now() / 1000,
      newId: () => randomUUID(),
      signal: controller.signal,
      progress: (report) => {
        say({ type: 'progress', call, report });
      },
      changed: (areas) => {
        say({ type: 'changed', areas });
      },
      workerUrl,
    };
    const result = await runRequest(name, findRequest(name), context, input);
    running.delete(call);
    if (result.ok && result.areas.length > 0) say({ type: 'changed', areas: result.areas });
    say({ type: 'answer', call, answer: result });
  }
}
