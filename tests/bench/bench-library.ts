import { randomUUID } from 'node:crypto';
import { rmSync } from 'node:fs';
import type { WorkContext } from '../../main/requests/define.ts';
import { runRequest } from '../../main/requests/run.ts';
import { findRequest } from '../../main/requests/table.ts';
import { openLibrary } from '../../main/store/open.ts';

export interface BenchLibrary {
  db: WorkContext['db'];
  /** Make a request, with its answer as the window would get it. */
  ask(name: string, input: unknown): ReturnType<typeof runRequest>;
  close(): void;
}

/** A library on the disk with the program's own requests; closing it removes it. */
export async function benchLibrary(file: string): Promise<BenchLibrary> {
  const db = await openLibrary(file);
  const context: WorkContext = {
    db,
    libraryPath: file,
    nowEpochS: () => Date.now() / 1000,
    newId: randomUUID,
    signal: new AbortController().signal,
    progress: () => undefined,
    changed: () => undefined,
    workerUrl: (name) => new URL(`../../main/workers/${name}.ts`, import.meta.url),
  };
  return {
    db,
    ask: (name, input) => runRequest(name, findRequest(name), context, input),
    close: () => {
      db.close();
      rmSync(file);
    },
  };
}

/**
 * Make a library file by the program's own changes, and leave it for the program to open.
 * @throws Error with the sentence of the first refusal
 */
export async function fillLibrary(
  file: string,
  changes: readonly (readonly [name: string, input: unknown])[],
): Promise<void> {
  const { db, ask } = await benchLibrary(file);
  try {
    for (const [name, input] of changes) {
      const answer = await ask(name, input);
      if (!answer.ok) throw new Error(answer.problem.sentence);
    }
  } finally {
    db.close();
  }
}
