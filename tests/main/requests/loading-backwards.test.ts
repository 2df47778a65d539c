import { beforeEach, expect, test } from 'vitest';
import type { LoadingRecord } from '../../../shared-calc/loading/records.ts';
import { exampleAircraft, exampleLoading, examplePerson } from '../example-aircraft.ts';
import { memoryLibrary, type MemoryLibrary } from '../memory-library.ts';

interface Backwards {
  inside: boolean;
  heading: string;
  answers: { sentence: string; ways: { named: string; leaves: string; loading: LoadingRecord }[] }[];
}

let library: MemoryLibrary;
beforeEach(async () => {
  library = memoryLibrary();
  await library.ask('aircraft.put', { aircraft: exampleAircraft() });
  await library.ask('people.put', { person: examplePerson('mara', 'Mara', 68) });
  await library.ask('loading.put', { loading: exampleLoading() });
});

const ask = () => library.ask('loading.backwards', { loadingId: 'two-friends' }) as Promise<Backwards | null>;
const review = () =>
  library.ask('loading.review', { loadingId: 'two-friends' }) as Promise<{ verdict: string }>;

test('an aeroplane that was never weighed has no answers yet', async () => {
  expect(await ask()).toBeNull();
});

test('a script takes an answer by putting its loading, and the verdict is inside', async () => {
  await library.ask('weighing.add', {
    aircraftId: 'two-seater',
    weighedOn: '2026-03-14',
    how: 'scales',
    emptyMassKg: 318,
    emptyArmM: 1.776,
    massSdKg: 1,
    armSdM: 0.002,
    unusableFuelIncluded: true,
    oilIncluded: true,
    note: '',
    readings: [],
  });
  const loading = exampleLoading();
  const [mara, bag] = loading.items;
  if (mara === undefined || bag?.typed == null) throw new Error('two loads');
  // 25 kg where 20 are allowed.
  const heavy = { ...loading, items: [mara, { ...bag, typed: { ...bag.typed, massKg: 25 } }] };
  await library.ask('loading.put', { loading: heavy });
  expect((await review()).verdict).toBe('outside');
  const answers = await ask();
  expect(answers?.inside).toBe(false);
  // Without the bag it would be lighter than the envelope when the fuel is burned: 386 kg of 390. So it is made lighter.
  expect(answers?.answers.map(({ sentence }) => sentence.replaceAll('\u00a0', ' '))).toEqual([
    'Heaviest in the baggage with this fuel: 20.0 kg, where Bag has 25 kg.',
  ]);
  // Asked twice, the very same.
  expect(await ask()).toEqual(answers);
  for (const { ways } of answers?.answers ?? []) {
    for (const way of ways) {
      await library.ask('loading.put', { loading: way.loading, named: way.named });
      expect((await review()).verdict).toBe('inside');
      await library.ask('history.undo', {});
      expect((await review()).verdict).toBe('outside');
    }
  }
});
