import { describe, expect, test } from 'vitest';
import { assessModel } from '../../../shared-calc/loading/assess.ts';
import type { LoadingCase, TankFuel } from '../../../shared-calc/loading/case.ts';
import { loadingModel } from '../../../shared-calc/loading/model.ts';
import { dimensionsOf, insideOdds, normalDraws } from '../../../shared-calc/loading/odds.ts';
import { doubtShares, ellipseOf, mostDoubtful, spreadAfterL } from '../../../shared-calc/loading/spread.ts';
import { normalCdf } from '../../../shared-calc/numeric/normal.ts';
import { seededNormals } from '../../../shared-calc/numeric/seeded-normals.ts';
import { load, twoFriends, twoSeater } from './example.ts';

function fuel(tankId: string, lowL: number, bestL: number, highL: number): TankFuel {
  return { tankId, lowL, bestL, highL };
}

/** About even chances: the worst point lies near the aft limit, and both tanks are in doubt. */
const inDoubt: LoadingCase = {
  ...twoFriends,
  loads: [
    load('left', 'Mara', 68, 1, 0.014),
    load('right', 'Jonas', 96, 6, 0.014),
    load('bag', 'Bag', 18, 0.5, 0.06),
  ],
  fuel: [fuel('rear', 31.3, 34.3, 37.5), fuel('front', 40, 42, 43.5)],
};

/**
 * The same flight the plainest way: every mass, arm and volume drawn by itself, and the flight of each draw looked
 * at every quarter of a litre against the printed corners. Knows nothing of the program's curves and crossings.
 */
function plainShareInside(draws: number): number {
  const random = seededNormals(20_261);
  const about = (mean: number, sd: number) => mean + sd * random.normal();
  const skewed = (low: number, best: number, high: number, most: number) => {
    const z = random.normal() / 1.6448536269514722;
    return Math.min(most, Math.max(0, best + z * (z > 0 ? high - best : best - low)));
  };
  let inside = 0;
  for (let draw = 0; draw < draws; draw++) {
    const items = [
      [about(318, 1.5), about(1.776, 0.004)],
      [about(68, 1), about(1.965, 0.014)],
      [about(96, 6), about(1.965, 0.014)],
      [about(18, 0.5), about(2.56, 0.06)],
    ] as const;
    const solidKg = items.reduce((sum, [massKg]) => sum + massKg, 0);
    const solidKgM = items.reduce((sum, [massKg, armM]) => sum + massKg * armM, 0);
    const rearL = skewed(31.3, 34.3, 37.5, 45);
    const frontL = skewed(40, 42, 43.5, 50);
    if (plainFlightInside(solidKg, solidKgM, frontL, rearL)) inside++;
  }
  return inside / draws;
}

function plainFlightInside(solidKg: number, solidKgM: number, frontL: number, rearL: number): boolean {
  // 1.5 L of taxi from the front tank; the envelope holds from take-off on.
  const at = (burnedL: number) => {
    const frontKg = 0.72 * Math.max(0, frontL - burnedL);
    const rearKg = 0.72 * (rearL - Math.max(0, burnedL - frontL));
    const massKg = solidKg + frontKg + rearKg;
    return { massKg, armM: (solidKgM + frontKg * 1.46 + rearKg * 2.25) / massKg };
  };
  const landing = at(1.5 + (11_400 / 3600) * 18);
  if (at(1.5).massKg > 600 || landing.massKg > 570) return false;
  for (let burnedL = 1.5; ; burnedL = Math.min(burnedL + 0.25, frontL + rearL)) {
    const { massKg, armM } = at(burnedL);
    const forwardM = massKg <= 480 ? 1.766 : 1.766 + ((massKg - 480) * (1.802 - 1.766)) / 120;
    if (armM > 1.89 || armM < forwardM || massKg < 390) return false;
    if (burnedL >= frontL + rearL) return true;
    // The CG is furthest aft just when the front tank runs dry.
    if (burnedL < frontL && burnedL + 0.25 > frontL && at(frontL).armM > 1.89) return false;
  }
}

describe('the probability that the whole flight stays inside', () => {
  const model = loadingModel(twoSeater, inDoubt);
  const odds = insideOdds(model, normalDraws(dimensionsOf(model), 4096, 1));

  test('agrees with a million flights drawn and sampled the plainest way', { timeout: 60_000 }, () => {
    const plain = plainShareInside(1_000_000);
    expect(plain).toBeGreaterThan(0.2);
    expect(plain).toBeLessThan(0.9);
    // A million draws are known to 0.0005; the stated error is one standard error; the joint normal of mass and moment
    // (instead of the products of normals) is good to a few thousandths here.
    expect(Math.abs(odds.insideProb - plain)).toBeLessThan(4 * odds.errorProb + 0.004);
  });

  test('states its own error: other draws differ by about as much', () => {
    const others = [11, 22, 33, 44, 55, 66].map(
      (seed) => insideOdds(model, normalDraws(dimensionsOf(model), 4096, seed * 1000)).insideProb,
    );
    expect(odds.errorProb).toBeGreaterThan(0);
    expect(odds.errorProb).toBeLessThan(0.01);
    for (const other of others)
      expect(Math.abs(other - odds.insideProb)).toBeLessThan(6 * odds.errorProb + 1e-3);
  });

  test('is the exact normal probability where one mass is in doubt against one limit', () => {
    const lone = {
      ...twoFriends,
      loads: [load('left', 'Mara', 68), load('right', 'Jonas', 90, 8), load('bag', 'Bag', 15)],
      fuel: [fuel('rear', 34, 34, 34), fuel('front', 48, 48, 48)],
      flight: { ...twoFriends.flight, landingAfterS: null },
    };
    const takeOffKg = 318 + 68 + 90 + 15 + (34 + 48 - 1.5) * 0.72;
    for (const spareKg of [-8, -2, 3, 10]) {
      const plane = {
        ...twoSeater,
        empty: { ...twoSeater.empty, massSdKg: 0, armSdM: 0 },
        envelopes: [],
        maxMasses: { rampKg: null, takeOffKg: takeOffKg + spareKg, landingKg: null, zeroFuelKg: null },
      };
      const one = loadingModel(plane, lone);
      const { insideProb } = insideOdds(one, normalDraws(dimensionsOf(one), 4096, 5));
      // 16 groups of 256 even points: the share is a count of 1/4096 steps, each group off by a point or so.
      expect(Math.abs(insideProb - normalCdf(spareKg / 8))).toBeLessThan(0.005);
    }
  });

  test('is 1 or 0 where nothing is in doubt', () => {
    const sure = (right: number): LoadingCase => ({
      ...twoFriends,
      loads: [load('left', 'Mara', 68), load('right', 'Jonas', right)],
      fuel: [fuel('rear', 30, 30, 30), fuel('front', 30, 30, 30)],
    });
    const plane = { ...twoSeater, empty: { ...twoSeater.empty, massSdKg: 0, armSdM: 0 } };
    const draws = normalDraws(2, 64, 1);
    expect(insideOdds(loadingModel(plane, sure(70)), draws).insideProb).toBe(1);
    expect(
      insideOdds(
        loadingModel({ ...plane, maxMasses: { ...plane.maxMasses, takeOffKg: 480 } }, sure(70)),
        draws,
      ).insideProb,
    ).toBe(0);
  });
});

describe('the doubt of the loaded point', () => {
  const model = loadingModel(twoSeater, inDoubt);
  const result = assessModel(model);

  test('has the mean, spread and correlation of 400,000 points drawn one by one', { timeout: 60_000 }, () => {
    const spread = spreadAfterL(model, result.path, 1.5);
    const random = seededNormals(77);
    const count = 400_000;
    let m = 0;
    let a = 0;
    let mm = 0;
    let aa = 0;
    let ma = 0;
    for (let draw = 0; draw < count; draw++) {
      const tank = (low: number, best: number, high: number) => {
        const z = random.normal() / 1.6448536269514722;
        return best + (z * (high - low)) / 2;
      };
      const items = [
        [318 + 1.5 * random.normal(), 1.776 + 0.004 * random.normal()],
        [68 + random.normal(), 1.965 + 0.014 * random.normal()],
        [96 + 6 * random.normal(), 1.965 + 0.014 * random.normal()],
        [18 + 0.5 * random.normal(), 2.56 + 0.06 * random.normal()],
        [0.72 * tank(31.3, 34.3, 37.5), 2.25],
        [0.72 * (tank(40, 42, 43.5) - 1.5), 1.46],
      ] as const;
      const massKg = items.reduce((sum, [kg]) => sum + kg, 0) - (318 + 68 + 96 + 18);
      const armM = items.reduce((sum, [kg, arm]) => sum + kg * arm, 0) / (massKg + 318 + 68 + 96 + 18) - 1.8;
      m += massKg;
      a += armM;
      mm += massKg ** 2;
      aa += armM ** 2;
      ma += massKg * armM;
    }
    const massSdKg = Math.sqrt(mm / count - (m / count) ** 2);
    const armSdM = Math.sqrt(aa / count - (a / count) ** 2);
    // A standard deviation of 400,000 draws is known to 0.1 %, and first order leaves out a little: 1 % in all.
    expect(spread.massSdKg / massSdKg).toBeCloseTo(1, 2);
    expect(Math.abs(spread.armSdM / armSdM - 1)).toBeLessThan(0.01);
    expect(
      Math.abs(spread.correlation - (ma / count - (m * a) / count ** 2) / (massSdKg * armSdM)),
    ).toBeLessThan(0.01);
  });

  test('is drawn by an ellipse that holds nine in ten of such points', () => {
    const spread = spreadAfterL(model, result.path, 1.5);
    const outline = ellipseOf(spread, 0.9, 400);
    const random = seededNormals(5);
    let held = 0;
    const count = 40_000;
    for (let draw = 0; draw < count; draw++) {
      const u = random.normal();
      const v = random.normal();
      const armM = spread.armM + spread.armSdM * u;
      const massKg =
        spread.massKg +
        spread.massSdKg * (spread.correlation * u + Math.sqrt(1 - spread.correlation ** 2) * v);
      if (within(outline, armM, massKg)) held++;
    }
    // Binomial: 0.0015 for 40,000 draws; three of them.
    expect(Math.abs(held / count - 0.9)).toBeLessThan(0.0045);
  });

  test('is shared out among its inputs, the heaviest doubt first and all of it told', () => {
    const aft = result.margins.find((margin) => margin.limit.id === 'envelope.main.aft');
    if (aft === undefined) throw new Error('no aft limit');
    const shares = doubtShares(model, aft);
    expect(shares.reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(1, 12);
    expect(shares.map(({ share }) => share)).toEqual(shares.map(({ share }) => share).sort((x, y) => y - x));
    // By hand, in kg m where the front tank is empty: Jonas 96 x 0.014 = 1.34 by the seat and 6 x 0.075 = 0.45 by his
    // mass, the empty arm 318 x 0.004 = 1.27, the bag 18 x 0.06 = 1.08, Mara 68 x 0.014 = 0.95.
    expect(shares[0]?.name).toBe('Jonas');
  });
});

describe('the limit that decides the probability', () => {
  test('is the one fewest of its own uncertainties away, not the one of least margin', () => {
    // No fuel left: 318 + 68 + 5 = 391 kg, 1 kg above the envelope's 390, and Mara is known to 4 kg. By her mass the CG
    // moves little: it lies tens of mm inside.
    const light = {
      ...twoFriends,
      loads: [load('left', 'Mara', 68, 4), load('right', 'Bag', 5)],
      fuel: [fuel('rear', 20, 20, 20), fuel('front', 20, 20, 20)],
      flight: { ...twoFriends.flight, landingAfterS: null },
    };
    const plane = { ...twoSeater, empty: { ...twoSeater.empty, massSdKg: 0, armSdM: 0 } };
    const stated = { ...plane, envelopes: plane.envelopes.map((each) => ({ ...each, lowestIsLimit: true })) };
    const model = loadingModel(stated, light);
    const { margins, least } = assessModel(model);
    const decides = mostDoubtful(model, margins);
    expect(decides?.limit.kind).toBe('least');
    expect(decides?.margin).toBeCloseTo(1, 9);
    // 1 kg of the 72 that lie between the empty aeroplane and 390 kg; the CG is a third of the envelope's width inside.
    expect(least?.limit.kind).toBe('least');
    // One normal mass against one limit: 0.25 standard deviations; the CG adds nothing to it.
    const { insideProb } = insideOdds(model, normalDraws(2, 4096, 3));
    expect(Math.abs(insideProb - normalCdf(1 / 4))).toBeLessThan(0.005);
  });

  test('is not the lowest mass at which the manual’s figures end: verdict and odds leave it alone alike', () => {
    const light = {
      ...twoFriends,
      loads: [load('left', 'Mara', 68, 4), load('right', 'Bag', 5)],
      fuel: [fuel('rear', 20, 20, 20), fuel('front', 20, 20, 20)],
      flight: { ...twoFriends.flight, landingAfterS: null },
    };
    const plane = { ...twoSeater, empty: { ...twoSeater.empty, massSdKg: 0, armSdM: 0 } };
    const model = loadingModel(plane, light);
    const { margins, least } = assessModel(model);
    expect(least?.limit.kind).not.toBe('least');
    expect(mostDoubtful(model, margins)?.limit.kind).not.toBe('least');
    expect(insideOdds(model, normalDraws(2, 4096, 3)).insideProb).toBeGreaterThan(0.999);
    // Below it there is no verdict of inside.
    const lighter = { ...light, loads: [load('left', 'Mara', 68, 4)] };
    const below = assessModel(loadingModel(plane, lighter));
    expect(below.inside).toBe(false);
    expect(below.margins.find(({ limit }) => limit.kind === 'least')).toMatchObject({ met: false });
  });

  test('is none where nothing is in doubt', () => {
    const plane = { ...twoSeater, empty: { ...twoSeater.empty, massSdKg: 0, armSdM: 0 } };
    const model = loadingModel(plane, { ...twoFriends, loads: [load('left', 'Mara', 68)] });
    expect(mostDoubtful(model, assessModel(model).margins)).toBeNull();
  });
});

function within(outline: readonly { armM: number; massKg: number }[], armM: number, massKg: number): boolean {
  let inside = false;
  outline.forEach((p, i) => {
    const q = outline[(i + outline.length - 1) % outline.length];
    if (q === undefined || p.massKg > massKg === q.massKg > massKg) return;
    if (armM < ((q.armM - p.armM) * (massKg - p.massKg)) / (q.massKg - p.massKg) + p.armM) inside = !inside;
  });
  return inside;
}
