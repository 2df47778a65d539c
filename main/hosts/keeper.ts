import { randomUUID } from 'node:crypto';
import { existsSync, mkdirSync } from 'node:fs';
import { dirname, resolve } from 'node:path';
import type { Progress } from '../requests/define.ts';
import { findHostRequest, type HostAbilities, type HostRequest, type HostStatus } from '../requests/host.ts';
import { inputRefused } from '../requests/input-refused.ts';
import { Refusal, type Problem } from '../requests/problem.ts';
import { problemOf, type Answer } from '../requests/run.ts';
import { backupsFolder } from '../store/backup-names.ts';
import { listBackups } from '../store/backups.ts';
import { holdLibrary, type Hold, type HolderNote } from '../store/lock.ts';
import { runRescue } from '../workers/run-rescue.ts';
import { openService, type Service, type ServiceEvent } from '../workers/service.ts';
import { copyDemo } from './demo.ts';
import { removeDoor, writeDoor, type Door } from './door-file.ts';
import { inUse } from './in-use.ts';
import { usualLibraryPath } from './library-place.ts';
import { listFolder } from './list-folder.ts';

/** Keeps one library open for a host, or the reason why none is, and the way to another. */
export interface Keeper {
  request(name: string, input: unknown, call?: string): Promise<Answer>;
  cancel(call: string): void;
  listen(listener: (event: ServiceEvent) => void): () => void;
  status(): Promise<HostStatus>;
  close(): Promise<void>;
}

export interface KeeperOptions {
  /** null: the usual place. */
  libraryPath: string | null;
  isDemo: boolean;
  host: HolderNote['host'];
  /** How scripts and a second start reach this process; null where they cannot. */
  door: Door | null;
}

/** A library that is open, or one that was refused: then requests answer with that, and the window shows it. */
type Kept = { path: string; isDemo: boolean } & (
  { service: Service; letGo(): Promise<void> } | { problem: Problem }
);

/**
 * Begin to open a library and serve requests at once: they wait until it is open. A library that cannot be opened
 * is not an error of the host; its window says what is wrong and offers another.
 */
export function makeKeeper(options: KeeperOptions): Keeper {
  const listeners = new Set<(event: ServiceEvent) => void>();
  const emit = (event: ServiceEvent) => {
    for (const listener of listeners) listener(event);
  };
  const firstPath = () => resolve(options.libraryPath ?? usualLibraryPath());
  let kept = options.isDemo ? keep(copyDemo, true) : keep(firstPath, false);

  /** Never rejects. */
  async function keep(choosePath: () => string, isDemo: boolean): Promise<Kept> {
    let path = '';
    try {
      path = choosePath();
      return { path, isDemo, ...(await openHeld(path, options, emit)) };
    } catch (error) {
      return { path, isDemo, problem: problemOf('library.open', error) };
    }
  }

  // One change of library after the other, however fast they are asked for.
  let turn: Promise<unknown> = kept;
  function change(choosePath: () => string, isDemo: boolean): Promise<HostStatus> {
    const mine = turn.then(() => changeNow(choosePath, isDemo));
    turn = mine.catch(() => undefined);
    return mine;
  }

  /** Two libraries are open for a moment: the old one is let go only when the new one is there. */
  async function changeNow(choosePath: () => string, isDemo: boolean): Promise<HostStatus> {
    const before = await kept;
    const next = await keep(choosePath, isDemo);
    if ('problem' in next) throw new Refusal(next.problem.code, next.problem.sentence, next.problem.fields);
    kept = Promise.resolve(next);
    if ('service' in before) await before.letGo();
    emit({ type: 'changed', areas: ['library'] });
    return statusOf(next);
  }

  const abilities: HostAbilities = {
    status: async () => statusOf(await kept),
    usualPath: usualLibraryPath,
    listFolder: (path) => listFolder(path === '' ? dirname(usualLibraryPath()) : path),
    openDemo: () => change(copyDemo, true),
    openLibrary: async (asked, mayCreate) => {
      const path = resolve(asked);
      const before = await kept;
      if ('service' in before && before.path === path) return statusOf(before);
      if (!mayCreate && !existsSync(path))
        throw new Refusal('not-found', `There is no file ${path}. Nothing was changed.`);
      return change(() => path, false);
    },
    backups: async () => {
      const { path } = await kept;
      return { folder: backupsFolder(path), backups: listBackups(path) };
    },
    restore: async (backupPath) => {
      const { path } = await rescue(({ path: libraryPath }) =>
        runRescue({ type: 'restore', libraryPath, backupPath }, () => undefined),
      );
      return change(() => path, false);
    },
    salvage: async (into, progress) => {
      const { output } = await rescue(({ path: libraryPath }) =>
        runRescue({ type: 'salvage', libraryPath, into }, progress),
      );
      return output;
    },
  };

  /** Work on a library that could not be opened, held meanwhile so that nobody else opens it. */
  async function rescue(work: (refused: Kept) => Promise<unknown>) {
    const refused = await kept;
    if ('service' in refused)
      throw new Refusal(
        'in-use',
        `${refused.path} is open, so there is nothing to rescue. Nothing was changed. Use its own backups and export.`,
      );
    const hold = holdFor(refused.path, options);
    try {
      return { path: refused.path, output: await work(refused) };
    } finally {
      hold.release();
    }
  }

  return {
    async request(name, input, call = randomUUID()) {
      const own = findHostRequest(name);
      if (own !== undefined)
        return answerItself(name, own, abilities, input, (report) => {
          emit({ type: 'progress', call, report });
        });
      const now = await kept;
      return 'service' in now ? now.service.request(name, input, call) : { ok: false, problem: now.problem };
    },
    cancel(call) {
      void kept.then((now) => {
        if ('service' in now) now.service.cancel(call);
      });
    },
    listen(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    status: abilities.status,
    async close() {
      const now = await kept;
      if ('service' in now) await now.letGo();
    },
  };
}

/** @throws Refusal when another process holds it */
function holdFor(path: string, { host, door }: KeeperOptions): Hold {
  const note = { pid: process.pid, host, address: door?.origin ?? null, sinceEpochS: Date.now() / 1000 };
  const hold = holdLibrary(path, note);
  if (!hold.held) throw inUse(path, hold.by.note);
  return hold;
}

/**
 * Hold a library for this process alone and open it.
 * @throws Refusal when it is held elsewhere or cannot be opened
 */
async function openHeld(path: string, options: KeeperOptions, emit: (event: ServiceEvent) => void) {
  const { door } = options;
  // The usual place is made when it is first used; the folder of any other file is the person's to make.
  if (path === usualLibraryPath()) mkdirSync(dirname(path), { recursive: true });
  const hold = holdFor(path, options);
  try {
    const service = await openService(path);
    service.listen(emit);
    if (door !== null) writeDoor(path, door);
    return {
      service,
      async letGo() {
        if (door !== null) removeDoor(path, door.token);
        await service.close();
        hold.release();
      },
    };
  } catch (error) {
    hold.release();
    throw error;
  }
}

function statusOf(kept: Kept): HostStatus {
  return {
    libraryPath: kept.path,
    isDemo: kept.isDemo,
    problem: 'problem' in kept ? kept.problem : null,
  };
}

async function answerItself(
  name: string,
  request: HostRequest,
  abilities: HostAbilities,
  input: unknown,
  progress: (report: Progress) => void,
): Promise<Answer> {
  try {
    const parsed = request.input.safeParse(input);
    if (!parsed.success) throw inputRefused(name, parsed.error, input);
    const output = request.output.parse(await request.handle(abilities, parsed.data, progress));
    return { ok: true, output, areas: [] };
  } catch (error) {
    return { ok: false, problem: problemOf(name, error) };
  }
}
