import { randomUUID } from 'node:crypto';
import { Worker } from 'node:worker_threads';
import type { Area, Progress } from '../requests/define.ts';
import { Refusal, type Problem } from '../requests/problem.ts';
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
  const writer = startThread('writer', libraryPath, emit);
  const reader = startThread('reader', libraryPath, emit);
  const heavy = startThread('heavy', libraryPath, emit);
  try {
    await writer.open();
    await Promise.all([reader.open(), heavy.open()]);
  } catch (error) {
    await Promise.all([writer, reader, heavy].map((thread) => thread.stop()));
    throw error;
  }
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
  /** Let it open its connection. */
  open(): Promise<void>;
  send(message: ToThread): void;
  request(name: string, input: unknown, call: string): Promise<Answer>;
  /** Close its connection and end it. */
  close(): Promise<void>;
  /** End it where it stands. */
  stop(): Promise<void>;
}

function startThread(role: Role, libraryPath: string, emit: (event: ServiceEvent) => void): Thread {
  const data: LibraryThreadData = { role, libraryPath };
  const worker = new Worker(workerUrl('library'), { workerData: data, name: `library ${role}` });
  const waiting = new Map<string, (answer: Answer) => void>();
  const opened = Promise.withResolvers<undefined>();
  // Whether anybody waits for it or not.
  opened.promise.catch(() => undefined);
  let broken: Problem | null = null;

  /** A thread that is gone answers nothing any more; nobody is left waiting for it. */
  const breakOff = (problem: Problem) => {
    broken ??= problem;
    opened.reject(new Refusal(broken.code, broken.sentence, broken.fields));
    for (const answer of waiting.values()) answer({ ok: false, problem: broken });
    waiting.clear();
  };
  const ended = new Promise<void>((resolve) => {
    worker.once('exit', () => {
      breakOff(stopped('it ended'));
      resolve();
    });
  });
  worker.on('error', (error) => {
    breakOff(stopped(error.message));
  });
  worker.on('message', (message: FromThread) => {
    if (message.type === 'ready') opened.resolve(undefined);
    else if (message.type === 'failed') breakOff(message.problem);
    else if (message.type === 'answer') {
      waiting.get(message.call)?.(message.answer);
      waiting.delete(message.call);
    } else if (message.type === 'progress')
      emit({ type: 'progress', call: message.call, report: message.report });
    else if (message.type === 'changed') emit({ type: 'changed', areas: message.areas });
  });

  const send = (message: ToThread) => {
    worker.postMessage(message);
  };
  return {
    send,
    async open() {
      send({ type: 'open' });
      await opened.promise;
    },
    request(name, input, call) {
      if (broken !== null) return Promise.resolve({ ok: false, problem: broken });
      return new Promise((resolve) => {
        waiting.set(call, resolve);
        send({ type: 'request', call, name, input });
      });
    },
    async close() {
      send({ type: 'close' });
      await ended;
    },
    async stop() {
      await worker.terminate();
    },
  };
}

function stopped(why: string): Problem {
  const sentence = `The part of the program that keeps the library stopped (${why}). What was saved is safe; start the program again.`;
  return { code: 'internal', sentence, fields: [] };
}
