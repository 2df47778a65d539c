import { beforeEach, describe, expect, test } from 'vitest';
import { appendCalibration } from '../../../main/store/calibrations.ts';
import type { KeptRefits } from '../../../shared-calc/fuel/kept-refits.ts';
import type { CalibrationRecord, FillTestRecord } from '../../../shared-calc/fuel/records.ts';
import { exampleAircraft, exampleLoading } from '../example-aircraft.ts';
import { exampleFillTest } from '../example-fill-test.ts';
import { memoryLibrary, type MemoryLibrary } from '../memory-library.ts';

let library: MemoryLibrary;
beforeEach(async () => {
  library = memoryLibrary();
  await library.ask('aircraft.put', { aircraft: exampleAircraft() });
});

const undo = () => library.ask('history.undo', {});
const redo = () => library.ask('history.redo', {});
const tests = () => library.ask('fillTest.list', { tankId: 'rear' }) as Promise<FillTestRecord[]>;
const curves = () => library.ask('calibration.list', { tankId: 'rear' }) as Promise<CalibrationRecord[]>;
const adopt = (testIds = ['may-test'], tankId = 'rear') =>
  library.ask('calibration.adopt', { tankId, testIds, adoptedOn: '2026-05-10' });

describe('a fill test', () => {
  test.each([
    { kind: 'fractions', denominator: 16 },
    { kind: 'bars', count: 6 },
    { kind: 'percent', step: 5 },
    { kind: 'numbers', atEmpty: 240, atFull: 33, step: 5 },
    { kind: 'volume', unit: 'US gal', atEmpty: 0, atFull: 12, step: 1 },
  ])('comes back as it was put, on a gauge of %o', async (scale) => {
    const put = { ...exampleFillTest(), scale };
    await library.ask('fillTest.put', { test: put });
    expect(await tests()).toEqual([put]);
  });

  test('is kept after each figure: a volume whose reading is not typed yet stays', async () => {
    const put = exampleFillTest();
    put.runs[0]?.pours.push({
      id: 'half',
      volumeL: 2,
      reading: null,
      asideReason: null,
      atEpochS: 1,
      written: null,
    });
    await library.ask('fillTest.put', { test: put });
    expect((await tests())[0]?.runs[0]?.pours.at(-1)).toMatchObject({ volumeL: 2, reading: null });
  });

  test('keeps how it was started and ended, what was corrected and what was pinned', async () => {
    const put: FillTestRecord = {
      ...exampleFillTest(),
      supplyV: 12.4,
      feeds: 'shut',
      smoothness: 0.7,
      pins: [{ id: 'pin', positionRatio: 0.5, usableL: 20, sdL: 0.3, note: 'checked by the maker' }],
    };
    const [run] = put.runs;
    if (run === undefined) throw new Error('the example has a run');
    run.startSdL = 0.1;
    run.endsAt = 'brim';
    const [first, second] = run.pours;
    if (first !== undefined) first.written = { volumeL: 4, reading: null };
    if (second !== undefined) second.written = { volumeL: 5, reading: { at: 'scale', positionRatio: 0.25 } };
    await library.ask('fillTest.put', { test: put });
    expect(await tests()).toEqual([put]);
    await library.ask('fillTest.put', { test: { ...put, pins: [] } });
    await undo();
    expect(await tests()).toEqual([put]);
  });

  test('is undone and done again figure by figure, and its removal too', async () => {
    const put = exampleFillTest();
    await library.ask('fillTest.put', { test: put });
    const shorter = { ...put, runs: put.runs.map((run) => ({ ...run, pours: run.pours.slice(0, 3) })) };
    await library.ask('fillTest.put', { test: shorter, named: 'pour 4' });
    await library.ask('fillTest.remove', { id: put.id });
    expect(await tests()).toEqual([]);
    expect(await undo()).toEqual({ named: 'fill test of 2026-05-09 removed', screen: 'fuel' });
    expect(await tests()).toEqual([shorter]);
    expect(await undo()).toEqual({ named: 'pour 4', screen: 'fuel' });
    expect(await tests()).toEqual([put]);
    await undo();
    expect(await tests()).toEqual([]);
    await redo();
    await redo();
    expect(await tests()).toEqual([shorter]);
  });

  test('with figures that cannot be is refused, and nothing is kept', async () => {
    const negative = exampleFillTest();
    const first = negative.runs[0]?.pours[0];
    if (first !== undefined) first.volumeL = -3;
    await expect(library.ask('fillTest.put', { test: negative })).rejects.toThrow(
      'test.runs[0].pours[0].volumeL is -3 L; allowed at least 0 L',
    );
    await expect(
      library.ask('fillTest.put', {
        test: { ...exampleFillTest(), scale: { kind: 'numbers', atEmpty: 5, atFull: 5, step: 1 } },
      }),
    ).rejects.toThrow('atFull - atEmpty is 0');
    await expect(library.ask('fillTest.put', { test: exampleFillTest('x', 'no-tank') })).rejects.toThrow(
      "There is no tank 'no-tank'",
    );
    expect(await tests()).toEqual([]);
  });
});

describe('an adopted curve', () => {
  beforeEach(() => library.ask('fillTest.put', { test: exampleFillTest() }));

  const knotAt = (curve: CalibrationRecord | undefined, positionRatio: number) => {
    if (curve?.curve.method !== 'logSlopeRefits') throw new Error('no curve with a band');
    const knot = curve.curve.knots.find((each) => Math.abs(each.positionRatio - positionRatio) < 1e-9);
    if (knot === undefined) throw new Error(`no place at ${String(positionRatio)}`);
    return knot;
  };

  // By hand: five litres a pour, so these are the running sums at the five readings between the stops.
  test('holds the volumes of its test within its band, at every mark that was read', async () => {
    await adopt();
    const [curve] = await curves();
    expect(curve).toMatchObject({
      testIds: ['may-test'],
      adoptedOn: '2026-05-10',
      methodVersion: 4,
      withdrawn: false,
      // Capacity 45 L of which 1 L is unusable.
      curve: { resolutionRatio: 0.125, usableCapacityL: 44, readingCount: 5, asideCount: 0, fewRows: false },
    });
    for (const [positionRatio, usableL] of [
      [1 / 8, 10],
      [3 / 8, 15],
      [1 / 2, 20],
      [5 / 8, 25],
      [7 / 8, 30],
    ] as const) {
      const knot = knotAt(curve, positionRatio);
      expect(knot.lowL).toBeLessThan(usableL);
      expect(knot.highL).toBeGreaterThan(usableL);
      expect(knot.bestL).toBeGreaterThan(knot.lowL);
      expect(knot.highL).toBeGreaterThan(knot.bestL);
    }
    // Nothing is kept beyond the first and the last reading that moved.
    expect(curve?.curve.knots[0]?.positionRatio).toBe(1 / 8);
    expect(curve?.curve.knots.at(-1)?.positionRatio).toBe(7 / 8);
  });

  test('has a narrower band where a better container was used', async () => {
    await adopt();
    const can = { name: 'Can', nominalL: 5, how: 'weighed', scaleSdRatio: 0.001, pourSdL: 0.005 };
    const { id } = (await library.ask('container.put', { container: can })) as { id: string };
    const better = exampleFillTest();
    for (const run of better.runs) run.containerId = id;
    await library.ask('fillTest.put', { test: better });
    await library.ask('calibration.adopt', {
      tankId: 'rear',
      testIds: ['may-test'],
      adoptedOn: '2026-06-01',
    });
    const [weighed, unknown] = (await curves()).map((curve) => knotAt(curve, 7 / 8));
    if (weighed === undefined || unknown === undefined) throw new Error('two curves were adopted');
    expect(weighed.highL - weighed.lowL).toBeLessThan(unknown.highL - unknown.lowL);
  });

  test('without a band, from before there was one, stays readable as it was', async () => {
    const curve = {
      method: 'isotonicMeansMonotoneCubic',
      knots: [10, 15, 20].map((lowL, index) => ({ positionRatio: (index + 1) / 8, lowL, highL: lowL })),
      resolutionRatio: 0.125,
      usableCapacityL: 44,
      offEmptyLeastL: 5,
      atEmptyMostL: 10,
      readingCount: 3,
    } as const;
    const { scale } = exampleFillTest();
    const old = {
      id: 'old',
      tankId: 'rear',
      testIds: [],
      checkIds: [],
      adoptedOn: '2025-05-10',
      methodVersion: 1,
      scale,
      curve,
      byHand: { correctedCount: 0, pinnedCount: 0, smoothness: null },
    };
    appendCalibration(library.db, old, null, 0);
    expect(await curves()).toEqual([{ ...old, withdrawn: false }]);
    expect(await library.ask('calibration.refits', { id: 'old' })).toBeNull();
  });

  test('stays as it is when its test changes; a later one supersedes it and both stay', async () => {
    await adopt();
    const [before] = await curves();
    const changed = exampleFillTest();
    for (const pour of changed.runs[0]?.pours ?? []) pour.volumeL = 4;
    await library.ask('fillTest.put', { test: changed });
    expect(await curves()).toEqual([before]);
    await library.ask('calibration.adopt', {
      tankId: 'rear',
      testIds: ['may-test'],
      adoptedOn: '2026-06-01',
    });
    const [later, first] = (await curves()).map((each) => knotAt(each, 5 / 8).bestL);
    // Four litres a pour instead of five.
    expect((later ?? NaN) / (first ?? NaN)).toBeCloseTo(0.8, 1);
  });

  test('keeps the curves behind its band, and what was done by hand', async () => {
    const { id } = (await adopt()) as { id: string };
    const [curve] = await curves();
    const refits = (await library.ask('calibration.refits', { id })) as KeptRefits;
    expect(refits.volumesL).toHaveLength(400);
    expect(refits.positionsRatio).toEqual(curve?.curve.knots.map(({ positionRatio }) => positionRatio));
    // The band is the 5 and 95 % of these very curves: by hand, 20 of 400 lie at or below the former.
    const atHalf = refits.positionsRatio.indexOf(0.5);
    const sorted = refits.volumesL.map((volumes) => volumes[atHalf] ?? NaN).sort((a, b) => a - b);
    expect(knotAt(curve, 0.5).lowL).toBeGreaterThan((sorted[19] ?? NaN) - 0.001);
    expect(knotAt(curve, 0.5).lowL).toBeLessThan((sorted[20] ?? NaN) + 0.001);
    expect(curve?.byHand).toEqual({ correctedCount: 0, pinnedCount: 0, smoothness: null });
    const edited = { ...exampleFillTest(), smoothness: 1.3 };
    const first = edited.runs[0]?.pours[0];
    if (first !== undefined) first.written = { volumeL: 4, reading: null };
    await library.ask('fillTest.put', { test: edited });
    await library.ask('calibration.adopt', {
      tankId: 'rear',
      testIds: ['may-test'],
      adoptedOn: '2026-05-11',
    });
    expect((await curves())[0]?.byHand).toEqual({ correctedCount: 1, pinnedCount: 0, smoothness: 1.3 });
  });

  test('is undone by a withdrawal and done again as the same record', async () => {
    await adopt();
    const [before] = await curves();
    await undo();
    expect(await curves()).toEqual([{ ...before, withdrawn: true }]);
    await redo();
    expect(await curves()).toEqual([before]);
  });

  test('leaves out what was set aside, but not its fuel', async () => {
    const put = exampleFillTest();
    const third = put.runs[0]?.pours[2];
    if (third !== undefined) third.asideReason = 'read while filling';
    await library.ask('fillTest.put', { test: put });
    await adopt();
    const [curve] = await curves();
    expect(curve?.curve).toMatchObject({ readingCount: 4, asideCount: 1 });
    // The fuel of the row that was set aside is still in the tank: 20 L at the half.
    const half = knotAt(curve, 1 / 2);
    expect(half.lowL).toBeLessThan(20);
    expect(half.highL).toBeGreaterThan(20);
  });

  test('stands for its tank until it is withdrawn', async () => {
    const standing = () => library.ask('calibration.standing', { aircraftId: 'two-seater' });
    const { id } = (await adopt()) as { id: string };
    expect(await standing()).toEqual([
      { tankId: 'front', name: 'Front tank', adoptedOn: null, checks: null },
      { tankId: 'rear', name: 'Rear tank', adoptedOn: '2026-05-10', checks: null },
    ]);
    await library.ask('calibration.withdraw', { id });
    expect(await standing()).toMatchObject([{ adoptedOn: null }, { adoptedOn: null }]);
  });

  test('is not made from too few readings, nor from tests that are not alike', async () => {
    const short = exampleFillTest('short');
    for (const run of short.runs) run.pours = run.pours.slice(0, 3);
    await library.ask('fillTest.put', { test: short });
    await expect(adopt(['short'])).rejects.toThrow('2 of at least 3 different');
    await library.ask('fillTest.put', {
      test: { ...exampleFillTest('running'), power: 'engine running' },
    });
    await expect(adopt(['may-test', 'running'])).rejects.toThrow('differ in tank, attitude, supply');
    await expect(adopt(['may-test'], 'front')).rejects.toThrow('differ in tank');
    expect(await curves()).toEqual([]);
  });
});

test('a container is added, changed and removed, each with its undo; a test keeps the one that it names', async () => {
  const can = {
    name: 'Can',
    nominalL: 3,
    how: 'weighed',
    scaleSdRatio: 0.006,
    pourSdL: 0.02,
    weighed: { densityKgPerL: 0.742, temperatureC: 15 },
  };
  const { id } = (await library.ask('container.put', { container: can })) as { id: string };
  const put = exampleFillTest();
  for (const run of put.runs) run.containerId = id;
  await library.ask('fillTest.put', { test: put });
  await library.ask('container.remove', { id });
  expect(await library.ask('container.list', {})).toEqual([]);
  expect(await library.ask('container.list', { withRemoved: true })).toEqual([{ id, ...can, removed: true }]);
  expect((await tests())[0]?.runs[0]?.containerId).toBe(id);
  await undo();
  expect(await library.ask('container.list', {})).toHaveLength(1);
  await expect(library.ask('container.put', { container: { ...can, scaleSdRatio: 0.5 } })).rejects.toThrow(
    'container.scaleSdRatio is 0.5',
  );
});

test('a loading keeps what a gauge read and the curve by which it was taken, and refuses one of another tank', async () => {
  await library.ask('fillTest.put', { test: exampleFillTest() });
  const { id: calibrationId } = (await adopt()) as { id: string };
  const loading = exampleLoading();
  loading.items = [];
  const rear = loading.fuel.find(({ tankId }) => tankId === 'rear');
  if (rear === undefined) throw new Error('the example has a rear tank');
  rear.gauge = { reading: { at: 'scale', positionRatio: 0.5 }, calibrationId };
  const { id } = (await library.ask('loading.put', { loading })) as { id: string };
  const kept = async () => ((await library.ask('loading.get', { id })) as { loading: unknown }).loading;
  expect(await kept()).toEqual({ ...loading, id });
  const front = loading.fuel.find(({ tankId }) => tankId === 'front');
  if (front !== undefined) front.gauge = { reading: { at: 'fullStop' }, calibrationId };
  await expect(library.ask('loading.put', { loading: { ...loading, id } })).rejects.toThrow(
    `There is no adopted curve '${calibrationId}' of the tank 'front'. Nothing was changed.`,
  );
});
