import { expect, test } from 'vitest';
import { turnBack } from '../../../shared-calc/turnback/turn-back.ts';
import { TURN_BACK_CAUTION, turnBackSentences } from '../../../shared-calc/wording/turnback.ts';
import { textOf } from '../../../shared-calc/wording/parts.ts';
import { question } from '../turnback/questions.ts';

const words = (changes: Parameters<typeof question>[0]) =>
  textOf(turnBackSentences(turnBack(question(changes)), { altitude: 'ft' })).replaceAll('\u00a0', ' ');

// Heights from the independent calculation in turn-back.test.ts: 117.6 m is 386 ft, 215.5 m is 707 ft; they round up.
test('landing ahead comes first, and above the height a turn may still fail', () => {
  expect(words({ wind: { crosswindFromRightMs: 5 } })).toBe(
    'Below 390 ft above the field land ahead; above it a turn may still fail. Right reaches from 390 ft, left reaches from ' +
      '710 ft. In the turn the glide is 32 % above the stall. By the model, from the bank and reaction that you stated.',
  );
});

test('where nothing reaches the answer is to land ahead', () => {
  expect(words({ aeroplane: { climbRateMs: 1 }, runway: { lengthM: 300 } })).toMatch(
    /^Land ahead: a turn back does not reach the runway from any height looked at, to either side\./,
  );
});

test('a measured loss is named as what the figure rests on', () => {
  expect(words({ measured: { lossM: 120 } })).toMatch(/By the loss that you measured at altitude/);
});

test('the caution names the danger and who decides', () => {
  expect(TURN_BACK_CAUTION).toMatch(/land ahead.*stalled in the turn.*flight manual and an instructor/);
});
