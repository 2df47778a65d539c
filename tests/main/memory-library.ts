import Database from 'better-sqlite3';
import type { Area, WorkContext } from '../../main/requests/define.ts';
import { runRequest, type Answer } from '../../main/requests/run.ts';
import { findRequest } from '../../main/requests/table.ts';
import { migrations } from '../../main/store/migrations/all.ts';

/** A library in memory with a clock and identifiers that repeat: requests without the library's threads or files. */
export interface MemoryLibrary {
  db: Database.Database;
  request(name: string, input: unknown, signal?: AbortSignal): Promise<Answer>;
  /** The answer's output; throws the refusal's sentence. */
  ask(name: string, input: unknown): Promise<unknown>;
  changedAreas: Area[];
}

export function memoryLibrary(): MemoryLibrary {
  const db = new Database(':memory:');
  db.pragma('foreign_keys = ON');
  for (const migration of migrations) migration.up(db);
  let ids = 0;
  let nowEpochS = 1_790_000_000;
  const changedAreas: Area[] = [];
  const context: WorkContext = {
    db,
    libraryPath: ':memory:',
    nowEpochS: () => nowEpochS++,
    newId: () => `id-${String(++ids)}`,
    signal: new AbortController().signal,
    progress: () => undefined,
    changed: (areas) => changedAreas.push(...areas),
    // Node runs the sources as they stand, so a worker needs no build.
    workerUrl: (name) => new URL(`../../main/workers/${name}.ts`, import.meta.url),
  };
  const request = (name: string, input: unknown, signal = context.signal) =>
    runRequest(name, findRequest(name), { ...context, signal }, input);
  return {
    db,
    request,
    ask: async (name, input) => {
      const answer = await request(name, input);
      if (!answer.ok) throw new Error(answer.problem.sentence);
      return answer.output;
    },
    changedAreas,
  };
}
