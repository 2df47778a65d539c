import { beforeEach, expect, test } from 'vitest';
import { exampleAircraft, exampleLoading, examplePerson } from '../example-aircraft.ts';
import { memoryLibrary, type MemoryLibrary } from '../memory-library.ts';

let library: MemoryLibrary;
beforeEach(async () => {
  library = memoryLibrary();
  await library.ask('aircraft.put', { aircraft: exampleAircraft() });
  await library.ask('people.put', { person: examplePerson('mara', 'Mara', 68) });
  await library.ask('people.put', { person: examplePerson('jonas', 'Jonas', 86) });
  await library.ask('loading.put', { loading: exampleLoading() });
});

const record = () =>
  library.ask('loadingSheet.record', { loadingId: 'two-friends', printedOn: '2026-05-11', paper: 'A4' });
const sheets = () =>
  library.ask('loadingSheet.list', { aircraftId: 'two-seater' }) as Promise<{ changes: string[] }[]>;

function weigh(emptyMassKg: number) {
  return library.ask('weighing.add', {
    aircraftId: 'two-seater',
    weighedOn: '2026-05-12',
    how: 'scales',
    emptyMassKg,
    emptyArmM: 1.776,
    massSdKg: 0.5,
    armSdM: 0.002,
    unusableFuelIncluded: true,
    oilIncluded: true,
    note: '',
    readings: [],
  });
}

test('a sheet is recorded with a serial that is never used twice, not even after undo', async () => {
  expect(await record()).toEqual({ serial: 1 });
  await library.ask('history.undo', {});
  expect(await sheets()).toMatchObject([{ serial: 1, withdrawn: true }]);
  expect(await record()).toEqual({ serial: 2 });
  expect(await sheets()).toMatchObject([
    {
      serial: 2,
      loadingName: 'Two friends',
      printedOn: '2026-05-11',
      paper: 'A4',
      withdrawn: false,
      changes: [],
    },
    { serial: 1, withdrawn: true },
  ]);
});

test('what changed since is said, each by its name, and a name or a note is no change', async () => {
  await record();
  const changes = async () => (await sheets())[0]?.changes;
  await library.ask('people.put', { person: { ...examplePerson('mara', 'Mara M.', 68), note: 'tall' } });
  expect(await changes()).toEqual([]);
  // Jonas is not aboard.
  await library.ask('people.put', { person: examplePerson('jonas', 'Jonas', 90) });
  expect(await changes()).toEqual([]);
  await weigh(320);
  expect(await changes()).toEqual(['the empty weight']);
  await library.ask('people.put', { person: examplePerson('mara', 'Mara', 70) });
  const aircraft = exampleAircraft();
  await library.ask('aircraft.put', {
    aircraft: { ...aircraft, maxMasses: { ...aircraft.maxMasses, takeOffKg: 590 } },
  });
  const loading = exampleLoading();
  await library.ask('loading.put', { loading: { ...loading, flight: { ...loading.flight, taxiL: 2 } } });
  expect(await changes()).toEqual([
    'the empty weight',
    'figures of the aeroplane',
    'the loading',
    'the mass of somebody or something aboard',
  ]);
});

test('a sheet is read again as it was printed, whatever has become of its loading', async () => {
  await record();
  await library.ask('people.put', { person: examplePerson('mara', 'Mara', 75) });
  await library.ask('loading.remove', { id: 'two-friends' });
  expect(await sheets()).toMatchObject([{ serial: 1, changes: ['the loading, which was removed'] }]);
  const found = (await library.ask('loadingSheet.get', { aircraftId: 'two-seater', serial: 1 })) as {
    inputs: { people: unknown[]; loading: { name: string } };
  };
  expect(found.inputs.loading.name).toBe('Two friends');
  // Only those aboard are kept with it.
  expect(found.inputs.people).toEqual([examplePerson('mara', 'Mara', 68)]);
});

test('a loading that is not there, and a serial that was never given, are refused', async () => {
  await expect(
    library.ask('loadingSheet.record', { loadingId: 'none', printedOn: '2026-05-11', paper: 'A4' }),
  ).rejects.toThrow("There is no loading 'none' in this library. Nothing was changed.");
  await expect(library.ask('loadingSheet.withdraw', { serial: 7 })).rejects.toThrow(
    'There is no loading sheet 7. Nothing was changed.',
  );
  await expect(library.ask('loadingSheet.get', { aircraftId: 'two-seater', serial: 7 })).rejects.toThrow(
    'There is no loading sheet 7.',
  );
});
