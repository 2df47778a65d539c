import type Database from 'better-sqlite3';
import type { z } from 'zod';

/** The screens that exist; undo names the one on which its change was made. */
export type Screen =
  'aircraft' | 'loading' | 'fuel' | 'weather' | 'departure' | 'checklists' | 'records' | 'settings';

/** What a change touched, so that the window asks again for just that. */
export type Area =
  | 'aircraft'
  | 'people'
  | 'loading'
  | 'verdicts'
  | 'fuel'
  | 'weather'
  | 'fields'
  | 'settings'
  | 'history'
  | 'library';

/** One call of a request, as kept in the list of changes. */
export interface Call {
  request: string;
  input: unknown;
}

/** What every handler may use. No handler looks at the clock or the disk by itself. */
export interface Context {
  db: Database.Database;
  libraryPath: string;
  /** Now, in UTC epoch seconds. */
  nowEpochS(): number;
  /** A new identifier, unique in the library and elsewhere. */
  newId(): string;
}

/** What long work may use besides: it reports, and it stops when asked. */
export interface WorkContext extends Context {
  signal: AbortSignal;
  progress(report: Progress): void;
  /** Tells every window that something changed. */
  changed(areas: Area[]): void;
  /** Run other code beside this thread: see main/workers/start.ts. */
  workerUrl(name: string): URL;
}

export interface Progress {
  /** What is being done, as words: 'Reading ostrey.csv'. */
  doing: string;
  doneCount: number;
  /** null where the end is not known. */
  totalCount: number | null;
  /** What is counted: 'bytes', 'rows', 'pages'. */
  unit: string;
  /** A line of detail for the person ('184 000 rows a second'). */
  detail?: string;
}

/** A changed library: the answer, what undo will name, and the call that takes it back. */
export interface Changed<O> {
  output: O;
  /** Completes 'Undo ...': 'arm of the rear tank', 'Mara removed'. */
  named: string;
  screen: Screen;
  areas: Area[];
  /** The request that takes it back; a withdrawal for append-only records; null where nothing changed. */
  inverse: Call | null;
  /** The call that does it again, if it differs from the one made (a new id was given). */
  forward?: Call;
}

interface Common<I extends z.ZodType, O extends z.ZodType> {
  /** One line for `ask --list`. */
  about: string;
  input: I;
  output: O;
}

/** What a look at the library may use: one that takes long reports, and stops when asked. */
export type LookContext = Context & Pick<WorkContext, 'signal' | 'progress'>;

/** Looks, never changes. Runs on a read-only connection; 'heavy' ones on a thread of their own. */
export interface ReadRequest<I extends z.ZodType = z.ZodType, O extends z.ZodType = z.ZodType> extends Common<
  I,
  O
> {
  kind: 'read';
  where: 'reader' | 'heavy';
  handle(context: LookContext, input: z.output<I>): z.input<O> | Promise<z.input<O>>;
}

/** Changes what a person can undo. Runs on the writing thread, whole, in one transaction with its undo record. */
export interface ChangeRequest<
  I extends z.ZodType = z.ZodType,
  O extends z.ZodType = z.ZodType,
> extends Common<I, O> {
  kind: 'change';
  handle(context: Context, input: z.output<I>): Changed<z.input<O>>;
}

/** Long or outside the list of undo: imports (with a take-back of their own), backups, undo itself. */
export interface WorkRequest<I extends z.ZodType = z.ZodType, O extends z.ZodType = z.ZodType> extends Common<
  I,
  O
> {
  kind: 'work';
  handle(context: WorkContext, input: z.output<I>): z.input<O> | Promise<z.input<O>>;
}

export type AnyRequest = ReadRequest | ChangeRequest | WorkRequest;

// Three small functions instead of one: each lets TypeScript infer the schemas and checks the handler against them.
export function read<I extends z.ZodType, O extends z.ZodType>(
  request: Omit<ReadRequest<I, O>, 'kind'>,
): ReadRequest<I, O> {
  return { kind: 'read', ...request };
}

export function change<I extends z.ZodType, O extends z.ZodType>(
  request: Omit<ChangeRequest<I, O>, 'kind'>,
): ChangeRequest<I, O> {
  return { kind: 'change', ...request };
}

export function work<I extends z.ZodType, O extends z.ZodType>(
  request: Omit<WorkRequest<I, O>, 'kind'>,
): WorkRequest<I, O> {
  return { kind: 'work', ...request };
}
