import { randomUUID } from 'node:crypto';
import { existsSync, mkdirSync } from 'node:fs';
import { dirname, resolve } from 'node:path';
import { findHostRequest, type HostAbilities, type HostRequest, type HostStatus } from '../requests/host.ts';
import { inputRefused } from '../requests/input-refused.ts';
import { Refusal, type Problem } from '../requests/problem.ts';
import { problemOf, type Answer } from '../requests/run.ts';
import { openService, type Service, type ServiceEvent } from '../workers/service.ts';
import { copyDemo } from './demo.ts';
import { usualLibraryPath } from './library-place.ts';
import { listFolder } from './list-folder.ts';

/** What a host serves: one library at a time, or the reason why none is open, and the way to another. */
export interface Holder {
  request(name: string, input: unknown, call?: string): Promise<Answer>;
  cancel(call: string): void;
  listen(listener: (event: ServiceEvent) => void): () => void;
  status(): Promise<HostStatus>;
  close(): Promise<void>;
}

export interface HolderOptions {
  host: HostStatus['host'];
  /** null: the usual place. */
  libraryPath: string | null;
  isDemo: boolean;
}

/** A library that is open, or one that was refused: then the window shows why, and requests answer with that. */
type Held = { path: string; isDemo: boolean } & ({ service: Service } | { problem: Problem });

/**
 * Begin to open a library and serve requests at once: they wait until it is open. A library that cannot be opened
 * is not an error of the host; its window says what is wrong and offers another.
 */
export function makeHolder({ host, libraryPath, isDemo }: HolderOptions): Holder {
  const listeners = new Set<(event: ServiceEvent) => void>();
  const emit = (event: ServiceEvent) => {
    for (const listener of listeners) listener(event);
  };
  let held: Promise<Held> = isDemo ? hold(copyDemo, true) : hold(() => libraryPath ?? usualLibraryPath(), false);

  /** Never rejects. */
  async function hold(choosePath: () => string, demo: boolean): Promise<Held> {
    let path = libraryPath ?? '';
    try {
      path = resolve(choosePath());
      mkdirSync(dirname(path), { recursive: true });
      const service = await openService(path);
      service.listen(emit);
      return { path, isDemo: demo, service };
    } catch (error) {
      return { path, isDemo: demo, problem: problemOf('library.open', error) };
    }
  }

  /** Two libraries can be open for a moment: the old one is let go only when the new one is there. */
  async function change(choosePath: () => string, demo: boolean): Promise<HostStatus> {
    const before = await held;
    const next = await hold(choosePath, demo);
    if ('problem' in next)
      throw new Refusal(next.problem.code, next.problem.sentence, next.problem.fields);
    held = Promise.resolve(next);
    if ('service' in before) await before.service.close();
    emit({ type: 'changed', areas: ['library'] });
    return statusOf(next);
  }

  function statusOf(each: Held): HostStatus {
    return {
      host,
      libraryPath: each.path,
      isDemo: each.isDemo,
      problem: 'problem' in each ? each.problem : null,
    };
  }

  const abilities: HostAbilities = {
    status: async () => statusOf(await held),
    usualPath: usualLibraryPath,
    listFolder: (path) => listFolder(path === '' ? dirname(usualLibraryPath()) : path),
    openDemo: () => change(copyDemo, true),
    openLibrary: async (path, mayCreate) => {
      const before = await held;
      if ('service' in before && before.path === resolve(path)) return statusOf(before);
      if (!mayCreate && !existsSync(path))
        throw new Refusal('not-found', `There is no file ${path}. Nothing was changed.`);
      return change(() => path, false);
    },
  };

  return {
    async request(name, input, call = randomUUID()) {
      const own = findHostRequest(name);
      if (own !== undefined) return answerItself(name, own, abilities, input);
      const now = await held;
      return 'service' in now ? now.service.request(name, input, call) : { ok: false, problem: now.problem };
    },
    cancel(call) {
      void held.then((now) => {
        if ('service' in now) now.service.cancel(call);
      });
    },
    listen(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    status: abilities.status,
    async close() {
      const now = await held;
      if ('service' in now) await now.service.close();
    },
  };
}

async function answerItself(
  name: string,
  request: HostRequest,
  abilities: HostAbilities,
  input: unknown,
): Promise<Answer> {
  try {
    const parsed = request.input.safeParse(input);
    if (!parsed.success) throw inputRefused(name, parsed.error, input);
    const output = request.output.parse(await request.handle(abilities, parsed.data));
    return { ok: true, output, areas: [] };
  } catch (error) {
    return { ok: false, problem: problemOf(name, error) };
  }
}
