import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { Envelope, LoadingAeroplane, Tank } from '../../../shared-calc/loading/aeroplane.ts';
import { assessLoading } from '../../../shared-calc/loading/assess.ts';
import type { LoadingCase } from '../../../shared-calc/loading/case.ts';
import { exactly, load, twoSeater } from './example.ts';
import { marginsBySlice, sampleAfter } from './oracle.ts';

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });

/** A convex envelope round the likely CG, in arm, moment or percent, with a sloping forward limit. */
const envelopes = fc
  .record({
    across: fc.constantFrom('arm', 'moment', 'mac'),
    forward: between(1.7, 1.78),
    slope: between(0, 0.03),
    aft: between(1.84, 1.92),
    lean: between(-0.02, 0.02),
    top: between(520, 640),
  })
  .map(({ across, forward, slope, aft, lean, top }): Envelope => {
    const corners = [
      [forward, 380],
      [forward, 450],
      [forward + slope, top],
      [aft + lean, top],
      [aft, 380],
    ] as const;
    const vertices = corners.map(([armM, massKg]) => ({
      across: across === 'arm' ? armM : across === 'moment' ? armM * massKg : ((armM - 1.518) / 1.24) * 100,
      massKg,
    }));
    return { id: 'e', name: 'e', phase: 'flight', category: '', across, vertices };
  });

const tankArms: fc.Arbitrary<Tank['arm']> = fc.oneof(
  between(1.3, 2.4).map((armM) => ({ kind: 'fixed' as const, armM })),
  fc.tuple(between(1.3, 2.4), between(-0.3, 0.3), between(-0.3, 0.3)).map(([a, b, c]) => ({
    kind: 'armTable' as const,
    counts: 'usable' as const,
    knots: [
      { volumeL: 0, armM: a },
      { volumeL: 12, armM: a + b },
      { volumeL: 50, armM: a + b + c },
    ],
  })),
  fc.tuple(between(1.3, 2.4), between(-3, 3)).map(([a, b]) => ({
    kind: 'momentTable' as const,
    counts: 'usable' as const,
    tableDensityKgPerL: 0.7,
    knots: [
      { volumeL: 20, momentKgM: a * 0.7 * 20 },
      { volumeL: 50, momentKgM: a * 0.7 * 50 + b },
    ],
  })),
);

const flights = fc
  .record({
    envelope: envelopes,
    tanks: fc.array(fc.record({ arm: tankArms, litres: between(0.5, 50) }), { minLength: 1, maxLength: 4 }),
    seats: fc.tuple(between(40, 110), between(0, 110), between(0, 30)),
    kind: fc.constantFrom('sequence', 'together', 'alternate'),
    everyMin: fc.integer({ min: 10, max: 60 }),
    taxiL: between(0, 0.5),
  })
  .map(({ envelope, tanks, seats, kind, everyMin, taxiL }) => {
    const aeroplane: LoadingAeroplane = {
      ...twoSeater,
      envelopes: [envelope],
      maxMasses: { rampKg: null, takeOffKg: null, landingKg: null, zeroFuelKg: null },
      tanks: tanks.map(({ arm }, i) => ({
        id: `t${String(i)}`,
        name: `tank ${String(i)}`,
        capacityL: 50,
        unusableL: 0,
        densityKgPerL: 0.72,
        arm,
        side: 'centre',
      })),
    };
    const loading: LoadingCase = {
      category: '',
      loads: [load('left', 'a', seats[0]), load('right', 'b', seats[1]), load('bag', 'c', seats[2])],
      fuel: tanks.map(({ litres }, i) => exactly(`t${String(i)}`, litres)),
      burn: {
        kind,
        tankIds: tanks.map((_, i) => `t${String(i)}`),
        everyMin: kind === 'alternate' ? everyMin : null,
        returnLine: null,
      },
      flight: { taxiL, climbL: 0, climbMin: 0, cruiseLPerH: 18, landingAfterS: null },
    };
    return { aeroplane, loading, envelope };
  });

test('margins and crossings agree with a flight sampled densely the plainest way', () => {
  fc.assert(
    fc.property(flights, ({ aeroplane, loading, envelope }) => {
      const result = assessLoading(aeroplane, loading);
      const totalL = loading.fuel.reduce((sum, f) => sum + f.bestL, 0);
      const samples = Array.from({ length: 401 }, (_, i) => {
        const burnedL = loading.flight.taxiL + ((totalL - loading.flight.taxiL) * i) / 400;
        return { burnedL, ...marginsBySlice(envelope, aeroplane, sampleAfter(aeroplane, loading, burnedL)) };
      });
      for (const [kind, name] of [
        ['forward', 'forwardM'],
        ['aft', 'aftM'],
      ] as const) {
        const found = result.margins.find((m) => m.limit.kind === kind);
        if (found === undefined) throw new Error('no margin');
        const sampled = Math.min(...samples.map((s) => s[name]));
        // The solved least is at or below every sample, and no lower than a sample's neighbourhood allows
        // (a quarter of a litre moves the CG by less than 1 mm).
        expect(found.margin).toBeLessThanOrEqual(sampled + 1e-9);
        expect(found.margin).toBeGreaterThan(sampled - 1e-3);
        // None missed, none invented: away from rounding, a sample is outside just where a stretch says so.
        for (const s of samples) {
          const inStretch = found.outside.some(
            ({ fromL, toL }) => s.burnedL >= fromL - 1e-9 && s.burnedL <= toL + 1e-9,
          );
          if (s[name] < -1e-8) expect(inStretch).toBe(true);
          if (s[name] > 1e-8) expect(inStretch).toBe(false);
        }
        // Every crossing lies on the limit.
        for (const { fromL, toL } of found.outside) {
          for (const crossingL of [fromL, toL]) {
            if (crossingL < loading.flight.taxiL + 1e-9 || crossingL > totalL - 1e-5) continue;
            const there = marginsBySlice(envelope, aeroplane, sampleAfter(aeroplane, loading, crossingL));
            expect(Math.abs(there[name])).toBeLessThan(1e-9);
          }
        }
      }
    }),
    { numRuns: 300, seed: 4 },
  );
});

test('the datum may stand anywhere: no margin changes when every arm is moved by the same distance', () => {
  fc.assert(
    fc.property(flights, between(-5, 5), ({ aeroplane, loading }, shiftM) => {
      const moved = movedDatum(aeroplane, shiftM);
      const here = assessLoading(aeroplane, loading);
      const there = assessLoading(moved, loading);
      there.margins.forEach((margin, i) => {
        // Arms up to 7 m and 640 kg: sums lose some 1e-15 of 4,500 kg m.
        expect(Math.abs(margin.margin - (here.margins[i]?.margin ?? NaN))).toBeLessThan(1e-11);
      });
    }),
    { numRuns: 200, seed: 5 },
  );
});

/** The same aeroplane with its datum `shiftM` farther ahead. */
function movedDatum(aeroplane: LoadingAeroplane, shiftM: number): LoadingAeroplane {
  const movedArm = (arm: Tank['arm']): Tank['arm'] => {
    if (arm.kind === 'fixed') return { ...arm, armM: arm.armM + shiftM };
    if (arm.kind === 'armTable')
      return { ...arm, knots: arm.knots.map((k) => ({ ...k, armM: k.armM + shiftM })) };
    const { tableDensityKgPerL: density } = arm;
    return {
      ...arm,
      knots: arm.knots.map((k) => ({ ...k, momentKgM: k.momentKgM + density * k.volumeL * shiftM })),
    };
  };
  return {
    ...aeroplane,
    empty: { ...aeroplane.empty, armM: aeroplane.empty.armM + shiftM },
    mac: { leadingEdgeArmM: 1.518 + shiftM, lengthM: 1.24 },
    stations: aeroplane.stations.map((s) =>
      s.arm.kind === 'fixed' ? { ...s, arm: { kind: 'fixed', armM: s.arm.armM + shiftM } } : s,
    ),
    tanks: aeroplane.tanks.map((t) => ({ ...t, arm: movedArm(t.arm) })),
    // Moment of a vertex about the new datum: its edges stay straight, for mass times a constant is added.
    envelopes: aeroplane.envelopes.map((e) => ({
      ...e,
      vertices: e.vertices.map((v) => ({
        ...v,
        across:
          e.across === 'arm'
            ? v.across + shiftM
            : e.across === 'moment'
              ? v.across + shiftM * v.massKg
              : v.across,
      })),
    })),
  };
}
