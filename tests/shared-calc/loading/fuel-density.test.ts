import { describe, expect, test } from 'vitest';
import type { LoadingAeroplane } from '../../../shared-calc/loading/aeroplane.ts';
import { assessLoading } from '../../../shared-calc/loading/assess.ts';
import type { LoadingCase } from '../../../shared-calc/loading/case.ts';
import { loadingModel } from '../../../shared-calc/loading/model.ts';
import { dimensionsOf, insideOdds, normalDraws } from '../../../shared-calc/loading/odds.ts';
import { doubtShares, mostDoubtful, spreadAfterL } from '../../../shared-calc/loading/spread.ts';
import { normalCdf } from '../../../shared-calc/numeric/normal.ts';
import { exactly, load, twoFriends, twoSeater } from './example.ts';

// Expected values are the sums themselves: fuel of a density that is off by so much, in both tanks alike.

const sdKgPerL = 0.02;
const doubtful: LoadingAeroplane = {
  ...twoSeater,
  empty: { ...twoSeater.empty, massSdKg: 0, armSdM: 0 },
  tanks: twoSeater.tanks.map((tank) => ({ ...tank, densitySdKgPerL: sdKgPerL })),
};
const loading: LoadingCase = {
  ...twoFriends,
  loads: [load('left', 'Mara', 68), load('right', 'Jonas', 90), load('bag', 'Bag', 15)],
  fuel: [exactly('rear', 30), exactly('front', 40)],
};
const z95 = 1.6448536269514722;
const solidKg = 318 + 68 + 90 + 15;
const solidKgM = 318 * 1.776 + 158 * 1.965 + 15 * 2.56;

describe('a density in doubt', () => {
  const result = assessLoading(doubtful, loading);

  test('counts heavy against a maximum', () => {
    const most = result.margins.find(({ limit }) => limit.id === 'maxMass.take-off');
    // 1.5 L of taxi are gone.
    expect(most?.margin).toBeCloseTo(600 - solidKg - 68.5 * (0.72 + z95 * sdKgPerL), 9);
  });

  test('counts on either side against the limits of the CG', () => {
    const aft = result.margins.find(({ limit }) => limit.kind === 'aft');
    const armAt = (density: number) => {
      // The front tank has just run dry: worst for the aft limit.
      const fuelKg = 30 * density;
      return (solidKgM + fuelKg * 2.25) / (solidKg + fuelKg);
    };
    const arms = [-z95, 0, z95].map((z) => armAt(0.72 + z * sdKgPerL));
    expect(aft?.margin).toBeCloseTo(1.89 - Math.max(...arms), 12);
  });

  test('shows the best figure in the drawing, and its doubt in the ellipse', () => {
    expect(result.takeOff.massKg).toBeCloseTo(solidKg + 68.5 * 0.72, 9);
    const spread = spreadAfterL(result.model, result.path, 1.5);
    expect(spread.massSdKg).toBeCloseTo(68.5 * sdKgPerL, 9);
    const decides = mostDoubtful(result.model, result.margins);
    expect(decides === null ? [] : doubtShares(result.model, decides)[0]?.kind).toBe('density');
  });

  test('enters the probability: against one maximum the exact normal one', () => {
    const plane = {
      ...doubtful,
      envelopes: [],
      maxMasses: { rampKg: null, takeOffKg: 541, landingKg: null, zeroFuelKg: null },
    };
    const model = loadingModel(plane, loading);
    expect(dimensionsOf(model)).toBe(3);
    const { insideProb } = insideOdds(model, normalDraws(3, 4096, 2));
    expect(insideProb).toBeCloseTo(normalCdf((541 - solidKg - 68.5 * 0.72) / (68.5 * sdKgPerL)), 2);
  });

  test('a sure density is as before', () => {
    const sure = { ...doubtful, tanks: doubtful.tanks.map((tank) => ({ ...tank, densitySdKgPerL: 0 })) };
    const plain = { ...doubtful, tanks: twoSeater.tanks };
    expect(assessLoading(sure, loading).margins).toEqual(assessLoading(plain, loading).margins);
  });
});
