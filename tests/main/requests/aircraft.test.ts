import { beforeEach, describe, expect, test } from 'vitest';
import type { AircraftRecord, WeighingRecord } from '../../../shared-calc/loading/records.ts';
import { exampleAircraft } from '../example-aircraft.ts';
import { memoryLibrary, type MemoryLibrary } from '../memory-library.ts';

let library: MemoryLibrary;
beforeEach(() => {
  library = memoryLibrary();
});

async function get(id = 'two-seater') {
  return (await library.ask('aircraft.get', { id })) as {
    aircraft: AircraftRecord;
    weighings: WeighingRecord[];
    currentWeighingId: string | null;
  };
}
const put = (aircraft: unknown, named?: string) => library.ask('aircraft.put', { aircraft, named });
const undo = () => library.ask('history.undo', {});
const redo = () => library.ask('history.redo', {});

describe('an aeroplane', () => {
  test('comes back as it was typed, figure by figure', async () => {
    await put(exampleAircraft());
    expect((await get()).aircraft).toEqual(exampleAircraft());
  });

  test('without an id is given one, and undo and redo keep it', async () => {
    const { id } = (await put({ ...exampleAircraft(), id: undefined, name: 'Second' })) as { id: string };
    await undo();
    expect(await library.ask('aircraft.list', {})).toEqual({ aircraft: [], currentId: null });
    await redo();
    expect((await get(id)).aircraft.name).toBe('Second');
  });

  test('changed part by part is undone part by part, under the name of the part', async () => {
    await put(exampleAircraft());
    const moved = exampleAircraft();
    moved.stations = moved.stations.slice(0, 2);
    await put(moved);
    const renamed = { ...moved, name: 'Heron' };
    await put(renamed, 'a shorter name');
    expect(await undo()).toEqual({ named: 'a shorter name', screen: 'aircraft' });
    expect((await get()).aircraft).toEqual(moved);
    expect(await undo()).toEqual({ named: 'Baggage of Heron two-seater', screen: 'aircraft' });
    expect((await get()).aircraft).toEqual(exampleAircraft());
    await redo();
    await redo();
    expect((await get()).aircraft).toEqual(renamed);
  });

  test('removed is off the list, and undo brings it back whole', async () => {
    await put(exampleAircraft());
    await library.ask('aircraft.remove', { id: 'two-seater' });
    await expect(get()).rejects.toThrow("There is no aeroplane 'two-seater'");
    await undo();
    expect((await get()).aircraft).toEqual(exampleAircraft());
    await redo();
    await expect(get()).rejects.toThrow('There is no aeroplane');
  });

  test('chosen stays current; once it is removed the first of the list is', async () => {
    await put(exampleAircraft());
    await put({ ...bare(), id: 'another', name: 'Another' });
    const list = async () => ((await library.ask('aircraft.list', {})) as { currentId: string }).currentId;
    expect(await list()).toBe('another');
    await library.ask('aircraft.choose', { id: 'two-seater' });
    expect(await list()).toBe('two-seater');
    // Choosing is looking, not changing: undo passes over it.
    expect(await library.ask('history.next', {})).toMatchObject({ undo: { named: 'Another added' } });
    await library.ask('aircraft.remove', { id: 'two-seater' });
    expect(await list()).toBe('another');
  });
});

describe('the comparison with the manual', () => {
  test('falls away from a row whose figure changes, and only from that one', async () => {
    await put(exampleAircraft());
    const changed = exampleAircraft();
    changed.tanks = changed.tanks.map((tank) => (tank.id === 'front' ? { ...tank, capacityL: 52 } : tank));
    await put(changed);
    const kept = (await get()).aircraft;
    expect(kept.tanks[0]?.source.comparedOn).toBeNull();
    expect(kept.stations[0]?.source.comparedOn).toBe('2026-04-02');
    await undo();
    expect((await get()).aircraft.tanks[0]?.source.comparedOn).toBe('2026-04-02');
  });

  test('stays when only the name of a row changes, and a new day given with the figure stands', async () => {
    await put(exampleAircraft());
    const changed = exampleAircraft();
    changed.stations = changed.stations.map((each) => ({ ...each, name: `${each.name} renamed` }));
    changed.maxMasses.takeOffKg = 590;
    changed.limitsSource = { from: 'manual', comparedOn: '2026-11-01' };
    await put(changed);
    const kept = (await get()).aircraft;
    expect(kept.stations[0]?.source.comparedOn).toBe('2026-04-02');
    expect(kept.limitsSource.comparedOn).toBe('2026-11-01');
  });
});

describe('what cannot be is refused with field and range, and nothing is kept', () => {
  const refusals: [string, (a: AircraftRecord) => void, string][] = [
    [
      'an arm beyond the range',
      (a) => (a.gear.mainArmM = 1985),
      'aircraft.gear.mainArmM is 1985 m; allowed at most 30 m',
    ],
    [
      'a negative capacity',
      (a) => Object.assign(a.tanks[0] ?? {}, { capacityL: -1 }),
      'aircraft.tanks[0].capacityL is -1 L; allowed at least 0 L',
    ],
    [
      'more unusable than the tank holds',
      (a) => Object.assign(a.tanks[0] ?? {}, { unusableL: 51 }),
      'Front tank cannot hold more unusable fuel (51\u00a0L) than it holds in all (50\u00a0L)',
    ],
    [
      'an envelope of two vertices',
      (a) =>
        Object.assign(a.envelopes[0] ?? {}, {
          vertices: [
            { across: 1.7, massKg: 390 },
            { across: 1.8, massKg: 400 },
          ],
        }),
      'aircraft.envelopes[0].vertices has 2 entries; at least 3 needed',
    ],
    [
      'an envelope that crosses itself',
      (a) => {
        const vertices = a.envelopes[0]?.vertices ?? [];
        vertices.splice(2, 2, ...vertices.slice(2, 4).reverse());
      },
      'In Take-off the edge from vertex 2 to 3 meets the edge from 4 to 5',
    ],
    [
      'an envelope in percent of a MAC that is missing',
      (a) => {
        a.mac = null;
        Object.assign(a.envelopes[0] ?? {}, { across: 'mac' });
      },
      'the aeroplane has no MAC yet',
    ],
    [
      'a station limit below its least load',
      (a) => Object.assign(a.stations[0] ?? {}, { leastKg: 120 }),
      'The least load of Left seat (120\u00a0kg) is above its most (110\u00a0kg)',
    ],
    [
      'landing heavier than take-off',
      (a) => (a.maxMasses.landingKg = 610),
      'The maximum at landing is above the one at take-off (610\u00a0kg above 600\u00a0kg)',
    ],
    [
      'a group of a station that is not there',
      (a) => (a.stations = a.stations.slice(1)),
      'Both seats counts a station that the aeroplane does not have',
    ],
    [
      'an identifier used twice',
      (a) => Object.assign(a.tanks[0] ?? {}, { id: 'rear' }),
      'The identifier rear is used twice',
    ],
    [
      'a tank table that does not rise',
      (a) => {
        const arm = a.tanks[1]?.arm;
        if (arm?.kind === 'armTable') arm.knots.reverse();
      },
      'contents in the table of Rear tank have to rise',
    ],
  ];
  test.each(refusals)('%s', async (_title, spoil, sentence) => {
    const spoilt = exampleAircraft();
    spoil(spoilt);
    const answer = await library.request('aircraft.put', { aircraft: spoilt });
    expect(answer).toMatchObject({ ok: false, problem: { code: 'input-refused' } });
    if (answer.ok) return;
    expect(answer.problem.sentence.toLowerCase()).toContain(sentence.toLowerCase());
    expect(answer.problem.sentence).toContain('Nothing was changed.');
    expect(await library.ask('aircraft.list', {})).toEqual({ aircraft: [], currentId: null });
  });

  test('a part that belongs to another aeroplane', async () => {
    await put(exampleAircraft());
    await expect(put({ ...exampleAircraft(), id: 'copy' })).rejects.toThrow(
      'The identifier left-seat belongs to another aeroplane',
    );
  });
});

describe('a weighing', () => {
  const weighing = (weighedOn: string, emptyMassKg: number) => ({
    aircraftId: 'two-seater',
    weighedOn,
    how: 'scales',
    emptyMassKg,
    emptyArmM: 1.776,
    massSdKg: 0.9,
    armSdM: 0.002,
    unusableFuelIncluded: true,
    oilIncluded: true,
    note: '',
    readings: [
      { wheel: 'nose wheel', armM: 0.69, readingKg: 51.3, tareKg: 0 },
      { wheel: 'main wheels', armM: 1.985, readingKg: emptyMassKg - 50.3, tareKg: 1 },
    ],
  });

  test('supersedes by its day, never overwrites, and its undo is a withdrawal that stays readable', async () => {
    await put(exampleAircraft());
    const older = (await library.ask('weighing.add', weighing('2023-05-06', 319.3))) as { id: string };
    const newer = (await library.ask('weighing.add', weighing('2026-03-14', 318))) as { id: string };
    expect(await get()).toMatchObject({
      currentWeighingId: newer.id,
      weighings: [{ emptyMassKg: 318, readings: [{ readingKg: 51.3 }, {}] }, { emptyMassKg: 319.3 }],
    });
    expect(await undo()).toEqual({ named: 'weighing of Heron two-seater', screen: 'aircraft' });
    expect(await get()).toMatchObject({
      currentWeighingId: older.id,
      weighings: [
        { id: newer.id, withdrawn: true },
        { id: older.id, withdrawn: false },
      ],
    });
    await redo();
    expect(await get()).toMatchObject({ currentWeighingId: newer.id, weighings: [{ withdrawn: false }, {}] });
  });

  test('withdrawn by hand is reinstated by undo; a second withdrawal changes nothing', async () => {
    await put(exampleAircraft());
    const { id } = (await library.ask('weighing.add', weighing('2026-03-14', 318))) as { id: string };
    await library.ask('weighing.withdraw', { id });
    expect((await get()).currentWeighingId).toBeNull();
    const before = await library.ask('history.next', {});
    await library.ask('weighing.withdraw', { id });
    expect(await library.ask('history.next', {})).toEqual(before);
    expect(await undo()).toMatchObject({ named: 'weighing of 2026-03-14 withdrawn' });
    expect((await get()).currentWeighingId).toBe(id);
  });

  test('of a day that is not in the calendar, or of no aeroplane, is refused', async () => {
    await put(exampleAircraft());
    await expect(library.ask('weighing.add', weighing('2026-02-30', 318))).rejects.toThrow(
      'weighedOn is "2026-02-30"',
    );
    await expect(
      library.ask('weighing.add', { ...weighing('2026-03-14', 318), aircraftId: 'none' }),
    ).rejects.toThrow("There is no aeroplane 'none'");
    await expect(library.ask('weighing.withdraw', { id: 'none' })).rejects.toThrow(
      "There is no weighing 'none'",
    );
  });
});

/** An aeroplane of which nothing is known yet but its name. */
function bare(): AircraftRecord {
  return { ...exampleAircraft(), stations: [], groups: [], tanks: [], envelopes: [] };
}
