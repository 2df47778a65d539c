import { describe, expect, test } from 'vitest';
import type { LoadingInputs } from '../../../shared-calc/loading/case-of.ts';
import type { InsideOdds } from '../../../shared-calc/loading/odds.ts';
import {
  isAsked,
  oddsSentence,
  timesInThousand,
  tooManyDoubtsSentence,
} from '../../../shared-calc/wording/loading-odds.ts';
import { loadingReview } from '../../../shared-calc/wording/loading-review.ts';
import { exampleAircraft, exampleLoading, examplePerson } from '../../main/example-aircraft.ts';

const UNITS = { mass: 'kg', arm: 'mm' } as const;

interface Doubt {
  takeOffKg: number;
  emptySdKg: number;
  emptyArmSdM: number;
  maraSdKg: number;
  jonasSdKg: number;
  bagSdKg: number;
  frontL: [lowL: number, highL: number];
  known: 'weighed' | 'stated' | 'standard';
  jonasKg: number;
  frontName: string;
}

/** Mara, Jonas and a bag. At take-off 318 + 68 + jonas + 15 + 0.72 (48 + 34.3 - 1.5) = 459.176 + jonas. */
function inputs(given: Partial<Doubt>): LoadingInputs {
  const aircraft = exampleAircraft();
  const loading = exampleLoading();
  const doubt: Doubt = {
    // 5 kg below the maximum with 80 kg of Jonas: nearer, in its share, than any limit of the CG.
    takeOffKg: 544.176,
    emptySdKg: 0,
    emptyArmSdM: 0,
    maraSdKg: 0,
    jonasSdKg: 0,
    bagSdKg: 0,
    frontL: [48, 48],
    known: 'stated',
    jonasKg: 80,
    frontName: 'Front tank',
    ...given,
  };
  const [mara, bag] = loading.items;
  if (mara === undefined || bag?.typed == null) throw new Error('the example has two loads');
  return {
    aircraft: {
      ...aircraft,
      maxMasses: { ...aircraft.maxMasses, takeOffKg: doubt.takeOffKg },
      tanks: aircraft.tanks.map((tank) => (tank.id === 'front' ? { ...tank, name: doubt.frontName } : tank)),
    },
    weighing: {
      id: 'w',
      aircraftId: 'two-seater',
      weighedOn: '2026-03-14',
      how: 'scales',
      emptyMassKg: 318,
      emptyArmM: 1.76,
      massSdKg: doubt.emptySdKg,
      armSdM: doubt.emptyArmSdM,
      unusableFuelIncluded: true,
      oilIncluded: true,
      note: '',
      readings: [],
      withdrawn: false,
    },
    loading: {
      ...loading,
      items: [
        mara,
        { id: 'item-3', stationId: 'right-seat', seatArmM: null, personId: 'jonas', typed: null },
        { ...bag, typed: { ...bag.typed, name: 'Bag, tool roll', sdKg: doubt.bagSdKg } },
      ],
      fuel: [
        { tankId: 'front', lowL: doubt.frontL[0], bestL: 48, highL: doubt.frontL[1] },
        { tankId: 'rear', lowL: 34.3, bestL: 34.3, highL: 34.3 },
      ],
    },
    people: [
      { ...examplePerson('mara', 'Mara', 68), sdKg: doubt.maraSdKg },
      {
        ...examplePerson('jonas', 'Jonas', doubt.jonasKg),
        known: doubt.known,
        sdKg: doubt.jonasSdKg,
      },
    ],
  };
}

const drawn = (insideProb: number, errorProb = 0, drawCount = 4096): InsideOdds => ({
  insideProb,
  errorProb,
  drawCount,
});

function said(given: Partial<Doubt>, odds = drawn(0.9945)): string | null {
  const whole = inputs(given);
  return (
    oddsSentence(loadingReview(whole, UNITS), odds, whole)
      ?.replace(/[\u00a0\u2009]/g, ' ')
      .replace(/\u2060/g, '') ?? null
  );
}

const count = (odds: InsideOdds) =>
  timesInThousand(odds)
    .replace(/[\u00a0\u2009]/g, ' ')
    .replace(/\u2060/g, '');

describe('the count in a thousand', () => {
  test('is rounded down', () => {
    expect(count(drawn(0.9949))).toBe('994 times in 1 000');
    expect(count(drawn(0.994))).toBe('994 times in 1 000');
    expect(count(drawn(0.0019))).toBe('once in 1 000');
  });

  test('gives away twice the error of the draws', () => {
    expect(count(drawn(0.9949, 0.0005))).toBe('993 times in 1 000');
  });

  test('is never the whole thousand: no draw outside leaves 3 in 4,096, and few draws tell less', () => {
    expect(count(drawn(1))).toBe('more than 999 times in 1 000');
    expect(count(drawn(1, 0, 1024))).toBe('997 times in 1 000');
    expect(count(drawn(0.9996, 0.0004))).toBe('998 times in 1 000');
  });

  test('says at most how often where it is next to never', () => {
    expect(count(drawn(0))).toBe('at most once in 1 000');
    expect(count(drawn(0.0008, 0.0004))).toBe('at most 2 times in 1 000');
  });
});

describe('by whose doubt', () => {
  // To a maximum mass the shares are those of the variances: 4^2 and 3^2 of 25.
  test('the two largest shares are named', () => {
    expect(said({ jonasSdKg: 4, emptySdKg: 3 })).toBe(
      'The whole flight stays inside 994 times in 1 000; most of the doubt is Jonas’s stated weight (64 %), then the empty weight (36 %).',
    );
  });

  test('a weight is called as it is known, and a thing of several words takes no possessive', () => {
    expect(said({ jonasSdKg: 3, bagSdKg: 4, known: 'weighed' })).toContain(
      'most of the doubt is the weight of Bag, tool roll (64 %), then Jonas’s weight (36 %).',
    );
    expect(said({ jonasSdKg: 4, known: 'standard' })).toContain(
      'all of the doubt is Jonas’s standard weight.',
    );
  });

  test('many small doubts are not called most of it', () => {
    // Four of 1 kg, and 0.72 (48.5 - 47.5) / 3.29 = 0.219 kg of fuel: 1 / 4.048 each.
    const text = said({ emptySdKg: 1, maraSdKg: 1, jonasSdKg: 1, bagSdKg: 1, frontL: [47.5, 48.5] });
    expect(text).toContain('the largest doubts are ');
    expect(text?.match(/25 %/g)).toHaveLength(2);
  });

  test('fuel and the empty arm have their own names', () => {
    expect(said({ frontL: [46, 48.5] })).toContain('all of the doubt is the fuel in Front tank.');
    expect(said({ emptyArmSdM: 0.004, takeOffKg: 600 })).toContain('all of the doubt is the empty CG.');
  });
});

describe('nothing is said', () => {
  test('where no input is in doubt', () => {
    expect(said({})).toBeNull();
  });

  test('where the verdict is broken by what the draws do not ask', () => {
    // Right seat: 115 of 110 kg.
    const heavy = inputs({ jonasKg: 115, jonasSdKg: 3, takeOffKg: 700 });
    expect(isAsked(loadingReview(heavy, UNITS))).toBe(false);
    expect(said({ jonasKg: 115, jonasSdKg: 3, takeOffKg: 700 })).toBeNull();
  });

  test('where there is no verdict', () => {
    const whole = { ...inputs({ jonasSdKg: 3 }), weighing: null };
    const review = loadingReview(whole, UNITS);
    expect(review.verdict).toBe('not checked');
    expect(oddsSentence(review, drawn(0.9), whole)).toBeNull();
  });
});

test('outside by the stated figures the count is said all the same', () => {
  const over = inputs({ jonasKg: 86, jonasSdKg: 6 });
  expect(loadingReview(over, UNITS).verdict).toBe('outside');
  expect(said({ jonasKg: 86, jonasSdKg: 6 }, drawn(0.43, 0.001))).toMatch(
    /^The whole flight stays inside 428 times/,
  );
});

test('where more tanks are in doubt than can be drawn, that is said instead of nothing', () => {
  expect(tooManyDoubtsSentence(15)).toBe(
    'How sure that is cannot be said: the fuel of 15 tanks is in doubt, and at most 14 can be. The verdict takes the worst of each.',
  );
});
