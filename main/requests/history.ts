import { z } from 'zod';
import {
  keptChangesCount,
  lastChanges,
  markRedone,
  markUndone,
  nextRedo,
  nextUndo,
  type StoredChange,
} from '../store/history.ts';
import { read, work, type Area, type Call, type ChangeRequest, type WorkContext } from './define.ts';
import { Refusal } from './problem.ts';

const step = z.strictObject({ named: z.string(), screen: z.string(), atEpochS: z.number() });
const steps = z.strictObject({ undo: step.nullable(), redo: step.nullable() });
const done = z.strictObject({ named: z.string(), screen: z.string() });

export const historyRequests = {
  'history.next': read({
    about: 'What undo would take back and what redo would do again, with the screen where it was made.',
    where: 'reader',
    input: z.strictObject({}),
    output: steps,
    handle: ({ db }) => ({ undo: summary(nextUndo(db)), redo: summary(nextRedo(db)) }),
  }),
  'history.list': read({
    about:
      'The last changes, newest first; those that were undone can be done again until another change is made.',
    where: 'reader',
    input: z.strictObject({ mostCount: z.int().min(1).max(keptChangesCount).default(50) }),
    output: z.strictObject({ changes: z.array(z.strictObject({ ...step.shape, undone: z.boolean() })) }),
    handle: ({ db }, { mostCount }) => ({
      changes: lastChanges(db, mostCount).map(({ named, screen, atEpochS, undone }) => ({
        named,
        screen,
        atEpochS,
        undone,
      })),
    }),
  }),
  'history.undo': work({
    about: 'Take back the last change.',
    input: z.strictObject({}),
    output: done,
    handle: (context) => replay(context, 'undo'),
  }),
  'history.redo': work({
    about: 'Do the last undone change again.',
    input: z.strictObject({}),
    output: done,
    handle: (context) => replay(context, 'redo'),
  }),
};

function summary(change: StoredChange | null) {
  return change === null ? null : { named: change.named, screen: change.screen, atEpochS: change.atEpochS };
}

async function replay(context: WorkContext, which: 'undo' | 'redo') {
  // The table imports this file; loading it late keeps the circle from closing.
  const { findRequest } = await import('./table.ts');
  const areas: Area[] = ['history'];
  const change = context.db
    .transaction(() => {
      const next = which === 'undo' ? nextUndo(context.db) : nextRedo(context.db);
      if (next === null) throw new Refusal('not-found', `There is nothing to ${which}.`);
      const call = which === 'undo' ? next.inverse : next.forward;
      const request = findRequest(call.request);
      if (request?.kind !== 'change')
        throw new Refusal(
          'not-found',
          `This version cannot ${which} '${next.named}' (${call.request}). Nothing was changed.`,
        );
      const back = apply(context, request, call, areas);
      if (which === 'undo') markUndone(context.db, next.seq, back ?? next.forward);
      else markRedone(context.db, next.seq, back ?? next.inverse);
      return next;
    })
    .immediate();
  context.changed(areas);
  return { named: change.named, screen: change.screen };
}

function apply(context: WorkContext, request: ChangeRequest, call: Call, areas: Area[]): Call | null {
  const changed = request.handle(context, request.input.parse(call.input));
  areas.push(...changed.areas);
  return changed.inverse;
}
