import { randomUUID } from 'node:crypto';
import { Worker } from 'node:worker_threads';
import type { Area, Progress } from '../requests/define.ts';
import { Refusal } from '../requests/problem.ts';
import type { Answer } from '../requests/run.ts';
import { findRequest } from '../requests/table.ts';
import type { FromThread, LibraryThreadData, Role, ToThread } from './messages.ts';
import { workerUrl } from './worker-url.ts';

/** What windows are told without asking. */
export type ServiceEvent =
  { type: 'changed'; areas: Area[] } | { type: 'progress'; call: string; report: Progress };

/** An open library behind its threads: what both hosts and their windows talk to. */
export interface Service {
  readonly libraryPath: string;
  /** Run a request; `call` names it for progress and for cancel. Never rejects: refusals are data. */
  request(name: string, input: unknown, call?: string): Promise<Answer>;
  /** Ask long work to stop; it answers 'cancelled' and leaves the library as it was. */
  cancel(call: string): void;
  /** Hear events until the returned function is called. */
  listen(listener: (event: ServiceEvent) => void): () => void;
  close(): Promise<void>;
}

/**
 * Open a library: the writer first (it creates, checks and migrates), then the two readers.
 * @throws Refusal when the file cannot be opened; the file is left as it was.
 */
export async function openService(libraryPath: string): Promise<Service> {
  const listeners = new Set<(event: ServiceEvent) => void>();
  const emit = (event: ServiceEvent) => {
    for (const listener of listeners) listener(event);
  };
  const writer = await startThread('writer', libraryPath, emit);
  const [reader, heavy] = await Promise.all([
    startThread('reader', libraryPath, emit),
    startThread('heavy', libraryPath, emit),
  ]);
  const threads = { writer, reader, heavy };

  return {
    libraryPath,
    request: (name, input, call = randomUUID()) => threads[roleOf(name)].request(name, input, call),
    cancel: (call) => {
      for (const thread of Object.values(threads)) thread.send({ type: 'cancel', call });
    },
    listen: (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    close: async () => {
      await Promise.all([reader.close(), heavy.close()]);
      await writer.close();
    },
  };
}

function roleOf(name: string): Role {
  const request = findRequest(name);
  if (request === undefined) return 'reader';
  return request.kind === 'read' ? request.where : 'writer';
}

interface Thread {
  send(message: ToThread): void;
  request(name: string, input: unknown, call: string): Promise<Answer>;
  close(): Promise<void>;
}

function startThread(role: Role, libraryPath: string, emit: (event: ServiceEvent) => void): Promise<Thread> {
  const data: LibraryThreadData = { role, libraryPath };
  const worker = new Worker(workerUrl('library'), { workerData: data, name: `library ${role}` });
  const waiting = new Map<string, (answer: Answer) => void>();
  const ended = new Promise<void>((resolve) => {
    worker.once('exit', () => {
      resolve();
    });
  });

  const thread: Thread = {
    send: (message) => {
      worker.postMessage(message);
    },
    request: (name, input, call) =>
      new Promise((resolve) => {
        waiting.set(call, resolve);
        thread.send({ type: 'request', call, name, input });
      }),
    close: async () => {
      thread.send({ type: 'close' });
      await ended;
    },
  };

  return new Promise((resolve, reject) => {
    worker.on('message', (message: FromThread) => {
      if (message.type === 'ready') resolve(thread);
      else if (message.type === 'failed')
        reject(new Refusal(message.problem.code, message.problem.sentence, message.problem.fields));
      else if (message.type === 'answer') {
        waiting.get(message.call)?.(message.answer);
        waiting.delete(message.call);
      } else if (message.type === 'progress')
        emit({ type: 'progress', call: message.call, report: message.report });
      else if (message.type === 'changed') emit({ type: 'changed', areas: message.areas });
    });
    worker.on('error', (error) => {
      const sentence = `The part of the program that keeps the library stopped: ${error.message}. What was saved is safe; start the program again.`;
      const problem = { code: 'internal' as const, sentence, fields: [] };
      for (const answer of waiting.values()) answer({ ok: false, problem });
      waiting.clear();
      reject(new Refusal('internal', sentence));
    });
  });
}
