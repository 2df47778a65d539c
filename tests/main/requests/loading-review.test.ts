import { beforeEach, describe, expect, test } from 'vitest';
import type { AircraftRecord, LoadingRecord } from '../../../shared-calc/loading/records.ts';
import { KG_PER_LB, L_PER_US_GAL, M_PER_IN } from '../../../shared-calc/units/constants.ts';
import { exampleAircraft, exampleLoading, examplePerson } from '../example-aircraft.ts';
import { memoryLibrary, type MemoryLibrary } from '../memory-library.ts';

interface Review {
  verdict: string;
  sentence: string;
  inShort: string;
  restsOn: string[];
  ramp: { massKg: number; armM: number; momentKgM: number } | null;
  takeOff: { massKg: number; armM: number } | null;
  margins: { id: string; met: boolean; marginM: number | null }[];
  reserve: { lastsS: number; landByS: number; kept: boolean } | null;
}

let library: MemoryLibrary;
beforeEach(async () => {
  library = memoryLibrary();
  await library.ask('aircraft.put', { aircraft: exampleAircraft() });
  await library.ask('people.put', { person: examplePerson('mara', 'Mara', 68) });
});

const weigh = (emptyMassKg: number, emptyArmM: number, fields: object = {}) =>
  library.ask('weighing.add', {
    aircraftId: 'two-seater',
    weighedOn: '2026-03-14',
    how: 'scales',
    emptyMassKg,
    emptyArmM,
    massSdKg: 0.9,
    armSdM: 0.002,
    unusableFuelIncluded: true,
    oilIncluded: true,
    note: '',
    readings: [],
    ...fields,
  });
const put = (loading: LoadingRecord) => library.ask('loading.put', { loading });
const review = async (loadingId = 'two-friends') =>
  (await library.ask('loading.review', { loadingId })) as Review;

describe('a verdict', () => {
  test('waits for the empty weight, and says so', async () => {
    await put(exampleLoading());
    expect(await review()).toMatchObject({
      verdict: 'not checked',
      sentence: 'No verdict yet. The empty weight and its arm have not been entered.',
      ramp: null,
    });
  });

  test('waits for the fuel of every tank, for the oil that the weighing left out and for lost places', async () => {
    await weigh(318, 1.776, { oilIncluded: false });
    const [front] = exampleLoading().fuel;
    if (front === undefined) throw new Error('the example has fuel');
    await put({ ...exampleLoading(), fuel: [front] });
    await library.ask('aircraft.put', {
      aircraft: { ...exampleAircraft(), oil: null, stations: exampleAircraft().stations.slice(0, 2) },
    });
    expect((await review()).sentence).toBe(
      'No verdict yet. The weighing left the oil out: enter the mass and arm of the oil. ' +
        'Bag is at a place that the aeroplane no longer has: move or remove the load. ' +
        'The fuel in Rear tank has not been entered.',
    );
  });

  test('stands beside what it rests on: figures not compared, masses only stated', async () => {
    await weigh(318, 1.776);
    await put(exampleLoading());
    await library.ask('people.put', { person: { ...examplePerson('mara', 'Mara', 68), known: 'stated' } });
    expect((await review()).restsOn).toEqual([
      'Do not rely on this yet: not compared with the manual: Rear tank.',
      'Mara: stated, not weighed.',
    ]);
  });

  test('adds up mass and moment by hand: each mass times its arm', async () => {
    await weigh(318, 1.776);
    await put(exampleLoading());
    // By hand: 318 × 1.776 + 68 × 1.965 + 15 × 2.56 + 48 × 0.72 × 1.46 + the rear tank's 34.3 L. Its arm is read
    // at all that it holds (34.3 + 1 L unusable): 2.25 + 0.02 × 35.3 / 45 m; the unusable litre at 2.25 + 0.02 / 45 m
    // is in the weighing and comes off again.
    const rear = 35.3 * 0.72 * (2.25 + (0.02 * 35.3) / 45) - 1 * 0.72 * (2.25 + 0.02 / 45);
    const moment = 318 * 1.776 + 68 * 1.965 + 15 * 2.56 + 48 * 0.72 * 1.46 + rear;
    const mass = 318 + 68 + 15 + (48 + 34.3) * 0.72;
    const { ramp } = await review();
    expect(ramp?.massKg).toBeCloseTo(mass, 9);
    expect(ramp?.momentKgM).toBeCloseTo(moment, 9);
  });

  test('a stated mass counts with its bias, a typed one stands before the list, and a change of the list shows at once', async () => {
    await weigh(318, 1.776);
    await put(exampleLoading());
    const before = (await review()).ramp?.massKg ?? 0;
    await library.ask('people.put', {
      person: { ...examplePerson('mara', 'Mara', 68), known: 'stated', biasKg: 4.5 },
    });
    expect((await review()).ramp?.massKg).toBeCloseTo(before + 4.5, 9);
    const typed = exampleLoading();
    Object.assign(typed.items[0] ?? {}, {
      typed: { name: 'Mara', massKg: 70, known: 'weighed', sdKg: 0.5, biasKg: 0 },
    });
    await put(typed);
    expect((await review()).ramp?.massKg).toBeCloseTo(before + 2, 9);
  });

  test('is outside when the reserve is not kept, though every limit of mass and CG is', async () => {
    await weigh(318, 1.79);
    // Low figures: 47 + 33.5 L, less 1.5 L of taxi, at 18 L/h: 79 / 18 h = 15 800 s. 45 min less: 13 100 s.
    const loading = exampleLoading();
    loading.flight.landingAfterS = 13_101;
    await put(loading);
    const late = await review();
    expect(late.reserve?.lastsS).toBeCloseTo(15_800, 6);
    expect(late.reserve?.landByS).toBeCloseTo(13_100, 6);
    expect(late.verdict).toBe('outside');
    // 13 100 s are 3 h 38 min 20 s: what is left to plan with rounds down.
    expect(late.sentence).toContain(
      'Reserve not kept: to keep 45\u00a0min, land at most 3\u00a0h\u00a038\u00a0min',
    );
    loading.flight.landingAfterS = 13_100;
    await put(loading);
    expect((await review()).reserve?.kept).toBe(true);
  });

  test('of a loading that is not there is refused', async () => {
    await expect(review('none')).rejects.toThrow("There is no loading 'none'");
  });
});

// FAA-H-8083-25C, Pilot's Handbook of Aeronautical Knowledge, chapter 10, computational method (LOAD-001 of the
// published checks): 3,320 lb and 84.8 in; the last printed digit is the tolerance.
test('the handbook aeroplane, entered as the handbook prints it, comes to its weight and CG', async () => {
  const seat = (id: string, armIn: number): AircraftRecord['stations'][number] => ({
    id,
    name: id,
    kind: 'seat',
    arm: { kind: 'fixed', armM: armIn * M_PER_IN },
    leastKg: null,
    mostKg: null,
    source: { from: 'manual', comparedOn: null },
  });
  const aircraft: AircraftRecord = {
    ...exampleAircraft(),
    id: 'handbook',
    mac: null,
    maxMasses: { rampKg: null, takeOffKg: 3_400 * KG_PER_LB, landingKg: null, zeroFuelKg: null },
    groups: [],
    envelopes: [],
    stations: [seat('front-seats', 85), seat('rear-seats', 121), seat('locker', 150)],
    tanks: [
      {
        id: 'wing',
        name: 'Wing tanks',
        side: 'centre',
        capacityL: 80 * L_PER_US_GAL,
        unusableL: 0,
        arm: { kind: 'fixed', armM: 75 * M_PER_IN },
        fuelKind: 'avgas',
        densityKgPerL: (6 * KG_PER_LB) / L_PER_US_GAL,
        source: { from: 'manual', comparedOn: null },
      },
    ],
  };
  await library.ask('aircraft.put', { aircraft });
  await weigh(2_100 * KG_PER_LB, 78.3 * M_PER_IN, { aircraftId: 'handbook' });
  const load = (stationId: string, massLb: number): LoadingRecord['items'][number] => ({
    id: stationId,
    stationId,
    seatArmM: null,
    personId: null,
    typed: { name: stationId, massKg: massLb * KG_PER_LB, known: 'weighed', sdKg: 0, biasKg: 0 },
  });
  const gallonsL = 75 * L_PER_US_GAL;
  await put({
    ...exampleLoading(),
    id: 'handbook-loading',
    aircraftId: 'handbook',
    items: [load('front-seats', 340), load('rear-seats', 350), load('locker', 80)],
    fuel: [{ tankId: 'wing', lowL: gallonsL, bestL: gallonsL, highL: gallonsL }],
    burn: { kind: 'sequence', tankIds: ['wing'], everyMin: null, returnLine: null },
  });
  const { ramp } = await review('handbook-loading');
  expect((ramp?.massKg ?? 0) / KG_PER_LB).toBeCloseTo(3_320, 6);
  expect((ramp?.momentKgM ?? 0) / (KG_PER_LB * M_PER_IN)).toBeCloseTo(281_430, 3);
  expect(Math.abs((ramp?.armM ?? 0) / M_PER_IN - 84.8)).toBeLessThan(0.05);
});

describe('the verdicts on all loadings of an aeroplane', () => {
  interface Standing {
    id: string;
    verdict: string;
    entriesMark: string;
  }
  const verdicts = async () =>
    (await library.ask('loading.verdicts', { aircraftId: 'two-seater' })) as Standing[];

  test('change with the aeroplane under the same mark, and with the loading under another', async () => {
    await weigh(318, 1.776);
    await put(exampleLoading());
    const [before] = await verdicts();
    expect(before).toMatchObject({ id: 'two-friends', verdict: 'inside' });
    const light = exampleAircraft();
    light.maxMasses = { rampKg: null, takeOffKg: 400, landingKg: 400, zeroFuelKg: null };
    await library.ask('aircraft.put', { aircraft: light });
    const [after] = await verdicts();
    expect(after?.verdict).toBe('outside');
    expect(after?.entriesMark).toBe(before?.entriesMark);
    await put({ ...exampleLoading(), name: 'Renamed' });
    expect((await verdicts())[0]?.entriesMark).not.toBe(before?.entriesMark);
  });
});
