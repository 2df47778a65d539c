import { Refusal } from '../requests/problem.ts';
import type { Found } from './inspect.ts';

/** The sentence for a file that is not opened: what it is, that it was left alone, what to do. */
export function refusalFor(
  path: string,
  found: Exclude<Found, { kind: 'nothing' | 'library' }>,
  knownVersion: number,
): Refusal {
  switch (found.kind) {
    case 'newer':
      return new Refusal(
        'library-newer',
        `${path} was written by a newer Tarewing: its format is ${String(found.schemaVersion)}, and this version knows formats up to ${String(knownVersion)}. It was not touched. Install the newer version, or restore a backup of an older format, or export what can be read.`,
      );
    case 'foreign':
      return new Refusal(
        'library-foreign',
        `${path} is ${found.what}, so it is no Tarewing library. It was not touched. Choose another file.`,
      );
    case 'damaged':
      return new Refusal(
        'library-damaged',
        `${path} is damaged: it ${found.why}. It was not touched. Restore a backup, or export what can still be read.`,
      );
  }
}

/** For a file or folder that cannot be written. */
export function readOnlyRefusal(path: string, words: string): Refusal {
  return new Refusal(
    'read-only',
    `${path} cannot be opened for reading and writing (${words}). It was not touched. Allow writing to the file and to its folder, or copy it to another folder and open the copy.`,
  );
}
