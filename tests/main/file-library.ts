import type Database from 'better-sqlite3';
import { randomUUID } from 'node:crypto';
import type { Area, Progress, WorkContext } from '../../main/requests/define.ts';
import { runRequest, type Answer } from '../../main/requests/run.ts';
import { findRequest } from '../../main/requests/table.ts';
import { openLibrary, type OpenOptions } from '../../main/store/open.ts';

/** A library in a file with its writing connection, as the writing thread has it, without the thread. */
export interface FileLibrary {
  db: Database.Database;
  request(name: string, input: unknown): Promise<Answer>;
  /** The answer's output; throws the refusal's sentence. */
  ask(name: string, input: unknown): Promise<unknown>;
  changedAreas: Area[];
  progress: Progress[];
  close(): void;
}

export async function fileLibrary(path: string, options: OpenOptions = {}): Promise<FileLibrary> {
  const db = await openLibrary(path, options);
  const changedAreas: Area[] = [];
  const progress: Progress[] = [];
  const context: WorkContext = {
    db,
    libraryPath: path,
    nowEpochS: options.nowEpochS ?? (() => Date.now() / 1000),
    newId: () => randomUUID(),
    signal: new AbortController().signal,
    progress: (report) => progress.push(report),
    changed: (areas) => changedAreas.push(...areas),
    // Node runs the sources as they stand, so a worker needs no build.
    workerUrl: (name) => new URL(`../../main/workers/${name}.ts`, import.meta.url),
  };
  const request = (name: string, input: unknown) => runRequest(name, findRequest(name), context, input);
  return {
    db,
    request,
    ask: async (name, input) => {
      const answer = await request(name, input);
      if (!answer.ok) throw new Error(answer.problem.sentence);
      return answer.output;
    },
    changedAreas,
    progress,
    close: () => db.close(),
  };
}
