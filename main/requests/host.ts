import { z } from 'zod';
import type { Progress } from './define.ts';
import { backups, exported } from './library.ts';
import type { ProblemCode } from './problem.ts';

/** What a host can do besides serving the open library: say how things stand, and open another library. */
export interface HostAbilities {
  status(): Promise<HostStatus>;
  /** Open another library instead; the one that is open stays when that is refused. */
  openLibrary(path: string, mayCreate: boolean): Promise<HostStatus>;
  /** Open a fresh copy of the demo library. */
  openDemo(): Promise<HostStatus>;
  /** The library's usual place on this computer. */
  usualPath(): string;
  listFolder(path: string): Folder;
  /** The backups of the library, also of one that cannot be opened. */
  backups(): Promise<z.infer<typeof backups>>;
  /** Put a backup in the place of a library that cannot be opened, and open it. */
  restore(backupPath: string): Promise<HostStatus>;
  /** Write whatever can be read of a library that cannot be opened into a new folder inside the given one. */
  salvage(into: string, progress: (report: Progress) => void): Promise<unknown>;
}

const problem = z.strictObject({
  code: z.custom<ProblemCode>((code) => typeof code === 'string').meta({ type: 'string' }),
  sentence: z.string(),
  fields: z.array(z.strictObject({ path: z.string(), sentence: z.string() })),
});

const hostStatus = z.strictObject({
  libraryPath: z.string(),
  isDemo: z.boolean(),
  /** null while the library is open; otherwise why it could not be opened. */
  problem: problem.nullable(),
});
export type HostStatus = z.infer<typeof hostStatus>;

const folder = z.strictObject({
  path: z.string(),
  /** null at the top. */
  parentPath: z.string().nullable(),
  folders: z.array(z.strictObject({ name: z.string(), path: z.string() })),
  libraries: z.array(
    z.strictObject({ name: z.string(), path: z.string(), sizeBytes: z.int(), changedEpochS: z.number() }),
  ),
});
export type Folder = z.infer<typeof folder>;

/** A request that the host itself answers, also while no library is open. */
export interface HostRequest<I extends z.ZodType = z.ZodType, O extends z.ZodType = z.ZodType> {
  kind: 'host';
  /** One line for `ask --list`. */
  about: string;
  input: I;
  output: O;
  handle(
    host: HostAbilities,
    input: z.output<I>,
    progress: (report: Progress) => void,
  ): z.input<O> | Promise<z.input<O>>;
}

function host<I extends z.ZodType, O extends z.ZodType>(
  request: Omit<HostRequest<I, O>, 'kind'>,
): HostRequest<I, O> {
  return { kind: 'host', ...request };
}

const path = z.string().min(1).max(4096);

export const hostTable = {
  'host.status': host({
    about: 'Which library this window has open, or why it could not be opened.',
    input: z.strictObject({}),
    output: hostStatus,
    handle: (abilities) => abilities.status(),
  }),
  'host.openLibrary': host({
    about: 'Open another library file instead; null means the usual place. A new file only where mayCreate.',
    input: z.strictObject({ path: path.nullable(), mayCreate: z.boolean() }),
    output: hostStatus,
    handle: (abilities, input) =>
      abilities.openLibrary(input.path ?? abilities.usualPath(), input.path === null || input.mayCreate),
  }),
  'host.openDemo': host({
    about: 'Open a fresh copy of the demo library, which may be spoiled freely.',
    input: z.strictObject({}),
    output: hostStatus,
    handle: (abilities) => abilities.openDemo(),
  }),
  'host.listFolder': host({
    about: 'The folders and library files in a folder; null means the folder of the usual place.',
    input: z.strictObject({ path: path.nullable() }),
    output: folder,
    handle: (abilities, input) => abilities.listFolder(input.path ?? ''),
  }),
  'host.backups': host({
    about: 'The backups of the library, newest first, also while it cannot be opened.',
    input: z.strictObject({}),
    output: backups,
    handle: (abilities) => abilities.backups(),
  }),
  'host.restore': host({
    about:
      'Put a backup in the place of a library that cannot be opened, which is kept beside it, and open it.',
    input: z.strictObject({ path }),
    output: hostStatus,
    handle: (abilities, input) => abilities.restore(input.path),
  }),
  'host.salvage': host({
    about:
      'Write what can be read of a library that cannot be opened into a new folder inside the given one.',
    input: z.strictObject({ into: path }),
    output: exported,
    handle: async (abilities, input, progress) =>
      exported.parse(await abilities.salvage(input.into, progress)),
  }),
} satisfies Record<string, HostRequest>;

export type HostTable = typeof hostTable;

export function findHostRequest(name: string): HostRequest | undefined {
  return Object.hasOwn(hostTable, name) ? hostTable[name as keyof HostTable] : undefined;
}
