import { Refusal } from '../requests/problem.ts';
import type { HolderNote } from '../store/lock.ts';

/** The refusal for a library that another process holds: who does, what is safe, what to do. */
export function inUse(path: string, note: HolderNote | null): Refusal {
  const [who, what] =
    note?.host === 'script'
      ? ['A script', 'Do it again when that has ended.']
      : ['Another window of this program', 'Go on there, or close it first.'];
  const where = typeof note?.address === 'string' ? ` (process ${String(note.pid)}, ${note.address})` : '';
  return new Refusal(
    'in-use',
    `${who}${where} has ${path} open, and only one may change it. Nothing was changed. ${what}`,
  );
}
