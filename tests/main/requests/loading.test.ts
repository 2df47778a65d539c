import { beforeEach, describe, expect, test } from 'vitest';
import type { LoadingRecord } from '../../../shared-calc/loading/records.ts';
import { exampleAircraft, exampleLoading, examplePerson } from '../example-aircraft.ts';
import { memoryLibrary, type MemoryLibrary } from '../memory-library.ts';

let library: MemoryLibrary;
beforeEach(async () => {
  library = memoryLibrary();
  await library.ask('aircraft.put', { aircraft: exampleAircraft() });
  await library.ask('people.put', { person: examplePerson('mara', 'Mara', 68) });
});

const undo = () => library.ask('history.undo', {});
const redo = () => library.ask('history.redo', {});
const put = (loading: unknown, named?: string) => library.ask('loading.put', { loading, named });
const get = async (id = 'two-friends') =>
  (await library.ask('loading.get', { id })) as {
    loading: LoadingRecord;
    people: { name: string; massKg: number; removed: boolean }[];
    removedStations: { id: string; name: string }[];
  };

describe('a person or thing', () => {
  const people = async (withRemoved = false) =>
    ((await library.ask('people.list', { withRemoved })) as { name: string }[]).map((each) => each.name);

  test('is added, changed and removed; each of it can be undone and done again', async () => {
    await library.ask('people.put', { person: examplePerson('jonas', 'Jonas', 82) });
    await library.ask('people.put', { person: examplePerson('jonas', 'Jonas', 85), named: "Jonas's mass" });
    await library.ask('people.remove', { id: 'jonas' });
    expect(await people()).toEqual(['Mara']);
    expect(await people(true)).toEqual(['Jonas', 'Mara']);
    expect(await undo()).toEqual({ named: 'Jonas removed', screen: 'loading' });
    expect(await undo()).toEqual({ named: "Jonas's mass", screen: 'loading' });
    expect(await library.ask('people.list', {})).toMatchObject([{ massKg: 82 }, { name: 'Mara' }]);
    await undo();
    expect(await people()).toEqual(['Mara']);
    await redo();
    await redo();
    expect(await library.ask('people.list', {})).toMatchObject([{ massKg: 85 }, { name: 'Mara' }]);
  });

  test('of a mass that cannot be is refused', async () => {
    await expect(
      library.ask('people.put', { person: { ...examplePerson('jonas', 'Jonas', -3) } }),
    ).rejects.toThrow('person.massKg is -3 kg; allowed at least 0 kg');
    await expect(library.ask('people.remove', { id: 'nobody' })).rejects.toThrow(
      "no person or thing 'nobody'",
    );
  });

  test('off the list still counts in the loadings that name it', async () => {
    await put(exampleLoading());
    await library.ask('people.remove', { id: 'mara' });
    expect((await get()).people).toMatchObject([{ name: 'Mara', massKg: 68, removed: true }]);
  });
});

describe('a loading', () => {
  test('comes back as it was put', async () => {
    const full: LoadingRecord = {
      ...exampleLoading(),
      burn: {
        kind: 'alternate',
        tankIds: ['rear', 'front'],
        everyMin: 30,
        returnLine: { intoTankId: 'front', pumpLPerH: 60 },
      },
    };
    await put(full);
    expect((await get()).loading).toEqual(full);
  });

  test('changed, renamed and removed is undone step by step under names that say what', async () => {
    await put(exampleLoading());
    const swapped = exampleLoading();
    swapped.items = swapped.items.map((item) =>
      item.id === 'item-1' ? { ...item, stationId: 'right-seat' } : item,
    );
    await put(swapped, 'Mara to the right seat');
    await put({ ...swapped, name: 'Mara alone' });
    await library.ask('loading.remove', { id: 'two-friends' });
    await expect(get()).rejects.toThrow("There is no loading 'two-friends'");
    expect(await undo()).toMatchObject({ named: 'Mara alone removed' });
    expect(await undo()).toMatchObject({ named: 'Two friends renamed to Mara alone' });
    expect(await undo()).toEqual({ named: 'Mara to the right seat', screen: 'loading' });
    expect((await get()).loading).toEqual(exampleLoading());
    await redo();
    expect((await get()).loading).toEqual(swapped);
  });

  test('is listed with the one changed last first, and the chosen one is remembered for its aeroplane', async () => {
    await put(exampleLoading());
    await put({ ...exampleLoading(), id: 'alone', name: 'Alone' });
    const list = () => library.ask('loading.list', { aircraftId: 'two-seater' });
    expect(await list()).toEqual({
      loadings: [
        { id: 'alone', name: 'Alone' },
        { id: 'two-friends', name: 'Two friends' },
      ],
      currentId: 'alone',
    });
    await library.ask('loading.choose', { id: 'two-friends' });
    expect(await list()).toMatchObject({ currentId: 'two-friends' });
  });

  test('keeps a load on a station that the aeroplane has lost, and names that station', async () => {
    await put(exampleLoading());
    const aircraft = exampleAircraft();
    await library.ask('aircraft.put', { aircraft: { ...aircraft, stations: aircraft.stations.slice(0, 2) } });
    expect((await get()).removedStations).toEqual([{ id: 'baggage', name: 'Baggage' }]);
    await put({ ...exampleLoading(), name: 'Renamed all the same' });
    await undo();
    await undo();
    expect((await get()).removedStations).toEqual([]);
  });

  const refusals: [string, (l: LoadingRecord) => void, string][] = [
    [
      'a tank filled over its usable contents (50 L less 1.5 L)',
      (l) => Object.assign(l.fuel[0] ?? {}, { bestL: 48.6, highL: 48.6 }),
      'Front tank holds at most 48.5 L of usable fuel; 48.6 L were entered',
    ],
    [
      'bounds of fuel in the wrong order',
      (l) => Object.assign(l.fuel[0] ?? {}, { lowL: 48.2 }),
      'for Front tank the low figure may not be above the best',
    ],
    [
      'a station that the aeroplane does not have',
      (l) => Object.assign(l.items[0] ?? {}, { stationId: 'wing' }),
      'the aeroplane has no station wing',
    ],
    [
      'a load that is nobody and nothing',
      (l) => Object.assign(l.items[0] ?? {}, { personId: null }),
      'a load needs a person or thing of the list, or a typed mass',
    ],
    [
      'a person that is not in the library',
      (l) => Object.assign(l.items[0] ?? {}, { personId: 'nobody' }),
      "there is no person or thing 'nobody'",
    ],
    [
      'a place for a seat that does not move',
      (l) => Object.assign(l.items[0] ?? {}, { seatArmM: 1.9 }),
      'Left seat does not move',
    ],
    [
      'a tank twice in the order of burning',
      (l) => (l.burn.tankIds = ['front', 'front']),
      'a tank stands twice in the order of burning',
    ],
    [
      'an alternating order without its minutes',
      (l) => (l.burn.kind = 'alternate'),
      'to alternate between tanks, say after how many minutes',
    ],
  ];
  test.each(refusals)('is refused with %s', async (_title, spoil, sentence) => {
    const spoilt = exampleLoading();
    spoil(spoilt);
    const answer = await library.request('loading.put', { loading: spoilt });
    expect(answer.ok).toBe(false);
    if (answer.ok) return;
    expect(answer.problem.sentence.toLowerCase()).toContain(sentence.toLowerCase());
    expect(await library.ask('loading.list', { aircraftId: 'two-seater' })).toMatchObject({ loadings: [] });
  });
});
