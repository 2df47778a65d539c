// Loaded before a host of the program (node --import): answers over the process's channel how much memory the process and
// each of its threads hold. Threads know their own heaps alone, so the constructor notes them; nothing else is changed.
import { createRequire, syncBuiltinESMExports } from 'node:module';
import { isMainThread } from 'node:worker_threads';
import { getHeapStatistics } from 'node:v8';

/** @type {Map<import('node:worker_threads').Worker, string>} */
const threads = new Map();

if (isMainThread) {
  const builtin = createRequire(import.meta.url)('node:worker_threads');
  builtin.Worker = class extends builtin.Worker {
    /**
     * @param {URL} url
     * @param {import('node:worker_threads').WorkerOptions} options
     */
    constructor(url, options) {
      super(url, options);
      note(/** @type {any} */ (this), options?.name ?? url.pathname.replace(/.*\//, ''));
    }
  };
  syncBuiltinESMExports();
  process.on('message', (message) => {
    if (message === 'memory') void answer();
  });
  // The channel alone must not keep the program alive.
  process.channel?.unref();
}

/**
 * @param {import('node:worker_threads').Worker} thread
 * @param {string} name
 */
function note(thread, name) {
  threads.set(thread, name);
  thread.once('exit', () => threads.delete(thread));
}

async function answer() {
  const heaps = await Promise.all(
    [...threads].map(async ([thread, name]) => ({ name, ...sizes(await thread.getHeapStatistics()) })),
  );
  process.send?.({
    memory: [{ name: 'its own thread', ...sizes(getHeapStatistics()) }, ...heaps],
    arrayBuffersBytes: process.memoryUsage().arrayBuffers,
  });
}

/** @param {{used_heap_size: number, external_memory: number}} statistics */
function sizes(statistics) {
  return { heapBytes: statistics.used_heap_size, outsideHeapBytes: statistics.external_memory };
}
