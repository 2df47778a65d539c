import { describe, expect, test } from 'vitest';
import type { LoadingAeroplane } from '../../../../shared-calc/loading/aeroplane.ts';
import { ballastAt } from '../../../../shared-calc/loading/backwards/ballast.ts';
import { fuelRanges, withFuel } from '../../../../shared-calc/loading/backwards/fuels.ts';
import { keptBy, type Asked } from '../../../../shared-calc/loading/backwards/kept.ts';
import { landingRanges } from '../../../../shared-calc/loading/backwards/landings.ts';
import { leaveBehind } from '../../../../shared-calc/loading/backwards/leave-behind.ts';
import { loadRanges, withLoad, withMass } from '../../../../shared-calc/loading/backwards/loads.ts';
import { moveRanges } from '../../../../shared-calc/loading/backwards/moves.ts';
import { nearestSure, oddsOf } from '../../../../shared-calc/loading/backwards/nine-in-ten.ts';
import { normalDraws } from '../../../../shared-calc/loading/odds.ts';
import { exactly, load, outsideInBetween, twoFriends, twoSeater } from '../example.ts';

const LB = 0.45359237;
const IN = 0.0254;
const GAL = 3.785411784;

interface Handbook {
  emptyLb: number;
  emptyIn: number;
  limitsIn: [number, number];
  mostLb: number;
  stationsIn: Record<string, number>;
  fuel?: { armIn: number; gal: number };
}

/** A handbook's aeroplane: an upright envelope between two arms, fuel of 6 lb a US gallon in one tank. */
function handbook({ emptyLb, emptyIn, limitsIn, mostLb, stationsIn, fuel }: Handbook): Asked {
  const [forward, aft] = limitsIn;
  const aeroplane: LoadingAeroplane = {
    ...twoSeater,
    empty: { ...twoSeater.empty, massKg: emptyLb * LB, armM: emptyIn * IN },
    mac: null,
    stations: Object.entries(stationsIn).map(([id, armIn]) => ({
      id,
      name: id,
      arm: { kind: 'fixed', armM: armIn * IN },
      leastKg: null,
      mostKg: null,
    })),
    tanks:
      fuel === undefined
        ? []
        : [
            {
              id: 'tank',
              name: 'tank',
              capacityL: 100 * GAL,
              unusableL: 0,
              densityKgPerL: (6 * LB) / GAL,
              arm: { kind: 'fixed', armM: fuel.armIn * IN },
              side: 'centre',
            },
          ],
    envelopes: [
      {
        id: 'e',
        name: 'e',
        phase: 'flight',
        category: '',
        across: 'arm',
        vertices: [
          [forward, 500],
          [forward, mostLb],
          [aft, mostLb],
          [aft, 500],
        ].map(([armIn = 0, lb = 0]) => ({ across: armIn * IN, massKg: lb * LB })),
      },
    ],
    maxMasses: { rampKg: null, takeOffKg: mostLb * LB, landingKg: null, zeroFuelKg: null },
  };
  return {
    aeroplane,
    loading: {
      category: '',
      loads: [],
      fuel: fuel === undefined ? [] : [exactly('tank', fuel.gal * GAL)],
      burn: {
        kind: 'sequence',
        tankIds: fuel === undefined ? [] : ['tank'],
        everyMin: null,
        returnLine: null,
      },
      flight: { taxiL: 0, climbL: 0, climbMin: 0, cruiseLPerH: 30, landingAfterS: null },
    },
    reserveS: 0,
  };
}

function loaded(asked: Asked, loads: Record<string, number>): Asked {
  return Object.entries(loads).reduce(
    (so, [stationId, lb]) => withLoad(so, load(stationId, stationId, lb * LB)),
    asked,
  );
}

describe('worked examples of the handbooks', () => {
  test('65 lb go from station 150 to station 30 to bring 7,800 lb from 81.5 in to 80.5 in (FAA-H-8083-25C ch. 10)', () => {
    // 7,800 lb at 81.5 in in all, of which 300 lb lie at 150 in: the rest has its arm from the moments.
    const emptyIn = (7800 * 81.5 - 300 * 150) / 7500;
    const plane = handbook({
      emptyLb: 7500,
      emptyIn,
      limitsIn: [70, 80.5],
      mostLb: 9000,
      stationsIn: { aft: 150, forward: 30 },
    });
    const [first] = moveRanges(loaded(plane, { aft: 300 }), 0, { stationId: 'forward', armM: null });
    expect((first?.from ?? NaN) / LB).toBeCloseTo(65, 6);
  });

  test('7.7 lb of ballast at 228 in bring 1,876 lb from 32.2 in to 33.0 in (FAA-H-8083-1B ch. 5)', () => {
    const plane = handbook({
      emptyLb: 1876,
      emptyIn: 32.2,
      limitsIn: [33, 40],
      mostLb: 2500,
      stationsIn: { tail: 228 },
    });
    // Printed to 0.1 lb.
    expect(Math.abs((ballastAt(plane, 'tail', null)?.leastKg ?? NaN) / LB - 7.7)).toBeLessThan(0.05);
  });

  test('39 US gal are permissible with maximum passengers (AC 43.13-1B figure 10-13)', () => {
    const plane = handbook({
      emptyLb: 1169 + 17,
      emptyIn: (1169 * 10.6 - 17 * 49) / (1169 + 17),
      limitsIn: [8.5, 21],
      mostLb: 2100,
      stationsIn: { front: 16, rear: 48 },
      fuel: { armIn: 22, gal: 10 },
    });
    const ranges = fuelRanges(loaded(plane, { front: 340, rear: 340 }), [1]);
    expect((ranges.at(-1)?.to ?? NaN) / GAL).toBeCloseTo(39, 6);
  });

  test('105 lb are left for baggage below 2,300 lb (FAA-CT-8080-2 figure 34)', () => {
    const plane = handbook({
      emptyLb: 1365,
      emptyIn: ((51.5 - 0.2) * 1000) / 1365,
      limitsIn: [35, 55],
      mostLb: 2300,
      stationsIn: { front: 36.8, rear: 72.5, baggage: 95 },
      fuel: { armIn: 48.333, gal: 30 },
    });
    const asked = loaded(plane, { front: 250, rear: 400, baggage: 0 });
    expect((loadRanges(asked, 2).at(-1)?.to ?? NaN) / LB).toBeCloseTo(105, 6);
  });

  test('18.4 US gal are drained, the next tenth, where 110 lb are too many (FAA-CT-8080-2)', () => {
    const plane = handbook({
      emptyLb: 2000,
      emptyIn: 80,
      limitsIn: [70, 90],
      mostLb: 2490,
      stationsIn: {},
      fuel: { armIn: 80, gal: 100 },
    });
    const mostGal = (fuelRanges(plane, [1]).at(-1)?.to ?? NaN) / GAL;
    expect(Math.ceil((100 - mostGal) * 10 - 1e-6) / 10).toBe(18.4);
  });
});

const friends: Asked = { aeroplane: twoSeater, loading: twoFriends, reserveS: 1800 };
const outside: Asked = { aeroplane: twoSeater, loading: outsideInBetween, reserveS: 1800 };

describe('the two-seater whose CG runs aft when the front tank is empty', () => {
  test('takes so much more baggage as the moments by hand say', () => {
    // With the front tank empty: (momentum + 2.56 x) / (496.696 + x) = 1.89 with 15 kg of baggage taken out first.
    const solidKg = 318 + 68 + 86 + 34.3 * 0.72;
    const solidKgM = 318 * 1.776 + (68 + 86) * 1.965 + 34.3 * 0.72 * 2.25;
    const byHandKg = (1.89 * solidKg - solidKgM) / (2.56 - 1.89);
    expect(byHandKg).toBeGreaterThan(20);
    // The baggage place takes 20 kg: that is met first, exactly.
    expect(loadRanges(friends, 2)).toEqual([{ from: 0, to: 20 }]);
    const roomy = twoSeater.stations.map((station) =>
      station.id === 'bag' ? { ...station, mostKg: 60 } : station,
    );
    const [only] = loadRanges({ ...friends, aeroplane: { ...twoSeater, stations: roomy } }, 2);
    expect(only?.to).toBeCloseTo(byHandKg, 9);
  });

  test('is outside between two fuel quantities of the rear tank when the front one is full', () => {
    // With 45 L in the rear tank outside; by hand the most that keeps the CG at 1.89 m when the front tank is empty.
    const solidKg = 318 + 68 + 104 + 20;
    const solidKgM = 318 * 1.776 + (68 + 104) * 1.965 + 20 * 2.56;
    const mostL = (1.89 * solidKg - solidKgM) / (2.25 - 1.89) / 0.72;
    const ranges = fuelRanges(outside, [1, 0]);
    expect(ranges).toHaveLength(1);
    expect(ranges[0]?.to).toBeCloseTo(mostL, 9);
    // The least: 48 L in front less 1.5 of taxi, 57 L for 3 h 10 min, 9 L of reserve.
    expect(ranges[0]?.from).toBeCloseTo(1.5 + 57 + 9 - 48, 6);
  });

  test('may land once it has burned down to the landing mass', () => {
    const takeOffKg = 318 + 68 + 104 + 20 + 0.72 * (93 - 1.5);
    const [only] = landingRanges(outside);
    expect(only?.from).toBeCloseTo(((takeOffKg - 570) / 0.72 / 18) * 3600, 6);
    expect(only?.to).toBeCloseTo(((93 - 1.5) / 18) * 3600 - 1800, 6);
  });
});

describe('leaving behind', () => {
  const heavy = loaded(outside, {});

  test('names the piece that suffices, the lightest of those that do alone', () => {
    const found = leaveBehind(heavy, [1, 2]);
    expect(found.fewest?.indexes).toEqual([2]);
    expect(found.fewest?.massKg).toBe(20);
  });

  test('names nothing where nothing has to stay, and null where even all does not help', () => {
    expect(leaveBehind(friends, [1, 2]).fewest?.indexes).toEqual([]);
    const tooShort: Asked = { ...friends, reserveS: 86_400 };
    expect(leaveBehind(tooShort, [1, 2])).toEqual({ fewest: null, lightest: null });
  });

  test('offers two light pieces beside one heavy one', () => {
    const bags = loaded(friends, {});
    const loads = [
      load('left', 'a', 68),
      load('right', 'b', 86),
      load('bag', 'c', 14),
      load('bag', 'd', 3),
      load('bag', 'e', 4),
    ];
    // 21 kg on a place for 20: any one piece suffices, the lightest is 3 kg.
    const asked = { ...bags, loading: { ...bags.loading, loads } };
    expect(leaveBehind(asked, [2, 3, 4]).fewest?.indexes).toEqual([3]);
    const tight = twoSeater.stations.map((one) => (one.id === 'bag' ? { ...one, mostKg: 14 } : one));
    const both = leaveBehind({ ...asked, aeroplane: { ...twoSeater, stations: tight } }, [2, 3, 4]);
    // 7 kg have to go: the heavy one alone, or both light ones.
    expect(both.fewest?.indexes).toEqual([2]);
    expect(both.lightest?.indexes).toEqual([3, 4]);
  });
});

describe('shapes that are not simple', () => {
  test('a level step of the forward limit is met from one side only', () => {
    // Forward limit 1.70 m up to 480 kg and 1.80 m above: a light load far forward is fine until 480 kg.
    const vertices = [
      [1.7, 380],
      [1.7, 480],
      [1.8, 480],
      [1.8, 600],
      [1.95, 600],
      [1.95, 380],
    ].map(([across = 0, massKg = 0]) => ({ across, massKg }));
    const envelopes = twoSeater.envelopes.map((e) => ({ ...e, vertices }));
    const stations = twoSeater.stations.map((s) => ({ ...s, mostKg: null }));
    const empty = { ...twoSeater.empty, massKg: 390, armM: 1.75 };
    const asked: Asked = {
      aeroplane: { ...twoSeater, envelopes, stations, empty },
      loading: {
        ...twoFriends,
        loads: [load('left', 'a', 50)],
        fuel: [exactly('rear', 0), exactly('front', 0)],
        flight: { ...twoFriends.flight, taxiL: 0, landingAfterS: null },
      },
      reserveS: 0,
    };
    // (390 × 1.75 + 1.965 x) / (390 + x): up to 90 kg it is 480 kg; at 1.80 m again from x = 390 × 0.05 / 0.165 on.
    const againKg = (390 * 0.05) / 0.165;
    const ranges = loadRanges(asked, 0);
    expect(ranges).toHaveLength(2);
    // A mass met exactly is met: to a billionth of the largest one, 6e-7 kg.
    const exact = 6.1e-7;
    expect(Math.abs((ranges[0]?.to ?? NaN) - 90)).toBeLessThan(exact);
    expect(ranges[1]?.from).toBeCloseTo(againKg, 6);
    // 570 kg to land.
    expect(Math.abs((ranges[1]?.to ?? NaN) - 180)).toBeLessThan(exact);
  });

  test('a group of stations bounds a load that its own station would take', () => {
    const groups = [{ id: 'g', name: 'g', stationIds: ['left', 'right'], emptyPartKg: 0, mostKg: 160 }];
    const asked = { ...friends, aeroplane: { ...twoSeater, groups } };
    expect(loadRanges(asked, 1).at(-1)?.to).toBeCloseTo(92, 9);
  });

  test('a limit broken elsewhere leaves no answer', () => {
    expect(loadRanges(withMass(friends, 0, 111), 2)).toEqual([]);
  });

  test('doubtful fuel counts at its high figure for mass', () => {
    const fuel = [exactly('rear', 0), { tankId: 'front', lowL: 28, bestL: 30, highL: 32 }];
    const heavy = { ...twoSeater, maxMasses: { ...twoSeater.maxMasses, takeOffKg: 520 } };
    const asked = {
      ...friends,
      aeroplane: heavy,
      loading: { ...twoFriends, fuel, flight: { ...twoFriends.flight, landingAfterS: 1800 } },
    };
    // 487 kg and 0.72 (x + 2 - 1.5) make 520 kg.
    expect(fuelRanges(asked, [0, 1]).at(-1)?.to).toBeCloseTo(33 / 0.72 - 0.5, 9);
    expect(withFuel(asked, [0, 1], 40).loading.fuel[1]).toEqual({
      tankId: 'front',
      lowL: 38,
      bestL: 40,
      highL: 42,
    });
  });
});

test('the load for nine in ten is below the largest one, is inside nine times in ten, and a kilogram more is not', () => {
  const doubtful: Asked = {
    ...friends,
    aeroplane: {
      ...twoSeater,
      stations: twoSeater.stations.map((one) => ({ ...one, mostKg: null })),
    },
  };
  const store = new Map<number, ReturnType<typeof normalDraws>>();
  const draws = (dimensions: number) => {
    const found = store.get(dimensions) ?? normalDraws(dimensions, 1024, 1);
    store.set(dimensions, found);
    return found;
  };
  const at = (massKg: number) => withMass(doubtful, 2, massKg);
  const [range] = loadRanges(doubtful, 2);
  if (range === undefined) throw new Error('no range');
  const sureKg = nearestSure(at, range, 'to', 0.9, draws);
  expect(sureKg).not.toBeNull();
  expect(sureKg).toBeLessThan(range.to);
  // Another set of draws: an independent estimate.
  const other = normalDraws(2, 16_384, 77);
  expect(oddsOf(at(sureKg ?? NaN), () => other)?.insideProb).toBeGreaterThan(0.9 - 0.005);
  expect(oddsOf(at((sureKg ?? NaN) + 1), () => other)?.insideProb).toBeLessThan(0.9);
  expect(keptBy(at(range.to)).all).toBe(true);
});
