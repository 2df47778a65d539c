import { expect, test } from 'vitest';
import {
  checksDisagree,
  gaugeChecksWords,
  gaugeDoubtSentence,
  type GaugeChecks,
} from '../../../shared-calc/wording/gauge-standing.ts';

const checks = (verdict: GaugeChecks['verdict'], judgedCount = 4): GaugeChecks => ({
  verdict,
  judgedCount,
  sinceOn: '2026-09-05',
  lastOn: '2026-10-31',
});
const day = (text: string) => `day ${text}`;

test.each(['outside', 'drifting', 'scattered'] as const)(
  '%s checks: the curve is not to be planned by',
  (verdict) => {
    expect(checksDisagree(checks(verdict))).toBe(true);
    const said = gaugeDoubtSentence(checks(verdict), day);
    expect(said).toMatch(/^Its checks no longer agree with this curve/);
    expect(said).toMatch(/Repeat the fill test; until then plan by the dipstick and the time flown/);
    expect(gaugeChecksWords(checks(verdict), day)).toContain('no longer agree');
  },
);

test('one check alone that later ones do not bear out is told by its day, and no more', () => {
  expect(checksDisagree(checks('oneOutside'))).toBe(false);
  expect(gaugeDoubtSentence(checks('oneOutside'), day)).toContain('that of day 2026-09-05');
  expect(gaugeChecksWords(checks('oneOutside'), day)).toContain('agree but for one of day 2026-09-05');
});

test('checks that agree, and none at all, raise no doubt', () => {
  for (const each of [checks('agrees'), null]) {
    expect(checksDisagree(each)).toBe(false);
    expect(gaugeDoubtSentence(each, day)).toBe('');
  }
  expect(gaugeChecksWords(null, day)).toBe('no check since');
  expect(gaugeChecksWords(checks('agrees', 1), day)).toBe('its one check agrees, the last of day 2026-10-31');
  expect(gaugeChecksWords(checks('agrees'), day)).toBe('its 4 checks agree, the last of day 2026-10-31');
});
