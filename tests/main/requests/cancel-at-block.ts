import type { Answer } from '../../../main/requests/run.ts';
import type { MemoryLibrary } from '../memory-library.ts';

/** Make a request that imports, and cancel it when it has written so many months; with 0, before it begins. */
export async function cancelAtBlock(
  library: MemoryLibrary,
  blocksBefore: number,
  name: string,
  input: unknown,
): Promise<Answer> {
  const controller = new AbortController();
  if (blocksBefore === 0) controller.abort();
  let blocks = 0;
  library.db.function('note_block', { varargs: true }, () => {
    blocks += 1;
    if (blocks === blocksBefore) controller.abort();
    return null;
  });
  library.db.exec(
    'CREATE TEMP TRIGGER noted AFTER INSERT ON observation_block BEGIN SELECT note_block(); END',
  );
  try {
    return await library.request(name, input, controller.signal);
  } finally {
    library.db.exec('DROP TRIGGER noted');
  }
}
