import { beforeEach, expect, test } from 'vitest';
import { exampleAircraft, exampleLoading, examplePerson } from '../example-aircraft.ts';
import { exampleFillTest } from '../example-fill-test.ts';
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
  // A comparison with the manual is none either.
  const { envelopes } = exampleAircraft();
  await library.ask('aircraft.put', {
    aircraft: {
      ...exampleAircraft(),
      envelopes: envelopes.map((each) => ({ ...each, source: { from: 'manual', comparedOn: '2026-05-13' } })),
    },
  });
  expect(await changes()).toEqual([]);
  await weigh(320);
  expect(await changes()).toEqual(['it was weighed anew on 12 May 2026']);
});

test('each reason is named, and one that is taken back is none any more', async () => {
  await weigh(318);
  await record();
  const changes = async () => (await sheets())[0]?.changes;
  const after = async (request: string, input: unknown) => {
    await library.ask(request as 'aircraft.put', input as never);
    const said = await changes();
    await library.ask('history.undo', {});
    expect(await changes()).toEqual([]);
    return said;
  };
  const aircraft = exampleAircraft();
  const loading = exampleLoading();
  const changed = (part: object) => ({ aircraft: { ...aircraft, ...part } });
  const [seat, ...otherSeats] = aircraft.stations;
  const [tank, ...otherTanks] = aircraft.tanks;
  const [envelope] = aircraft.envelopes;
  expect(
    await after('aircraft.put', changed({ maxMasses: { ...aircraft.maxMasses, takeOffKg: 590 } })),
  ).toEqual(['a maximum mass was changed']);
  const vertices = envelope?.vertices.map((each) => ({
    ...each,
    across: each.across === 1.89 ? 1.88 : each.across,
  }));
  expect(await after('aircraft.put', changed({ envelopes: [{ ...envelope, vertices }] }))).toEqual([
    'the envelope “Take-off” was changed',
  ]);
  expect(
    await after('aircraft.put', changed({ stations: [{ ...seat, mostKg: 100 }, ...otherSeats] })),
  ).toEqual(['the left seat was changed']);
  expect(
    await after('aircraft.put', changed({ tanks: [{ ...tank, densityKgPerL: 0.73 }, ...otherTanks] })),
  ).toEqual(['the front tank was changed']);
  expect(await after('people.put', { person: examplePerson('mara', 'Mara', 70) })).toEqual([
    'the mass of Mara was changed',
  ]);
  expect(
    await after('people.put', { person: { ...examplePerson('mara', 'Mara', 68), known: 'stated', sdKg: 4 } }),
  ).toEqual(['how well the mass of Mara is known was changed']);
  expect(
    await after('loading.put', { loading: { ...loading, flight: { ...loading.flight, taxiL: 2 } } }),
  ).toEqual(['the loading itself was changed']);
});

test('litres read from a gauge rest on its curve: calibrated anew, the sheet is superseded; typed litres rest on none', async () => {
  const adopt = (adoptedOn: string) =>
    library.ask('calibration.adopt', { tankId: 'rear', testIds: ['may-test'], adoptedOn });
  await library.ask('fillTest.put', { test: exampleFillTest() });
  await adopt('2026-05-10');
  const [curve] = (await library.ask('calibration.list', { tankId: 'rear' })) as { id: string }[];
  await record();
  const loading = exampleLoading();
  const [front, rear] = loading.fuel;
  const gauge = { reading: { at: 'fullStop' }, calibrationId: curve?.id };
  await library.ask('loading.put', { loading: { ...loading, fuel: [front, { ...rear, gauge }] } });
  await library.ask('loadingSheet.record', {
    loadingId: 'two-friends',
    printedOn: '2026-05-12',
    paper: 'A4',
  });
  const changes = async () => (await sheets())[0]?.changes;
  expect(await changes()).toEqual([]);
  await adopt('2026-10-03');
  expect(await changes()).toEqual(['the rear tank was calibrated anew on 3 October 2026']);
  // The first sheet's litres were typed.
  expect((await sheets())[1]?.changes).toEqual(['the loading itself was changed']);
  await library.ask('history.undo', {});
  expect(await changes()).toEqual([]);
});

test('a sheet is read again as it was printed, whatever has become of its loading', async () => {
  await record();
  await library.ask('people.put', { person: examplePerson('mara', 'Mara', 75) });
  await library.ask('loading.remove', { id: 'two-friends' });
  expect(await sheets()).toMatchObject([{ serial: 1, changes: ['the loading was removed'] }]);
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
