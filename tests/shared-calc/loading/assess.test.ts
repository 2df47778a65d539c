import { describe, expect, test } from 'vitest';
import { assessLoading, type LoadingResult } from '../../../shared-calc/loading/assess.ts';
import { exactly, load, outsideInBetween, twoFriends, twoSeater } from './example.ts';

function marginOf(result: LoadingResult, id: string) {
  const found = result.margins.find((m) => m.limit.id === id);
  if (found === undefined) throw new Error(`no limit ${id}`);
  return found;
}

describe('a flight with the front tank first', () => {
  // By hand: solids 487 kg, 906.413 kg m. Rear 34.3 L is 24.696 kg at 2.25 m, front 48 L is 34.56 kg at 1.46 m.
  // Front tank empty: 511.696 kg, 961.979 kg m, arm 1.880 m - from a sheet of paper, not from the program.
  const result = assessLoading(twoSeater, twoFriends);

  test('starts, takes off, lands and ends at the masses that a sum by hand gives', () => {
    expect(result.ramp.massKg).toBeCloseTo(318 + 68 + 86 + 15 + 24.696 + 34.56, 9);
    expect(result.takeOff.massKg).toBeCloseTo(546.256 - 1.5 * 0.72, 9);
    // 3 h 10 min at 18 L/h are 57 L, after 1.5 L of taxi.
    expect(result.landing?.massKg).toBeCloseTo(546.256 - 58.5 * 0.72, 9);
    expect(result.exhausted.massKg).toBeCloseTo(487, 9);
    // Usable fuel lasts (82.3 - 1.5) L at 18 L/h.
    expect(result.exhausted.afterTakeOffS).toBeCloseTo((80.8 / 18) * 3600, 6);
  });

  test('is closest to the aft limit when the front tank is empty', () => {
    const { margin, worst } = marginOf(result, 'envelope.main.aft');
    const momentKgM = 318 * 1.776 + 68 * 1.965 + 86 * 1.965 + 15 * 2.56 + 24.696 * 2.25;
    expect(margin).toBeCloseTo(1.89 - momentKgM / 511.696, 12);
    expect(worst?.emptiedTankId).toBe('front');
    expect(worst?.changedToTankId).toBe('rear');
    // 46.5 L at 18 L/h.
    expect(worst?.afterTakeOffS).toBeCloseTo(9300, 6);
    expect(result.least?.limit.id).toBe('envelope.main.aft');
    expect(result.inside).toBe(true);
  });

  test('finds the stretch outside that neither take-off nor landing shows, by the quadratic solved by hand', () => {
    const outside = assessLoading(twoSeater, outsideInBetween);
    const aft = marginOf(outside, 'envelope.main.aft');
    expect(aft.met).toBe(false);
    expect(aft.outside).toHaveLength(1);
    // Solids 510 kg, 954.548 kg m; rear 32.4 kg. While the front tank burns with x kg left in it:
    // (954.548 + 72.9 + 1.46 x) / (542.4 + x) = 1.89, so x = (1027.448 - 1025.136) / 0.43.
    const solidKgM = 318 * 1.776 + 172 * 1.965 + 20 * 2.56;
    const frontLeftKg = (solidKgM + 32.4 * 2.25 - 1.89 * 542.4) / (1.89 - 1.46);
    const burnedL = 48 - frontLeftKg / 0.72;
    expect(aft.outside[0]?.fromL).toBeCloseTo(burnedL, 8);
    // Then the rear tank with y kg left: (solid + 2.25 y) / (510 + y) = 1.89.
    const rearLeftKg = (1.89 * 510 - solidKgM) / (2.25 - 1.89);
    expect(aft.outside[0]?.toL).toBeCloseTo(48 + 45 - rearLeftKg / 0.72, 8);
    expect(outside.inside).toBe(false);
  });
});

describe('a limit met exactly is met', () => {
  test('a take-off at the maximum mass to the last digit, typed in pounds', () => {
    const lb = 0.45359237;
    const plane = {
      ...twoSeater,
      maxMasses: { rampKg: null, takeOffKg: 1320 * lb, landingKg: null, zeroFuelKg: null },
    };
    const solids = [701, 170, 160, 20].map((pounds) => pounds * lb);
    const loading = {
      ...twoFriends,
      loads: [
        load('left', 'A', solids[1] ?? 0),
        load('right', 'B', solids[2] ?? 0),
        load('bag', 'C', solids[3] ?? 0),
      ],
      fuel: [exactly('rear', 0), exactly('front', 0)],
      flight: { ...twoFriends.flight, taxiL: 0, landingAfterS: null },
    };
    const emptyKg = (1320 - 350) * lb;
    const at = (massKg: number) =>
      marginOf(assessLoading({ ...plane, empty: { ...plane.empty, massKg } }, loading), 'maxMass.take-off');
    expect(at(emptyKg).met).toBe(true);
    expect(at(emptyKg).margin).toBe(0);
    // A gram more is over.
    expect(at(emptyKg + 0.001).met).toBe(false);
  });

  test('a CG that runs along the aft limit from ramp to the end', () => {
    const alongAft = {
      ...twoSeater,
      empty: { ...twoSeater.empty, armM: 1.89 },
      tanks: twoSeater.tanks.map((tank) => ({ ...tank, arm: { kind: 'fixed' as const, armM: 1.89 } })),
    };
    const loading = { ...twoFriends, loads: [] };
    const { met, outside } = marginOf(assessLoading(alongAft, loading), 'envelope.main.aft');
    expect(met).toBe(true);
    expect(outside).toEqual([]);
  });
});

describe('fuel of which low, best and high figures are known', () => {
  const doubtful = {
    ...twoFriends,
    fuel: [
      { tankId: 'rear', lowL: 30, bestL: 34.3, highL: 38 },
      { tankId: 'front', lowL: 46, bestL: 48, highL: 50 },
    ],
  };
  const result = assessLoading(twoSeater, doubtful);

  test('counts at its high figure for mass', () => {
    expect(marginOf(result, 'maxMass.take-off').margin).toBeCloseTo(600 - (487 + 0.72 * (38 + 50 - 1.5)), 9);
  });

  test('counts for the aft limit with the rear tank high', () => {
    const momentKgM = 318 * 1.776 + 154 * 1.965 + 15 * 2.56 + 0.72 * 38 * 2.25;
    const aft = marginOf(result, 'envelope.main.aft');
    expect(aft.margin).toBeCloseTo(1.89 - momentKgM / (487 + 0.72 * 38), 12);
    expect(aft.fuelL[0]).toBe(38);
  });

  test('by its low figures has to reach the planned landing', () => {
    const long = { ...doubtful, flight: { ...doubtful.flight, landingAfterS: 4.3 * 3600 } };
    // Low: (76 - 1.5) / 18 = 4.139 h.
    const short = assessLoading(twoSeater, long);
    expect(short.fuelEndsS).toBeCloseTo((74.5 / 18) * 3600, 6);
    expect(short.inside).toBe(false);
    expect(assessLoading(twoSeater, { ...twoFriends, flight: long.flight }).fuelEndsS).toBe(null);
  });
});

test('nothing is called inside that was compared with nothing', () => {
  const bare = {
    ...twoSeater,
    envelopes: [],
    maxMasses: { rampKg: null, takeOffKg: null, landingKg: null, zeroFuelKg: null },
  };
  const result = assessLoading(bare, twoFriends);
  expect(result.inside).toBe(false);
  expect(result.unchecked).toEqual(['CG', 'take-off mass']);
  expect(result.margins.filter((m) => !m.met)).toEqual([]);
});

test('an envelope for take-off serves for the whole flight where there is no other', () => {
  const envelopes = twoSeater.envelopes.map((e) => ({ ...e, phase: 'take-off' as const }));
  const result = assessLoading({ ...twoSeater, envelopes }, outsideInBetween);
  expect(marginOf(result, 'envelope.main.aft').met).toBe(false);
});

test('limits of stations, groups and of left against right fuel are compared', () => {
  const plane = {
    ...twoSeater,
    stations: twoSeater.stations.map((s) => (s.id === 'left' ? { ...s, leastKg: 70 } : s)),
    groups: [{ id: 'seats', name: 'Seats', stationIds: ['left', 'right'], emptyPartKg: 0, mostKg: 150 }],
    tanks: twoSeater.tanks.map((t, i) => ({ ...t, side: i === 0 ? ('left' as const) : ('right' as const) })),
    leftRightMostKg: 20,
  };
  const result = assessLoading(plane, twoFriends);
  expect(marginOf(result, 'station.left.least').margin).toBe(-2);
  expect(marginOf(result, 'group.seats').margin).toBe(-4);
  // The front tank first: when it is empty the rear one alone has 24.696 kg.
  const difference = marginOf(result, 'leftRight');
  expect(difference.margin).toBeCloseTo(20 - 24.696, 9);
  // Outside from 20 kg more in the rear (front has 4.696 kg left) until the rear tank is down to 20 kg.
  expect(difference.outside[0]?.fromL).toBeCloseTo(48 - 4.696 / 0.72, 8);
  expect(difference.outside[0]?.toL).toBeCloseTo(48 + 4.696 / 0.72, 8);
});

test('too heavy to land is told until when', () => {
  // 575.12 kg at take-off against 570: 5.12 kg, 7.1111 L, 1422.2 s at 18 L/h... by the sum below.
  const result = assessLoading(twoSeater, outsideInBetween);
  const takeOffKg = 318 + 68 + 104 + 20 + 0.72 * (93 - 1.5);
  expect(result.tooHeavyToLandUntilS).toBeCloseTo(((takeOffKg - 570) / 0.72 / 18) * 3600, 6);
});

describe('a return line', () => {
  const plane = {
    ...twoSeater,
    tanks: twoSeater.tanks.map((t) => ({ ...t, densityKgPerL: 0.72 })),
  };
  const loading = {
    ...twoFriends,
    fuel: [exactly('rear', 20), exactly('front', 48)],
    burn: {
      kind: 'sequence' as const,
      tankIds: ['front', 'rear'],
      everyMin: null,
      returnLine: { intoTankId: 'rear', pumpLPerH: 36 },
    },
    flight: { ...twoFriends.flight, taxiL: 0, landingAfterS: null },
  };

  test('fills the other tank with what the engine does not burn', () => {
    // The front tank loses 36 L/h, the rear gains 18: after 48 / 36 h front is empty, rear holds 20 + 24 = 44 L.
    const result = assessLoading(plane, loading);
    const { worst } = marginOf(result, 'envelope.main.aft');
    expect(worst?.burnedL).toBeCloseTo(24, 9);
    expect(worst?.contentsL[0]).toBeCloseTo(44, 9);
    expect(result.fuelLost).toBe(null);
    expect(result.exhausted.burnedL).toBeCloseTo(68, 5);
  });

  test('into a full tank loses fuel overboard, and that is told', () => {
    const full = { ...loading, fuel: [exactly('rear', 40), exactly('front', 48)] };
    const result = assessLoading(plane, full);
    // 5 L of room at 18 L/h.
    expect(result.fuelLost?.tankId).toBe('rear');
    expect(result.fuelLost?.afterTakeOffS).toBeCloseTo((5 / 18) * 3600, 6);
    // 5 L burned with 10 drawn; the other 38 L of the front tank burn 19; then 45 L of the rear.
    expect(result.exhausted.burnedL).toBeCloseTo(5 + 19 + 45, 5);
  });
});
