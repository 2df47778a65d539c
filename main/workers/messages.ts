import type { Area, Progress } from '../requests/define.ts';
import type { Problem } from '../requests/problem.ts';
import type { Answer } from '../requests/run.ts';

/** Which connection a thread holds. The writer is the only one that may change the file. */
export type Role = 'writer' | 'reader' | 'heavy';

/** What a library thread is started with. */
export interface LibraryThreadData {
  role: Role;
  libraryPath: string;
}

export type ToThread =
  | { type: 'open' }
  | { type: 'request'; call: string; name: string; input: unknown }
  | { type: 'cancel'; call: string }
  | { type: 'close' };

export type FromThread =
  | { type: 'ready' }
  | { type: 'failed'; problem: Problem }
  | { type: 'answer'; call: string; answer: Answer }
  | { type: 'progress'; call: string; report: Progress }
  | { type: 'changed'; areas: Area[] }
  | { type: 'closed' };
