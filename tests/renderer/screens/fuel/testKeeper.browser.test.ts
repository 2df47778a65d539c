import { expect, test } from 'vitest';
import type { App } from '../../../../renderer/app/app.svelte.ts';
import { TestKeeper } from '../../../../renderer/screens/fuel/testKeeper.svelte.ts';
import type { FillTestRecord } from '../../../../shared-calc/fuel/records.ts';
import { exampleFillTest } from '../../../main/example-fill-test.ts';

/** A library that answers when it is told to. */
function slowLibrary() {
  let kept: FillTestRecord = exampleFillTest('test', 'front');
  const replies: (() => void)[] = [];
  const client = {
    ask: (_: string, { test }: { test: FillTestRecord }) =>
      new Promise<void>((resolve) => {
        replies.push(() => {
          kept = test;
          resolve();
        });
      }),
  };
  const shown = { answer: kept };
  const keeper = new TestKeeper(
    { client } as unknown as App,
    () => shown.answer,
    () => undefined,
  );
  return {
    keeper,
    look: () => kept,
    arrive: (answer: FillTestRecord) => {
      shown.answer = answer;
      keeper.catchUp();
    },
    reply: async () => {
      await expect.poll(() => replies.length).toBe(1);
      replies.shift()?.();
    },
  };
}

const noted = (note: string) => (before: FillTestRecord) => ({ ...before, note });

test('an answer that was asked for before the last figure was saved takes nothing back', async () => {
  const { keeper, look, arrive, reply } = slowLibrary();
  const first = keeper.change(noted('first'), 'the first');
  const second = keeper.change(noted('first and second'), 'the second');
  await reply();
  await first;
  // The list is asked while the second figure is on its way, and answers after that one's reply.
  keeper.asks();
  const early = look();
  await reply();
  await second;
  arrive(early);
  expect(keeper.test?.note).toBe('first and second');

  // What was undone since shows, as soon as the list was asked again.
  keeper.asks();
  arrive(noted('undone')(look()));
  expect(keeper.test?.note).toBe('undone');
});

test('a list that was asked before a figure was typed does not take that figure back either', async () => {
  const { keeper, look, arrive, reply } = slowLibrary();
  keeper.asks();
  const early = look();
  const saved = keeper.change(noted('typed'), 'the figure');
  await reply();
  await saved;
  arrive(early);
  expect(keeper.test?.note).toBe('typed');
});
