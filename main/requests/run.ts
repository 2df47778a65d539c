import { z } from 'zod';
import { recordChange } from '../store/history.ts';
import { InputProblem, RangeProblem } from '../../shared-calc/problem.ts';
import type { AnyRequest, Area, Changed, Context, WorkContext } from './define.ts';
import { inputRefused } from './input-refused.ts';
import { Refusal, type Problem } from './problem.ts';

/** What came of a request: the answer, or a refusal as data. */
export type Answer = { ok: true; output: unknown; areas: Area[] } | { ok: false; problem: Problem };

/**
 * Run one request of the table: check the input, run the handler (a change inside one transaction with its
 * undo record), check the output. Every door ends here. Never throws.
 */
export async function runRequest(
  name: string,
  request: AnyRequest | undefined,
  context: WorkContext,
  input: unknown,
): Promise<Answer> {
  try {
    if (request === undefined) throw new Refusal('unknown-request', `There is no request '${name}'.`);
    const parsed = request.input.safeParse(input);
    if (!parsed.success) throw inputRefused(name, parsed.error, input);
    if (request.kind === 'change') {
      const changed = runChange(name, request.handle.bind(request), context, parsed.data, input);
      return { ok: true, output: request.output.parse(changed.output), areas: [...changed.areas, 'history'] };
    }
    const output = await request.handle(context, parsed.data);
    return { ok: true, output: request.output.parse(output), areas: [] };
  } catch (error) {
    return { ok: false, problem: problemOf(name, error) };
  }
}

function runChange(
  name: string,
  handle: (context: Context, input: unknown) => Changed<unknown>,
  context: Context,
  parsed: unknown,
  input: unknown,
): Changed<unknown> {
  return context.db
    .transaction(() => {
      const changed = handle(context, parsed);
      if (changed.inverse !== null) {
        recordChange(context.db, {
          atEpochS: context.nowEpochS(),
          named: changed.named,
          screen: changed.screen,
          forward: changed.forward ?? { request: name, input },
          inverse: changed.inverse,
        });
      }
      return changed;
    })
    .immediate();
}

/** The sentence for whatever went wrong; what was not foreseen is named as such and keeps its own words. */
export function problemOf(name: string, error: unknown): Problem {
  if (error instanceof Refusal) return error.problem;
  if (error instanceof RangeProblem || error instanceof InputProblem)
    return {
      code: 'input-refused',
      sentence: `${error.message}. Nothing was changed.`,
      fields: [{ path: error.field, sentence: error.message }],
    };
  const words = error instanceof Error ? error.message : String(error);
  const code = error instanceof Error && 'code' in error ? String(error.code) : '';
  if (code.startsWith('SQLITE_FULL') || code === 'ENOSPC')
    return {
      code: 'disk',
      sentence: 'The disk is full. Nothing was changed. Make room and do it again.',
      fields: [],
    };
  if (code.startsWith('SQLITE_READONLY'))
    return {
      code: 'read-only',
      sentence:
        'The library file may only be read, so nothing was changed. Check the permissions of its folder.',
      fields: [],
    };
  if (code.startsWith('SQLITE_BUSY'))
    return {
      code: 'library-busy',
      sentence:
        'Another program holds the library file. Nothing was changed. Close the other one and do it again.',
      fields: [],
    };
  if (code.startsWith('SQLITE_CORRUPT') || code.startsWith('SQLITE_NOTADB'))
    return {
      code: 'library-damaged',
      sentence: 'The library file is damaged. Nothing was changed. Restore a backup.',
      fields: [],
    };
  if (error instanceof z.ZodError)
    return {
      code: 'internal',
      sentence: `The answer of '${name}' did not have its promised shape (${words.slice(0, 400)}).`,
      fields: [],
    };
  return {
    code: 'internal',
    sentence: `'${name}' failed in a way that was not foreseen: ${words}`,
    fields: [],
  };
}
