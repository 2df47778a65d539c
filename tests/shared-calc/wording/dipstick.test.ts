import { expect, test } from 'vitest';
import { textOf } from '../../../shared-calc/wording/parts.ts';
import { twoMeansAnswer } from '../../../shared-calc/wording/dipstick.ts';

const said = (
  found: { agree: boolean; differenceL: number; lowL: number; highL: number },
  stickPlanL: number,
) =>
  textOf([
    twoMeansAnswer({ found, gaugePlanL: 18.27, stickPlanL, stickWord: 'dipstick', units: { volume: 'L' } }),
  ]).replaceAll('\u00a0', ' ');

test('where gauge and dipstick agree the lower is the figure, rounded down, and both are named', () => {
  expect(said({ agree: true, differenceL: -0.6, lowL: -3, highL: 1.8 }, 19.04)).toBe(
    'Gauge and dipstick agree: plan on 18.2 L, the lower, by the gauge; the gauge says 18.2 L, the dipstick 19.0 L.',
  );
});

test('where they do not, the lower holds, and the sentence says by how much they differ', () => {
  // Half of what lies between 2.9 and 7.7 L is 2.4.
  expect(said({ agree: false, differenceL: 5.21, lowL: 2.9, highL: 7.7 }, 12.98)).toBe(
    'Gauge and dipstick do not agree: they are 5.3 L apart, where their doubts explain at most 2.4 L. ' +
      'The lower holds: plan on 12.9 L, by the dipstick. Find out why before you fly.',
  );
});
