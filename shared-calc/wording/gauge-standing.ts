import type { CheckVerdict } from '../fuel/checks/judge-checks.ts';

/** What the checks logged since a calibration say of it, in short: for the places that only rest on the curve. */
export interface GaugeChecks {
  readonly verdict: Exclude<CheckVerdict['kind'], 'none'>;
  readonly judgedCount: number;
  readonly sinceOn: string;
  readonly lastOn: string;
}

/** Whether the curve should no longer be planned by. One check that later ones do not bear out is not enough. */
export function checksDisagree(checks: GaugeChecks | null): boolean {
  return checks !== null && checks.verdict !== 'agrees' && checks.verdict !== 'oneOutside';
}

/**
 * What stands beside a figure of the curve where its checks do not agree, and what to do; '' where they do.
 * @example "Its checks no longer agree with this curve: it has drifted since 5 September 2026. Repeat the fill test; until
 *   then plan by the dipstick and the time flown, and where they differ by the lowest."
 */
export function gaugeDoubtSentence(checks: GaugeChecks | null, dayText: (day: string) => string): string {
  if (checks === null) return '';
  switch (checks.verdict) {
    case 'agrees':
      return '';
    case 'oneOutside':
      return `One check does not agree with this curve, that of ${dayText(checks.sinceOn)}; those after it do.`;
    case 'outside':
      return `${DISAGREE}: the last, of ${dayText(checks.lastOn)}, lies outside. ${REPEAT}`;
    case 'drifting':
      return `${DISAGREE}: the gauge has drifted since ${dayText(checks.sinceOn)}. ${REPEAT}`;
    case 'scattered':
      return `${DISAGREE}: all together they scatter too much, the last of ${dayText(checks.lastOn)}. ${REPEAT}`;
  }
}

const DISAGREE = 'Its checks no longer agree with this curve';
const REPEAT =
  'Repeat the fill test; until then plan by the dipstick and the time flown, and where they differ by the lowest.';

/** The same in a row of a list: 'checks agree, the last of 8 August 2026'. */
export function gaugeChecksWords(checks: GaugeChecks | null, dayText: (day: string) => string): string {
  if (checks === null) return 'no check since';
  if (checksDisagree(checks)) return 'its checks no longer agree: repeat the fill test';
  const count = checks.judgedCount;
  const agree = count === 1 ? 'its one check agrees' : `its ${String(count)} checks agree`;
  return checks.verdict === 'oneOutside'
    ? `its checks agree but for one of ${dayText(checks.sinceOn)}`
    : `${agree}, the last of ${dayText(checks.lastOn)}`;
}
