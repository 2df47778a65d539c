import type { Answer } from '../../../main/requests/run.ts';
import type { ServiceEvent } from '../../../main/workers/service.ts';
import type { Bridge } from '../../app/bridge.ts';

/** A request's stand-in: the answer's output, or an Error whose message is the refusal. */
export type StandIn = (input: never) => unknown;

/**
 * A bridge with nothing behind it but memory: settings that can be put, and whatever stand-ins are given.
 * For the parts page and for tests of components.
 */
export function partsBridge(
  standIns: Record<string, StandIn> = {},
): Bridge & { emit: (event: ServiceEvent) => void; asked: { name: string; input: unknown }[] } {
  const listeners = new Set<(event: ServiceEvent) => void>();
  const settings: Record<string, unknown> = {};
  const asked: { name: string; input: unknown }[] = [];
  const emit = (event: ServiceEvent) => {
    for (const listener of listeners) listener(event);
  };
  const own: Record<string, StandIn> = {
    'host.status': () => ({
      libraryPath: '/home/pilot/Documents/own.tarewing',
      isDemo: false,
      problem: null,
    }),
    'host.backups': () => ({ folder: '/home/pilot/backups', backups: [] }),
    'library.describe': () => ({
      path: '/home/pilot/Documents/own.tarewing',
      schemaVersion: 10,
      sizeBytes: 40_960,
      synced: null,
      notices: [],
    }),
    'aircraft.list': () => ({ aircraft: [], currentId: null }),
    'fields.list': () => [],
    'history.next': () => ({ undo: null, redo: null }),
    'settings.get': () => ({ ...settings }),
    'settings.remember': () => ({}),
    'settings.put': ({ key, value }: { key: string; value: unknown }) => {
      settings[key] = value;
      emit({ type: 'changed', areas: ['settings'] });
      return {};
    },
  };

  return {
    asked,
    emit,
    request(name, input): Promise<Answer> {
      asked.push({ name, input });
      const standIn = standIns[name] ?? own[name];
      try {
        if (standIn === undefined) throw new Error(`Nothing stands in for '${name}'.`);
        return Promise.resolve({ ok: true, output: standIn(input as never), areas: [] });
      } catch (error) {
        const sentence = error instanceof Error ? error.message : String(error);
        return Promise.resolve({ ok: false, problem: { code: 'input-refused', sentence, fields: [] } });
      }
    },
    cancel: () => undefined,
    listen(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    pathOf: () => Promise.reject(new Error('No files here.')),
    print: () => Promise.resolve(),
  };
}
