import { expect, test } from 'vitest';
import { checkResiduals } from '../../../shared-calc/fuel/checks/check-residuals.ts';
import type { RefillCheckRecord } from '../../../shared-calc/fuel/checks/check-record.ts';
import { judgeChecks } from '../../../shared-calc/fuel/checks/judge-checks.ts';
import { checkAnswer, learnedFlowSentence, zeroSentence } from '../../../shared-calc/wording/fuel-checks.ts';
import { textOf } from '../../../shared-calc/wording/parts.ts';
import { exampleCheck, twoStraightCurves } from '../fuel/checks/example-checks.ts';

const scale = { kind: 'fractions', denominator: 8 } as const;

function answer(checks: RefillCheckRecord[]): string {
  const set = checkResiduals(twoStraightCurves, checks, [], [], 'level flight');
  const judgement = judgeChecks(
    set.residualsL,
    set.covarianceL2,
    set.residualsL.map((_, day) => day),
  );
  return textOf([
    checkAnswer({ set, judgement, scale, units: { volume: 'L' }, dayText: (day) => `day ${day}` }),
  ]).replaceAll('\u00a0', ' ');
}

test('checks that agree are counted, with the day of the last', () => {
  expect(answer([])).toBe('No check can be held against the curve yet.');
  expect(answer([exampleCheck()])).toBe('The one check agrees with the curve, the last of day 2026-09-12.');
  expect(answer([exampleCheck(), exampleCheck({ id: 'b', checkedOn: '2026-10-01' })])).toBe(
    'All 2 checks agree with the curve, the last of day 2026-10-01.',
  );
});

test('a gauge that showed too little burned is said to promise too much lower down, and what to do', () => {
  // Predicted 25 L. By hand the standard deviation is root(2 + 2 x 50^2 x (0.125^2/12 + 0.005^2) + 0.5 + 0.0025 +
  // 0.0256 + 0.0625), that is 3.058 L: 40 L bought is 15 L or 4.9 of them away.
  const said = answer([exampleCheck({ refillL: 40 })]);
  expect(said).toBe(
    'The gauge no longer agrees: on day 2026-09-12 it showed 15.0 L less burned than was bought, 4.9 times what the ' +
      'uncertainties explain. Lower down there may be less than the card says. Repeat the fill test between 1/4 and 3/4.',
  );
});

test('a flow from one refill claims nothing of the next flight', () => {
  const one = {
    flightCount: 1,
    meanLPerH: 18,
    lowLPerH: null,
    highLPerH: null,
    nextFlightHighLPerH: null,
    eachLPerH: [18],
    limits: null,
  };
  expect(learnedFlowSentence(one, { fuelFlow: 'L/h' })).toContain('One flight says nothing of the next.');
  const many = { ...one, flightCount: 4, lowLPerH: 17.44, highLPerH: 18.56, nextFlightHighLPerH: 19.02 };
  expect(learnedFlowSentence(many, { fuelFlow: 'L/h' }).replaceAll('\u00a0', ' ')).toContain(
    'the mean lies within 17.4 to 18.6 L/h nine times in ten. Nineteen such flights in twenty burn at most 19.1 L/h.',
  );
});

test('a gauge above zero with nothing usable left is said by its mark', () => {
  expect(
    zeroSentence({ kind: 'readsAbove', positionRatio: 0.125 }, { at: 'scale', positionRatio: 0.125 }, scale),
  ).toContain('Reads 1/8 with no usable fuel left');
});
