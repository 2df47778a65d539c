import { describe, expect, test } from 'vitest';
import { assessLoading } from '../../../shared-calc/loading/assess.ts';
import { loadingVerdict } from '../../../shared-calc/wording/loading.ts';
import { instantText } from '../../../shared-calc/wording/loading-parts.ts';
import { textOf } from '../../../shared-calc/wording/parts.ts';
import { exactly, load, outsideInBetween, twoFriends, twoSeater } from '../loading/example.ts';

const METRIC = { mass: 'kg', arm: 'mm' } as const;

/** Sentences with ordinary spaces, as one would type them. */
function said(
  loading: typeof twoFriends,
  plane = twoSeater,
  units: { mass: 'kg' | 'lb'; arm: 'mm' | 'in' } = METRIC,
): string {
  return typed(textOf(loadingVerdict(assessLoading(plane, loading), units).sentences));
}

function typed(text: string): string {
  return text.replace(/[\u00a0\u2009]/g, ' ').replace(/\u2060/g, '');
}

// The first two are the design's own sentences (its look, corrections), word for word.
test('inside: the least margin, to which limit, when, and at what event', () => {
  expect(said(twoFriends)).toBe(
    'Inside all limits from ramp until usable fuel is exhausted. Least margin 11 mm to the aft limit, 2 h 35 min after take-off, when the front tank is empty.',
  );
});

test('outside in between only: by how much, from when to when, and what two points would not show', () => {
  expect(said(outsideInBetween)).toBe(
    'Outside the aft limit by up to 4 mm, from 2 h 16 min to 2 h 58 min after take-off. Do not depart loaded like this. ' +
      'Checking take-off and landing alone would not show it. Too heavy to land (570 kg) until 28 min after take-off.',
  );
});

test('one part is strong: the margin inside, the broken limit outside', () => {
  for (const [loading, text] of [
    [twoFriends, '11 mm'],
    [outsideInBetween, 'Outside the aft limit'],
  ] as const) {
    const parts = loadingVerdict(assessLoading(twoSeater, loading), METRIC).sentences.flat();
    expect(parts.filter((part) => part.strong).map((part) => typed(part.text))).toEqual([text]);
  }
});

test('a list of contents has the answer in three words', () => {
  expect(typed(loadingVerdict(assessLoading(twoSeater, twoFriends), METRIC).inShort)).toBe('inside by 11 mm');
  expect(typed(loadingVerdict(assessLoading(twoSeater, outsideInBetween), METRIC).inShort)).toBe(
    'outside by 4 mm',
  );
});

test('every limit that is broken is said', () => {
  const heavy = {
    ...twoFriends,
    loads: [load('left', 'A', 112), load('right', 'B', 109), load('bag', 'C', 25)],
    fuel: [exactly('rear', 45), exactly('front', 50)],
  };
  const text = said(heavy);
  expect(text).toContain('Outside the aft limit by up to ');
  // 318 + 246 + 0.72 (95 - 1.5) = 631.32
  expect(text).toContain('Too heavy to take off (600 kg) by 31.4 kg.');
  // 318 + 246 + 0.72 (95 - 58.5) = 590.28
  expect(text).toContain('Too heavy to land (570 kg) by 20.3 kg, at the planned landing.');
  expect(text).toContain('Left seat: 112.0 kg, 2.0 kg over the limit of 110 kg.');
  expect(text).toContain('Baggage: 25.0 kg, 5.0 kg over the limit of 20 kg.');
  expect(text).not.toContain('Checking take-off and landing alone');
});

describe('the least margin has its place in words', () => {
  test('at take-off, and pounds and inches where the person reads those', () => {
    const heavier = { ...twoFriends, loads: [load('left', 'A', 105), load('right', 'B', 100)] };
    // 318 + 205 + 59.256 - 1.08 = 581.176; 18.824 kg is 41.49 lb, rounded down.
    expect(said(heavier, twoSeater, { mass: 'lb', arm: 'in' })).toContain(
      'Least margin 41.4 lb to the maximum take-off mass (1322.77 lb), at take-off.',
    );
  });

  test('a margin that rounds to nothing says less than one step', () => {
    const nearly = { ...twoSeater, maxMasses: { ...twoSeater.maxMasses, takeOffKg: 545.2 } };
    // 546.256 - 1.08 = 545.176
    expect(said(twoFriends, nearly)).toContain(
      'Least margin less than 0.1 kg to the maximum take-off mass (545.2 kg)',
    );
  });
});

test('without an envelope there is no verdict on the CG', () => {
  const text = said(twoFriends, { ...twoSeater, envelopes: [] });
  expect(text).toBe('No verdict on the CG: no envelope for the flight has been entered.');
});

test('fuel that may end before the planned landing is said', () => {
  const long = { ...twoFriends, flight: { ...twoFriends.flight, landingAfterS: 5 * 3600 } };
  expect(said(long)).toContain(
    'Fuel may not last: it can be exhausted 4 h 29 min after take-off; landing is planned 5 h after take-off.',
  );
});

test('lighter than the envelope goes is outside, for the manual says nothing there', () => {
  const light = { ...twoFriends, loads: [load('left', 'A', 55)] };
  // 373 kg in the end; 390 when 23.6111 L are left of 82.3: (82.3 - 1.5 - 23.6111) / 18 h = 3.177 h.
  expect(said(light)).toContain(
    'Lighter than the envelope (from 390 kg) by up to 17.0 kg, from 3 h 10 min after take-off until usable fuel is exhausted: the manual gives no limits there.',
  );
});

describe('the first minute of a flight is the take-off, not "0 min after take-off"', () => {
  test('beside the plot', () => {
    expect([0, 59.9, 60, 9_300].map((s) => typed(instantText(s)))).toEqual([
      'at take-off',
      'at take-off',
      '1 min',
      '2 h 35 min',
    ]);
  });

  test('where a limit is left within it, and then nothing is said to hide from a check at take-off', () => {
    // By hand: 1.89 m is met with 1.712 / 0.43 = 3.981 kg = 5.53 L in the front tank; 0.15 L at 18 L/h is half a minute.
    const soon = { ...outsideInBetween, fuel: [exactly('rear', 45), exactly('front', 1.5 + 5.53 + 0.15)] };
    const text = said(soon);
    expect(text).toMatch(/from take-off (to|until) /);
    expect(text).not.toMatch(/\b0 min/);
    expect(text).not.toContain('Checking take-off and landing alone');
  });

  test('where a return line overfills a tank in it', () => {
    // 12 L/h more than the engine burns, into a tank that takes 0.05 L more: a quarter of a minute.
    const returned = {
      ...twoFriends,
      fuel: [exactly('rear', 44.95), exactly('front', 40)],
      flight: { ...twoFriends.flight, taxiL: 0 },
      burn: { ...twoFriends.burn, returnLine: { intoTankId: 'rear', pumpLPerH: 30 } },
    };
    expect(said(returned)).not.toMatch(/\b0 min/);
    // Full from the start it loses fuel from the start: 12 L/h while 30 L/h empty the front tank in 80 min, so that 16 L
    // go overboard.
    expect(said({ ...returned, fuel: [exactly('rear', 45), exactly('front', 40)] })).toContain(
      'The return line fills the rear tank at take-off; from there fuel is lost overboard.',
    );
    expect(said(returned)).toContain('The return line fills the rear tank at take-off; from there');
  });
});
