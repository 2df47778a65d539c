import { isDeepStrictEqual } from 'node:util';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { requestTable } from '../../../../main/requests/table.ts';
import { memoryLibrary, type MemoryLibrary } from '../../memory-library.ts';
import { changeInputs, type ChangeName } from './change-inputs.ts';
import { seededDraw } from './draw.ts';
import { visibleData } from './visible-data.ts';

const names = Object.keys(changeInputs).sort() as ChangeName[];

test('every changing request of the table has inputs here, so that its undo is proved', () => {
  const changing = Object.entries(requestTable)
    .filter(([, request]) => request.kind === 'change')
    .map(([name]) => name);
  expect(names).toEqual(changing.sort());
});

/** Requests that were answered, whether they became a step of undo or only chose what is looked at. */
const answered = new Set<ChangeName>();

/** Ask a changing request with inputs of this seed; true where it became a step of undo. */
async function changeSomething(library: MemoryLibrary, name: ChangeName, seed: number): Promise<boolean> {
  const before = await library.ask('history.next', {});
  const input = await changeInputs[name](library, seededDraw(seed));
  if (input === null) return false;
  const answer = await library.request(name, input);
  // A refusal for what does not fit together is honest; one that was not foreseen is a fault.
  if (!answer.ok && answer.problem.code === 'internal') throw new Error(answer.problem.sentence);
  if (answer.ok) answered.add(name);
  return answer.ok && !isDeepStrictEqual(await library.ask('history.next', {}), before);
}

/** Chains of records that rest on each other: drawn alike with all others, their ends were never reached. */
const chain = [
  'loading.put',
  'loading.remove',
  'loadingSheet.record',
  'loadingSheet.withdraw',
  'loadingSheet.reinstate',
  'fillTest.put',
  'calibration.adopt',
  'fuelCard.record',
  'fuelCard.withdraw',
  'fuelCard.reinstate',
] satisfies ChangeName[];
const step = fc.tuple(
  fc.oneof(
    { weight: 4, arbitrary: fc.constantFrom(...names) },
    { weight: 1, arbitrary: fc.constantFrom(...chain) },
  ),
  fc.integer(),
);

test('any changes, all taken back one by one and done again, pass through the very same data', async () => {
  await fc.assert(
    fc.asyncProperty(fc.array(step, { minLength: 5, maxLength: 60, size: 'max' }), async (steps) => {
      const library = memoryLibrary();
      const visible = visibleData(library.db);
      const states = [visible()];
      for (const [name, seed] of steps)
        if (await changeSomething(library, name, seed)) states.push(visible());
        else expect(visible()).toBe(states.at(-1));
      for (const state of states.slice(0, -1).reverse()) {
        await library.ask('history.undo', {});
        expect(visible()).toBe(state);
      }
      await expect(library.ask('history.undo', {})).rejects.toThrow('There is nothing to undo.');
      for (const state of states.slice(1)) {
        await library.ask('history.redo', {});
        expect(visible()).toBe(state);
      }
      // Once more back, now over inverses that redo has made.
      for (const state of states.slice(0, -1).reverse()) {
        await library.ask('history.undo', {});
        expect(visible()).toBe(state);
      }
      expect(library.db.pragma('foreign_key_check')).toEqual([]);
      library.db.close();
    }),
    { seed: 20_261_125, numRuns: 60 },
  );
}, 180_000);

const takesAway = /\.(remove|withdraw|takeBack\w*)$/;
const bringsBack = /\.reinstate$/;
const makers = names.filter((name) => !takesAway.test(name) && !bringsBack.test(name));
/** Some inputs are refused because they do not fit together: others are drawn, so many times. */
const attempts = 60;

/** A library in which a bit of everything was done, and nothing taken away. */
async function fullLibrary(firstSeed: number): Promise<MemoryLibrary> {
  const library = memoryLibrary();
  for (let round = 0; round < 4; round++)
    for (const [index, name] of makers.entries())
      await changeSomething(library, name, firstSeed + round * makers.length + index);
  return library;
}

test.each(names)(
  '%s is reached in a library that holds much, and undone and done again there',
  async (name) => {
    const library = await fullLibrary(1);
    const visible = visibleData(library.db);
    let seed = 100_000;
    if (bringsBack.test(name))
      for (let attempt = 0; attempt < attempts; attempt++)
        if (await changeSomething(library, name.replace(bringsBack, '.withdraw') as ChangeName, seed++))
          break;
    answered.clear();
    for (let attempt = 0; attempt < attempts; attempt++) {
      const before = visible();
      if (!(await changeSomething(library, name, seed++))) continue;
      const after = visible();
      await library.ask('history.undo', {});
      expect(visible()).toBe(before);
      await library.ask('history.redo', {});
      expect(visible()).toBe(after);
      break;
    }
    // Choosing what is looked at is answered without becoming a step of undo.
    expect(answered.has(name)).toBe(true);
    library.db.close();
  },
  60_000,
);
