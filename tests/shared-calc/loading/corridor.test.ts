import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Envelope } from '../../../shared-calc/loading/aeroplane.ts';
import { assessModel } from '../../../shared-calc/loading/assess.ts';
import { corridorOf, narrowRoom } from '../../../shared-calc/loading/corridor.ts';
import { envelopeBands } from '../../../shared-calc/loading/envelope.ts';
import { loadingModel } from '../../../shared-calc/loading/model.ts';
import { insideOdds, normalDraws } from '../../../shared-calc/loading/odds.ts';
import { newPath } from '../../../shared-calc/loading/path.ts';
import { walk } from '../../../shared-calc/loading/walk.ts';
import { normalCdf } from '../../../shared-calc/numeric/normal.ts';
import { exactly, load, twoFriends, twoSeater } from './example.ts';
import { marginsBySlice, sampleAfter } from './oracle.ts';

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });

/** Convex envelopes whose sides lean, so that two of them cross each other somewhere. */
const envelopes = fc
  .record({
    across: fc.constantFrom('arm', 'moment'),
    forward: between(1.72, 1.79),
    slope: between(-0.02, 0.03),
    aft: between(1.85, 1.92),
    lean: between(-0.03, 0.03),
    top: between(560, 640),
  })
  .map(({ across, forward, slope, aft, lean, top }): Omit<Envelope, 'id'> => {
    const corners = [
      [forward, 380],
      [forward + slope, top],
      [aft + lean, top],
      [aft, 380],
    ] as const;
    const vertices = corners.map(([armM, massKg]) => ({
      across: across === 'arm' ? armM : armM * massKg,
      massKg,
    }));
    return { name: 'e', phase: 'flight', category: '', across, vertices };
  });

test('the room of moments in several envelopes is that of a flight sampled densely against each of them', () => {
  fc.assert(
    fc.property(
      fc.array(envelopes, { minLength: 1, maxLength: 3 }),
      between(60, 110),
      between(5, 45),
      between(5, 50),
      (several, rightKg, rearL, frontL) => {
        const printed = several.map((one, i) => ({ ...one, id: `e${String(i)}` }));
        const aeroplane = { ...twoSeater, envelopes: printed };
        const loading = {
          ...twoFriends,
          loads: [load('left', 'a', 70), load('right', 'b', rightKg)],
          fuel: [exactly('rear', rearL), exactly('front', frontL)],
        };
        const model = loadingModel(aeroplane, loading);
        const path = newPath(2);
        walk(path, model.plan, model.tanks, [rearL, frontL], model.solidKg, model.solidKgM);
        const corridor = corridorOf(printed.map((one) => envelopeBands(one, null)));
        if (corridor === null) throw new Error('no corridor');
        const room = { leastKgM: -Infinity, mostKgM: Infinity };
        narrowRoom(path, path.takeOff, path.nodes - 1, corridor, 0, room);
        let least = -Infinity;
        let most = Infinity;
        for (let i = 0; i <= 300; i++) {
          const burnedL = 1.5 + ((rearL + frontL - 1.5) * i) / 300;
          const at = sampleAfter(aeroplane, loading, burnedL);
          // Beyond an envelope its mass limit speaks; here the flights stay within all of them.
          if (printed.some((one) => at.massKg > Math.max(...one.vertices.map((v) => v.massKg)))) return;
          for (const one of printed) {
            const { forwardM, aftM } = marginsBySlice(one, aeroplane, at);
            least = Math.max(least, -forwardM * at.massKg);
            most = Math.min(most, aftM * at.massKg);
          }
        }
        // Solved, so at least as narrow as any sample; a third of a litre between samples is worth below 0.2 kg m.
        expect(room.leastKgM).toBeGreaterThanOrEqual(least - 1e-9);
        expect(room.mostKgM).toBeLessThanOrEqual(most + 1e-9);
        if (room.leastKgM <= room.mostKgM) {
          expect(room.leastKgM).toBeLessThan(least + 0.2);
          expect(room.mostKgM).toBeGreaterThan(most - 0.2);
        }
      },
    ),
    { numRuns: 300, seed: 9 },
  );
});

describe('one half-plane has its exact normal probability', () => {
  const noFuel = {
    ...twoFriends,
    fuel: [exactly('rear', 0), exactly('front', 0)],
    flight: { ...twoFriends.flight, taxiL: 0, landingAfterS: null },
  };
  const sure = { ...twoSeater, empty: { ...twoSeater.empty, massSdKg: 0, armSdM: 0 } };

  test('where the place of one load is in doubt against the aft limit', () => {
    const loads = [load('left', 'a', 80), load('right', 'b', 80, 0, 0.05), load('bag', 'c', 18)];
    const model = loadingModel(sure, { ...noFuel, loads });
    const massKg = 318 + 178;
    const momentKgM = 318 * 1.776 + 160 * 1.965 + 18 * 2.56;
    const expected = normalCdf((1.89 * massKg - momentKgM) / (80 * 0.05));
    expect(expected).toBeGreaterThan(0.5);
    // The forward limit is thirty standard deviations away.
    expect(insideOdds(model, normalDraws(2, 64, 3)).insideProb).toBeCloseTo(expected, 12);
  });

  test('where mass and place of several loads are in doubt against the aft limit', () => {
    const loads = [
      load('left', 'a', 80, 3, 0.02),
      load('right', 'b', 80, 6, 0.05),
      load('bag', 'c', 18, 1, 0.05),
    ];
    const model = loadingModel(sure, { ...noFuel, loads });
    // Distance to the limit: sum of m (1.89 - a); its variance by the exact product of independent factors.
    let mean = 318 * (1.89 - 1.776);
    let variance = 0;
    for (const [m, a, sm, sa] of [
      [80, 1.965, 3, 0.02],
      [80, 1.965, 6, 0.05],
      [18, 2.56, 1, 0.05],
    ] as const) {
      mean += m * (1.89 - a);
      variance += (sm * (1.89 - a)) ** 2 + (m * sa) ** 2 + (sm * sa) ** 2;
    }
    const { insideProb, errorProb } = insideOdds(model, normalDraws(2, 4096, 3));
    // Mass is drawn evenly and the moment solved for: far below the 0.008 of 4,096 plain draws.
    expect(Math.abs(insideProb - normalCdf(mean / Math.sqrt(variance)))).toBeLessThan(2e-5);
    expect(errorProb).toBeLessThan(2e-5);
  });
});

test('a notched envelope is drawn instead of solved, and gives nearly what the same one without its notch gives', () => {
  const [envelope] = twoSeater.envelopes;
  if (envelope === undefined) throw new Error('no envelope');
  const corner = [
    { across: 1.89, massKg: 390 },
    { across: 1.82, massKg: 390 },
    // A notch of a few millimetres at the bottom, where no flight comes.
    { across: 1.82, massKg: 390.5 },
    { across: 1.815, massKg: 390 },
  ];
  const notched = { ...envelope, vertices: [...envelope.vertices.slice(0, 4), ...corner] };
  const bands = envelopeBands(notched, null);
  expect(bands.bands.some((band) => band.spans.length > 1)).toBe(true);
  expect(corridorOf([bands])).toBe(null);
  const loads = [
    load('left', 'a', 68, 1, 0.014),
    load('right', 'b', 92, 6, 0.014),
    load('bag', 'c', 18, 0.5, 0.06),
  ];
  const odds = (envelopes: Envelope[]) => {
    const model = loadingModel({ ...twoSeater, envelopes }, { ...twoFriends, loads });
    return insideOdds(model, normalDraws(2, 16_384, 8));
  };
  const drawn = odds([notched]);
  const solved = odds([envelope]);
  expect(drawn.insideProb).toBeGreaterThan(0.3);
  expect(drawn.insideProb).toBeLessThan(0.95);
  expect(Math.abs(drawn.insideProb - solved.insideProb)).toBeLessThan(
    4 * drawn.errorProb + 4 * solved.errorProb,
  );
});

test('what stated figures break is unlikely, what they keep by far is all but sure', () => {
  const model = loadingModel(twoSeater, twoFriends);
  const least = assessModel(model).least?.margin ?? 0;
  const { insideProb } = insideOdds(model, normalDraws(2, 4096, 1));
  expect(least).toBeGreaterThan(0.01);
  expect(insideProb).toBeGreaterThan(0.95);
});
