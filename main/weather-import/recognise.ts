import { FileProblem } from './file-problem.ts';
import { kindOf, kindsInWords } from './kinds.ts';
import { looksLikeTable } from './mapped/table-head.ts';
import type { Kind, ReaderOptions } from './reader.ts';

/**
 * The kind of a file by its first bytes, or the mapping that it is to be read by.
 * @throws FileProblem with what it might be, where it is no kind that is known
 */
export async function recognise(head: Buffer, { mapping }: ReaderOptions): Promise<Kind> {
  // Loaded only where it is needed: what it stands on takes a while.
  if (mapping !== undefined) return (await import('./mapped/mapped-csv.ts')).mappedCsv(mapping);
  const kind = kindOf(head);
  if (kind !== null) return kind;
  const something = whatItIs(head);
  if (something === null && looksLikeTable(head))
    throw new FileProblem(
      `What is in it is not known here, but it looks like a table: say which of its columns is what. Kinds that are known: ${kindsInWords}.`,
      'mapping-needed',
    );
  throw new FileProblem(
    `What is in it is not known here. ${something ?? `Kinds that can be read: ${kindsInWords}.`}`,
  );
}

/** What to say of a file of no known kind. */
function whatItIs(head: Buffer): string | null {
  if ((head[0] === 0xff && head[1] === 0xfe) || (head[0] === 0xfe && head[1] === 0xff))
    return 'It is text in UTF-16; save it as plain text (UTF-8) first.';
  const text = head.subarray(0, 400).toString('latin1');
  if (/^\s*</.test(text))
    return 'It is a web page, perhaps an error page that was saved instead of the file.';
  return null;
}
