import { Worker } from 'node:worker_threads';

/** So long a thread is kept after its work: who looks a file through mostly has it imported soon. */
const keptMs = 60_000;

interface Kept {
  url: string;
  thread: Worker;
  forget: () => void;
}
let kept: Kept | null = null;

/** A thread of that worker: the one that was kept, or a new one. */
export function takeThread(url: URL, name: string): Worker {
  if (kept?.url !== url.href) return new Worker(url, { name });
  const { thread, forget } = kept;
  forget();
  thread.ref();
  return thread;
}

/** A thread that is through with its work and waits for more. One is kept, for a while; it keeps no process alive. */
export function keepThread(url: URL, thread: Worker): void {
  if (kept !== null) {
    void thread.terminate();
    return;
  }
  const end = () => {
    forget();
    void thread.terminate();
  };
  const timer = setTimeout(end, keptMs).unref();
  const forget = () => {
    clearTimeout(timer);
    thread.off('error', end);
    thread.off('exit', forget);
    kept = null;
  };
  thread.on('error', end);
  thread.on('exit', forget);
  thread.unref();
  kept = { url: url.href, thread, forget };
}
