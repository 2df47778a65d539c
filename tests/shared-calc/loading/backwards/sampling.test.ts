import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { LoadingAeroplane } from '../../../../shared-calc/loading/aeroplane.ts';
import type { LoadingCase } from '../../../../shared-calc/loading/case.ts';
import { fuelRanges, longestFlight, withFuel } from '../../../../shared-calc/loading/backwards/fuels.ts';
import { keptBy, type Asked } from '../../../../shared-calc/loading/backwards/kept.ts';
import { landingRanges } from '../../../../shared-calc/loading/backwards/landings.ts';
import { loadRanges, withMass } from '../../../../shared-calc/loading/backwards/loads.ts';
import { moveRanges, withMoved } from '../../../../shared-calc/loading/backwards/moves.ts';
import type { NumberRange } from '../../../../shared-calc/numeric/ranges-not-negative.ts';
import { exactly, load, twoSeater } from '../example.ts';
import { sampledDepth } from './sampled.ts';

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });

/** Two or four tanks far apart, an envelope that leans, a place behind the seats: inside and outside by turns. */
const flights = fc
  .record({
    tankArms: fc.oneof(
      fc.tuple(between(1.4, 1.6), between(2.1, 2.4)),
      fc.tuple(between(1.4, 1.7), between(2.0, 2.4), between(1.6, 2.0), between(2.1, 2.5)),
    ),
    table: between(-0.15, 0.15),
    litres: fc.array(between(8, 30), { minLength: 4, maxLength: 4 }),
    seats: fc.tuple(between(60, 100), between(50, 100), between(0, 18)),
    kind: fc.constantFrom('sequence', 'together', 'alternate'),
    across: fc.constantFrom('arm', 'moment', 'mac'),
    forward: between(1.74, 1.79),
    slope: between(0, 0.03),
    aft: between(1.86, 1.91),
    lean: between(-0.02, 0.02),
  })
  .map(({ tankArms, table, litres, seats, kind, across, forward, slope, aft, lean }): Asked => {
    const corners = [
      [forward, 380],
      [forward, 450],
      [forward + slope, 610],
      [aft + lean, 610],
      [aft, 380],
    ] as const;
    const vertices = corners.map(([armM, massKg]) => ({
      across: across === 'arm' ? armM : across === 'moment' ? armM * massKg : ((armM - 1.518) / 1.24) * 100,
      massKg,
    }));
    const aeroplane: LoadingAeroplane = {
      ...twoSeater,
      envelopes: [{ id: 'e', name: 'e', phase: 'flight', category: '', across, vertices }],
      maxMasses: { rampKg: null, takeOffKg: 600, landingKg: 580, zeroFuelKg: null },
      tanks: tankArms.map((armM, i) => ({
        id: `t${String(i)}`,
        name: `tank ${String(i)}`,
        capacityL: 45,
        unusableL: 0,
        densityKgPerL: 0.72,
        side: 'centre',
        arm:
          i === 1
            ? {
                kind: 'armTable',
                counts: 'usable',
                knots: [
                  { volumeL: 0, armM },
                  { volumeL: 15, armM: armM + table },
                  { volumeL: 45, armM: armM - table },
                ],
              }
            : { kind: 'fixed', armM },
      })),
    };
    const loading: LoadingCase = {
      category: '',
      loads: [load('left', 'a', seats[0]), load('right', 'b', seats[1]), load('bag', 'c', seats[2])],
      fuel: tankArms.map((_, i) => exactly(`t${String(i)}`, litres[i] ?? 10)),
      burn: {
        kind,
        tankIds: tankArms.map((_, i) => `t${String(i)}`),
        everyMin: kind === 'alternate' ? 25 : null,
        returnLine: null,
      },
      flight: { taxiL: 1, climbL: 0, climbMin: 0, cruiseLPerH: 18, landingAfterS: 1800 },
    };
    return { aeroplane, loading, reserveS: 900 };
  });

/** Values at which samples and answer may differ: a flight looked at in 240 places misses up to this depth, m. */
const UNSEEN_M = 4e-4;

/**
 * Hold ranges against many values looked at one by one. The answer may know of a breach between two samples; it may
 * never keep what a sample breaks, nor leave out what is clearly inside.
 */
function compare(ranges: readonly NumberRange[], from: number, to: number, at: (x: number) => Asked): void {
  for (let i = 0; i <= 60; i++) {
    const x = from + ((to - from) * i) / 60;
    const { aeroplane, loading, reserveS } = at(x);
    const totalL = loading.fuel.reduce((sum, { bestL }) => sum + bestL, 0);
    const flight = loading.flight;
    const lastsS = ((totalL - flight.taxiL) / flight.cruiseLPerH) * 3600;
    const reserveLeftS = lastsS - reserveS - (flight.landingAfterS ?? 0);
    const kept = ranges.some((range) => x >= range.from - 1e-9 && x <= range.to + 1e-9);
    if (reserveLeftS < -1e-3) {
      expect(kept).toBe(false);
      continue;
    }
    const depth = sampledDepth(aeroplane, loading);
    if (depth < -1e-8) expect(kept).toBe(false);
    if (depth > UNSEEN_M && reserveLeftS > 1e-3) expect(kept).toBe(true);
  }
  // Each end is inside by the very verdict, and a millionth of the way beyond it is not.
  const beyond = 1e-6 * (to - from);
  for (const range of ranges) {
    expect(keptBy(at(range.from)).all).toBe(true);
    expect(keptBy(at(range.to)).all).toBe(true);
    if (range.from > from + beyond) expect(keptBy(at(range.from - beyond)).all).toBe(false);
    if (range.to < to - beyond) expect(keptBy(at(range.to + beyond)).all).toBe(false);
  }
}

test('the loads that keep a flight inside are those of a dense look, for two and four tanks in any order', () => {
  fc.assert(
    fc.property(flights, fc.integer({ min: 0, max: 2 }), (asked, index) => {
      const mostKg = index === 2 ? 20 : 110;
      compare(loadRanges(asked, index), 0, mostKg, (x) => withMass(asked, index, x));
    }),
    { numRuns: 60, seed: 21 },
  );
});

test('the fuel quantities that keep a flight inside are those of a dense look, in one tank or shared', () => {
  fc.assert(
    fc.property(flights, fc.boolean(), (asked, isShared) => {
      const count = asked.aeroplane.tanks.length;
      const parts = asked.aeroplane.tanks.map((_, i) => (isShared ? 1 / count : i === 1 ? 1 : 0));
      const mostL = isShared ? 45 * count : 45;
      compare(fuelRanges(asked, parts), 0, mostL, (x) => withFuel(asked, parts, x));
    }),
    { numRuns: 60, seed: 22 },
  );
});

test('what may be moved between stations is that of a dense look', () => {
  fc.assert(
    fc.property(flights, (asked) => {
      const heldKg = asked.loading.loads[1]?.massKg ?? 0;
      const place = { stationId: 'bag', armM: null };
      compare(moveRanges(asked, 1, place), 0, heldKg, (x) => withMoved(asked, 1, place, x));
    }),
    { numRuns: 60, seed: 23 },
  );
});

test('no flight of a dense look is longer than the longest, and the longest is inside', () => {
  fc.assert(
    fc.property(flights, (asked) => {
      const count = asked.aeroplane.tanks.length;
      const parts = asked.aeroplane.tanks.map(() => 1 / count);
      const found = longestFlight(asked, parts);
      const flownFor = (litres: number): Asked => {
        const landingAfterS = ((litres - 1) / 18) * 3600 - 900;
        const filled = withFuel(asked, parts, litres);
        const flight = { ...filled.loading.flight, landingAfterS };
        return { ...filled, loading: { ...filled.loading, flight } };
      };
      for (let i = 0; i <= 60; i++) {
        const litres = (45 * count * i) / 60;
        if ((litres - 1) / 18 < 0.25) continue;
        const { aeroplane, loading } = flownFor(litres);
        if (sampledDepth(aeroplane, loading) <= UNSEEN_M) continue;
        // Longer than this one, or it.
        expect(found?.litres ?? 0).toBeGreaterThanOrEqual(litres - 1e-6);
      }
      if (found === null) return;
      expect(keptBy(flownFor(found.litres - 1e-9)).all).toBe(true);
      expect(found.landByS).toBeCloseTo(((found.litres - 1) / 18) * 3600 - 900, 3);
    }),
    { numRuns: 40, seed: 24 },
  );
});

test('the times to land within the landing limits are from when the mass has fallen to it until the reserve', () => {
  fc.assert(
    fc.property(flights, (asked) => {
      const ranges = landingRanges(asked);
      const { loads, fuel } = asked.loading;
      const totalL = fuel.reduce((sum, { bestL }) => sum + bestL, 0);
      const emptyKg = 318 + loads.reduce((sum, { massKg }) => sum + massKg, 0);
      // 580 kg is met with so many litres left; all tanks hold fuel of one density.
      const leftL = (580 - emptyKg) / 0.72;
      const fromS = Math.max(0, ((totalL - 1 - leftL) / 18) * 3600);
      const toS = ((totalL - 1) / 18) * 3600 - 900;
      if (fromS > toS + 1) expect(ranges).toEqual([]);
      else if (fromS < toS - 1) {
        expect(ranges).toHaveLength(1);
        expect(ranges[0]?.from).toBeCloseTo(fromS, 3);
        expect(ranges[0]?.to).toBeCloseTo(toS, 3);
      }
    }),
    { numRuns: 60, seed: 25 },
  );
});
