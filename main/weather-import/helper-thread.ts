import { Worker } from 'node:worker_threads';
import type { FromStretchThread, ToStretchThread } from '../workers/weather-stretches.ts';
import type { StretchHelper } from './scan-in-stretches.ts';
import type { Findings } from './stretch.ts';

/** A shorter file is read before a thread has started. */
const leastBytes = 24 << 20;
/** Long enough that handing over weighs nothing, short enough that no thread waits long for the other's last one. */
const stretchBytes = 2 << 20;

/**
 * A thread that reads stretches of long files beside this one. It is started when it is needed first, and ends with this
 * one. Should it break down, this one reads everything by itself.
 */
export function helperThread(url: URL): StretchHelper {
  const waiting = new Map<number, (findings: Findings | null) => void>();
  let thread: Worker | null = null;
  let isBroken = false;
  let turn = 0;

  function breakDown(): void {
    isBroken = true;
    for (const answer of waiting.values()) answer(null);
    waiting.clear();
  }

  function start(): Worker {
    const started = new Worker(url, { name: 'weather import, second' });
    started.on('message', ({ turn, findings }: FromStretchThread) => {
      waiting.get(turn)?.(findings);
      waiting.delete(turn);
    });
    started.on('error', breakDown);
    started.on('exit', breakDown);
    return started;
  }

  function say(message: ToStretchThread): void {
    thread?.postMessage(message);
  }

  return {
    leastBytes,
    stretchBytes,
    begin: (file) => {
      thread ??= start();
      say({ type: 'file', file });
    },
    read: (stretch) => {
      if (isBroken) return Promise.resolve(null);
      turn++;
      say({ type: 'stretch', turn, stretch });
      return new Promise((resolve) => waiting.set(turn, resolve));
    },
  };
}
