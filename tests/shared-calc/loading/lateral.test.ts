import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { LoadingAeroplane } from '../../../shared-calc/loading/aeroplane.ts';
import { assessLoading } from '../../../shared-calc/loading/assess.ts';
import type { LoadingCase } from '../../../shared-calc/loading/case.ts';
import { loadRanges } from '../../../shared-calc/loading/backwards/loads.ts';
import { moveRanges } from '../../../shared-calc/loading/backwards/moves.ts';
import { loadingModel } from '../../../shared-calc/loading/model.ts';
import { dimensionsOf, insideOdds, normalDraws } from '../../../shared-calc/loading/odds.ts';
import { doubtShares, mostDoubtful } from '../../../shared-calc/loading/spread.ts';
import { normalCdf } from '../../../shared-calc/numeric/normal.ts';
import { seededNormals } from '../../../shared-calc/numeric/seeded-normals.ts';
import { loadingVerdict } from '../../../shared-calc/wording/loading.ts';
import { textOf } from '../../../shared-calc/wording/parts.ts';
import { exactly, load } from './example.ts';
import { contentsAfter } from './oracle.ts';

// No published example of a lateral CG with all its figures was at hand: expected values are the sums themselves, written
// out in each test, sampled or drawn the plainest way.

const plain = (sentences: Parameters<typeof textOf>[0]) => textOf(sentences).replaceAll('\u00a0', ' ');

const bare = { leastKg: null, mostKg: null };

/** Seats left and right, a tank in each wing, burned one after the other: the CG goes to the side that is still full. */
const wingTanks: LoadingAeroplane = {
  empty: {
    massKg: 320,
    armM: 1.8,
    massSdKg: 0,
    armSdM: 0,
    lateralArmM: 0.004,
    unusableFuelIncluded: true,
    oilIncluded: true,
  },
  oil: null,
  mac: null,
  stations: [
    { id: 'left', name: 'Left seat', arm: { kind: 'fixed', armM: 1.9 }, lateralArmM: -0.28, ...bare },
    { id: 'right', name: 'Right seat', arm: { kind: 'fixed', armM: 1.9 }, lateralArmM: 0.28, ...bare },
    { id: 'bag', name: 'Baggage', arm: { kind: 'fixed', armM: 2.4 }, lateralArmM: 0, ...bare },
  ],
  tanks: [
    {
      ...{ id: 'lw', name: 'Left tank', capacityL: 50, unusableL: 0, densityKgPerL: 0.72 },
      ...{ arm: { kind: 'fixed' as const, armM: 1.85 }, lateralArmM: -1.6, side: 'left' as const },
    },
    {
      ...{ id: 'rw', name: 'Right tank', capacityL: 50, unusableL: 0, densityKgPerL: 0.72 },
      ...{ arm: { kind: 'fixed' as const, armM: 1.85 }, lateralArmM: 1.6, side: 'right' as const },
    },
  ],
  envelopes: [
    {
      ...{ id: 'e', name: 'flight', phase: 'flight', category: '', across: 'arm' },
      vertices: [
        { across: 1.6, massKg: 300 },
        { across: 1.6, massKg: 650 },
        { across: 2.1, massKg: 650 },
        { across: 2.1, massKg: 300 },
      ],
    },
  ],
  maxMasses: { rampKg: null, takeOffKg: 650, landingKg: null, zeroFuelKg: null },
  groups: [],
  leftRightMostKg: null,
  lateral: { across: 'arm', left: -0.09, right: 0.09 },
};

const rightFirst: LoadingCase = {
  category: '',
  loads: [load('left', 'Mara', 80)],
  fuel: [exactly('lw', 40), exactly('rw', 40)],
  burn: { kind: 'sequence', tankIds: ['rw', 'lw'], everyMin: null, returnLine: null },
  flight: { taxiL: 2, climbL: 0, climbMin: 0, cruiseLPerH: 20, landingAfterS: null },
};

/** Lateral moment and mass after so many litres burned, item by item. */
function sampled({ tanks, empty, stations }: LoadingAeroplane, loading: LoadingCase, burnedL: number) {
  let massKg = empty.massKg;
  let lateralKgM = empty.massKg * (empty.lateralArmM ?? NaN);
  for (const one of loading.loads) {
    massKg += one.massKg;
    lateralKgM += one.massKg * (stations.find(({ id }) => id === one.stationId)?.lateralArmM ?? NaN);
  }
  contentsAfter(wingTanks, loading, burnedL).forEach((litres, i) => {
    const kg = litres * (tanks[i]?.densityKgPerL ?? NaN);
    massKg += kg;
    lateralKgM += kg * (tanks[i]?.lateralArmM ?? NaN);
  });
  return { massKg, lateralKgM };
}

describe('the lateral CG over the whole flight', () => {
  const result = assessLoading(wingTanks, rightFirst);
  const left = result.margins.find(({ limit }) => limit.kind === 'left');

  test('is the sum of lateral moments over the mass at every named point', () => {
    // 320 x 0.004 - 80 x 0.28 = -21.12 kg m; fuel 28.8 kg a side at 1.6 m.
    expect(result.ramp.lateralArmM).toBeCloseTo(-21.12 / 457.6, 12);
    // 2 L from the right: 1.44 kg less there.
    expect(result.takeOff.lateralArmM).toBeCloseTo((-21.12 - 1.44 * 1.6) / 456.16, 12);
    expect(result.exhausted.lateralArmM).toBeCloseTo(-21.12 / 400, 12);
  });

  test('meets its left limit where the arithmetic says, is worst when the right tank is empty, and is inside again', () => {
    // (-21.12 - 1.152 b) / (457.6 - 0.72 b) = -0.09 at b litres burned from the right.
    const metL = (0.09 * 457.6 - 21.12) / (1.152 + 0.09 * 0.72);
    // Then x litres are left in the left tank: (-21.12 - 1.152 x) / (400 + 0.72 x) = -0.09.
    const againL = 80 - (0.09 * 400 - 21.12) / (1.152 - 0.09 * 0.72);
    expect(left?.outside).toHaveLength(1);
    expect(left?.outside[0]?.fromL).toBeCloseTo(metL, 9);
    expect(left?.outside[0]?.toL).toBeCloseTo(againL, 9);
    expect(left?.outside[0]?.fromS).toBeCloseTo(((metL - 2) / 20) * 3600, 6);
    const worstM = (-21.12 - 28.8 * 1.6) / (400 + 28.8);
    expect(left?.margin).toBeCloseTo(worstM + 0.09, 12);
    expect(left?.worst?.emptiedTankId).toBe('rw');
    expect(result.inside).toBe(false);
    expect(result.least).toBe(left);
  });

  test('is said like every other limit', () => {
    const said = loadingVerdict(result, { mass: 'kg', arm: 'mm' });
    expect(plain(said.sentences)).toContain(
      'Outside the left limit by up to 67 mm, from 43 min to 3 h 13 min after take-off.',
    );
    expect(plain(said.sentences)).toContain('Checking take-off and landing alone would not show it.');
    expect(said.inShort.replaceAll('\u00a0', ' ')).toBe('outside by 67 mm');
    // -21.12 / 400 of 90 mm; 78 L at 20 L/h after take-off.
    const even = assessLoading(wingTanks, { ...rightFirst, burn: { ...rightFirst.burn, kind: 'together' } });
    expect(plain(loadingVerdict(even, { mass: 'kg', arm: 'mm' }).sentences)).toContain(
      'Least margin 37 mm to the left limit, 3 h 54 min after take-off, when usable fuel is exhausted.',
    );
  });

  test('a limit of the moment is a straight limit of the moment', () => {
    const byMoment = assessLoading(
      { ...wingTanks, lateral: { across: 'moment', left: -40, right: null } },
      rightFirst,
    );
    const one = byMoment.margins.find(({ limit }) => limit.kind === 'left');
    expect(byMoment.margins.some(({ limit }) => limit.kind === 'right')).toBe(false);
    // -21.12 - 1.152 b = -40
    expect(one?.outside[0]?.fromL).toBeCloseTo((40 - 21.12) / 1.152, 9);
    expect(one?.margin).toBeCloseTo((-21.12 - 28.8 * 1.6 + 40) / (400 + 28.8), 12);
  });

  test('a limit met exactly is met', () => {
    const exact = (-21.12 - 28.8 * 1.6) / (400 + 28.8);
    for (const [offM, met] of [
      [0, true],
      [1e-6, false],
    ] as const) {
      const plane = { ...wingTanks, lateral: { across: 'arm' as const, left: exact + offM, right: 0.2 } };
      expect(assessLoading(plane, rightFirst).inside).toBe(met);
    }
  });

  test('agrees with a flight sampled densely, in any order of two tanks', () => {
    const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
    fc.assert(
      fc.property(
        fc.constantFrom('sequence', 'together', 'alternate'),
        fc.tuple(between(3, 50), between(3, 50)),
        fc.tuple(between(40, 110), between(0, 110)),
        between(0.01, 0.12),
        fc.boolean(),
        (kind, litres, seats, limitM, isMoment) => {
          const loading: LoadingCase = {
            ...rightFirst,
            loads: [load('left', 'a', seats[0]), load('right', 'b', seats[1])],
            fuel: [exactly('lw', litres[0]), exactly('rw', litres[1])],
            burn: {
              ...{ kind, tankIds: ['lw', 'rw'], returnLine: null },
              everyMin: kind === 'alternate' ? 20 : null,
            },
          };
          const scale = isMoment ? 450 : 1;
          const plane: LoadingAeroplane = {
            ...wingTanks,
            lateral: { across: isMoment ? 'moment' : 'arm', left: -limitM * scale, right: limitM * scale },
          };
          const found = assessLoading(plane, loading);
          const totalL = litres[0] + litres[1];
          for (const [side, sense] of [
            ['left', -1],
            ['right', 1],
          ] as const) {
            const margin = found.margins.find(({ limit }) => limit.kind === side);
            let least = Infinity;
            for (let i = 0; i <= 400; i++) {
              const burnedL = 2 + ((totalL - 2) * i) / 400;
              const { massKg, lateralKgM } = sampled(plane, loading, burnedL);
              const leftM = isMoment
                ? (limitM * scale - sense * lateralKgM) / massKg
                : limitM - (sense * lateralKgM) / massKg;
              least = Math.min(least, leftM);
              const isSaid = margin?.outside.some(
                ({ fromL, toL }) => burnedL >= fromL - 1e-9 && burnedL <= toL + 1e-9,
              );
              if (Math.abs(leftM) > 1e-8) expect(isSaid).toBe(leftM < 0);
            }
            expect(margin?.margin).toBeLessThanOrEqual(least + 1e-9);
            // A quarter of a litre at 1.6 m moves the CG by less than 1 mm.
            expect(margin?.margin).toBeGreaterThan(least - 1e-3);
          }
        },
      ),
      { numRuns: 150, seed: 7 },
    );
  });
});

describe('asked backwards', () => {
  const together: LoadingCase = { ...rightFirst, burn: { ...rightFirst.burn, kind: 'together' } };
  const asked = { aeroplane: wingTanks, loading: together, reserveS: 0 };

  test('the heaviest on the left alone is where the lateral limit is met with the fuel exhausted', () => {
    // (1.28 - 0.28 x) / (320 + x) = -0.09, or 30.08 = 0.19 x: lightest is worst, for the fuel lies evenly.
    const [range] = loadRanges(asked, 0);
    expect(range?.to).toBeCloseTo(30.08 / 0.19, 6);
  });

  test('how much of a heavy load to move across is solved for', () => {
    const heavy = { ...asked, loading: { ...together, loads: [load('left', 'Crate', 200)] } };
    const [range] = moveRanges(heavy, 0, { stationId: 'right', armM: null });
    // (1.28 - 0.28 (200 - x) + 0.28 x) / 520 = -0.09
    expect(range?.from).toBeCloseTo((0.28 * 200 - 1.28 - 0.09 * 520) / 0.56, 6);
  });
});

describe('the probability counts the lateral limits', () => {
  const draws = normalDraws(2, 4096, 3);

  test('exactly, where one mass alone is in doubt', () => {
    const doubtful = { ...rightFirst, loads: [load('left', 'Mara', 150, 6)] };
    const together = { ...doubtful, burn: { ...rightFirst.burn, kind: 'together' as const } };
    const model = loadingModel(wingTanks, together);
    // Inside up to 30.08 / 0.19 kg, see above; too heavy to take off is far away.
    const { insideProb } = insideOdds(model, draws);
    expect(insideProb).toBeCloseTo(normalCdf((30.08 / 0.19 - 150) / 6), 2);
    const result = assessLoading(wingTanks, together);
    const decides = mostDoubtful(model, result.margins);
    expect(decides?.limit.kind).toBe('left');
    expect(decides === null ? [] : doubtShares(model, decides).map(({ name }) => name)).toEqual(['Mara']);
  });

  test('together with the aft limit: by flights drawn the plainest way', { timeout: 30_000 }, () => {
    const spread: LoadingAeroplane = {
      ...wingTanks,
      empty: { ...wingTanks.empty, massSdKg: 2, armSdM: 0.006, lateralArmSdM: 0.006 },
      envelopes: wingTanks.envelopes.map((e) => ({
        ...e,
        vertices: e.vertices.map((v) => ({ ...v, across: v.across > 2 ? 1.847 : v.across })),
      })),
      lateral: { across: 'arm', left: -0.08, right: 0.05 },
    };
    const loading: LoadingCase = {
      ...rightFirst,
      loads: [load('left', 'Mara', 118, 8), load('bag', 'Bag', 14, 5)],
      burn: { ...rightFirst.burn, kind: 'together' },
      flight: { ...rightFirst.flight, taxiL: 0 },
    };
    const random = seededNormals(77);
    const about = (mean: number, sd: number) => mean + sd * random.normal();
    let inside = 0;
    const count = 400_000;
    for (let i = 0; i < count; i++) {
      const [emptyKg, armM, besideM] = [about(320, 2), about(1.8, 0.006), about(0.004, 0.006)];
      const [maraKg, bagKg] = [about(118, 8), about(14, 5)];
      const solidKg = emptyKg + maraKg + bagKg;
      const kgM = emptyKg * armM + maraKg * 1.9 + bagKg * 2.4;
      const lateralKgM = emptyKg * besideM - maraKg * 0.28;
      // Fuel lies evenly: full and empty are the two ends of everything.
      const ends = [0, 57.6].every((fuelKg) => {
        const massKg = solidKg + fuelKg;
        const armAll = (kgM + fuelKg * 1.85) / massKg;
        const beside = lateralKgM / massKg;
        return armAll <= 1.847 && armAll >= 1.6 && beside >= -0.08 && beside <= 0.05 && massKg <= 650;
      });
      if (ends) inside++;
    }
    const drawn = inside / count;
    expect(drawn).toBeGreaterThan(0.2);
    expect(drawn).toBeLessThan(0.8);
    const model = loadingModel(spread, loading);
    const found = insideOdds(model, normalDraws(dimensionsOf(model), 16_384, 5));
    expect(Math.abs(found.insideProb - drawn)).toBeLessThan(4 * found.errorProb + 0.005);
    // A notch in the envelope, far away, sends the same question the other way.
    const notched: LoadingAeroplane = {
      ...spread,
      envelopes: spread.envelopes.map((e) => ({
        ...e,
        vertices: [
          { across: 1.6, massKg: 300 },
          { across: 1.6, massKg: 650 },
          { across: 1.62, massKg: 650 },
          { across: 1.63, massKg: 640 },
          { across: 1.64, massKg: 650 },
          { across: 1.847, massKg: 650 },
          { across: 1.847, massKg: 300 },
        ],
      })),
    };
    const other = insideOdds(loadingModel(notched, loading), normalDraws(2, 16_384, 5));
    expect(Math.abs(other.insideProb - drawn)).toBeLessThan(4 * other.errorProb + 0.005);
  });
});

describe('what has no lateral arm', () => {
  const without = (change: Partial<LoadingAeroplane>) => () =>
    assessLoading({ ...wingTanks, ...change }, rightFirst);

  test('is named and refused, never taken to lie in the middle', () => {
    const { stations, tanks, empty } = wingTanks;
    const bareOf = <T extends { id: string }>(rows: readonly T[], id: string) =>
      rows.map((row) => (row.id === id ? { ...row, lateralArmM: null } : row));
    expect(without({ stations: bareOf(stations, 'left') })).toThrow('stations.left.lateralArmM');
    expect(without({ tanks: bareOf(tanks, 'rw') })).toThrow('tanks.rw.lateralArmM');
    expect(without({ empty: { ...empty, lateralArmM: null } })).toThrow('empty.lateralArmM');
    expect(without({ empty: { ...empty, oilIncluded: false }, oil: { massKg: 3, armM: 1 } })).toThrow(
      'oil.lateralArmM',
    );
    // Nobody sits there.
    expect(without({ stations: bareOf(stations, 'right') })).not.toThrow();
    // The manual gives no lateral arms: nothing is asked.
    expect(without({ stations: bareOf(stations, 'left'), lateral: null })).not.toThrow();
  });
});
