import type { NotJudged, ResidualSet } from '../fuel/checks/check-residuals.ts';
import type { LearnedFlow } from '../fuel/checks/flow-from-refills.ts';
import type { CheckJudgement } from '../fuel/checks/judge-checks.ts';
import type { ZeroVerdict } from '../fuel/checks/zero-check.ts';
import { readingText, type GaugeScale } from '../fuel/gauge-scale.ts';
import type { GaugeReading } from '../fuel/fill-run.ts';
import type { UnitPreferences } from '../units/preferences.ts';
import { shown, shownRange } from '../units/shown.ts';
import { plain, strong, type Sentence } from './parts.ts';

export interface CheckAnswerParts {
  readonly set: ResidualSet;
  readonly judgement: CheckJudgement;
  readonly scale: GaugeScale;
  readonly units: Pick<UnitPreferences, 'volume'>;
  /** A day of the calendar as a person writes it. */
  dayText(day: string): string;
}

/**
 * Whether the gauge still agrees with its curve, and what to do where it does not.
 * @example "The gauge no longer agrees: on 12 September 2026 it showed 3.2 L less burned than was bought, 3.4 times what
 *   the uncertainties explain. Lower down there may be less than the card says. Repeat the fill test between 1/4 and 3/4."
 */
export function checkAnswer(parts: CheckAnswerParts): Sentence {
  const { set, judgement } = parts;
  const { verdict } = judgement;
  const count = set.checks.length;
  switch (verdict.kind) {
    case 'none':
      return [plain('No check can be held against the curve yet.')];
    case 'agrees':
      return [
        plain(count === 1 ? 'The one check ' : `All ${String(count)} checks `),
        strong(count === 1 ? 'agrees with the curve' : 'agree with the curve'),
        plain(`, the last of ${parts.dayText(set.checks.at(-1)?.checkedOn ?? '')}.`),
      ];
    case 'outside':
      return [
        strong('The gauge no longer agrees'),
        plain(
          `: ${oneCheck(parts, verdict)} ${whatItMeans(verdict.sign)} ${repeatWords(parts, verdict.fromIndex)}`,
        ),
      ];
    case 'drifting':
      return [
        strong('The gauge is drifting'),
        plain(
          `: ${slowChange(parts, verdict)} ${whatItMeans(verdict.sign)} ${repeatWords(parts, verdict.fromIndex)}`,
        ),
      ];
    case 'oneOutside':
      return [
        strong('One check does not agree'),
        plain(
          `: ${oneCheck(parts, verdict)} Those after it agree. Look whether a figure of it was mistyped; ` +
            'if not, check the gauge again at these readings.',
        ),
      ];
    case 'scattered':
      return [
        strong('The checks scatter too much'),
        plain(
          ', though none of them alone lies outside. Either the state that you fill to is met less closely than ' +
            'was said, or the needle sticks. Tap it and read twice; repeat the fill test if it goes on.',
        ),
      ];
  }
}

/** Stands beside every verdict that is not 'agrees': what holds until the gauge is calibrated anew. */
export const UNTIL_REPEATED =
  'Until the fill test is repeated, plan by the dipstick and the time flown; where they differ the lowest figure holds.';

function oneCheck(
  { set, judgement, units, dayText }: CheckAnswerParts,
  { fromIndex }: { fromIndex: number },
): string {
  const check = set.checks[fromIndex];
  const residualL = set.residualsL[fromIndex] ?? 0;
  const times = Math.abs(judgement.checks[fromIndex]?.whitened ?? 0).toFixed(1);
  return (
    `on ${dayText(check?.checkedOn ?? '')} it showed ${shown(Math.abs(residualL), 'volume', units.volume, 'excess')} ` +
    `${residualL < 0 ? 'less' : 'more'} burned than was bought, ${times} times what the uncertainties explain.`
  );
}

function slowChange(
  { set, units, dayText }: CheckAnswerParts,
  verdict: { sign: 1 | -1; fromIndex: number },
): string {
  const since = set.residualsL.slice(verdict.fromIndex);
  const meanL = since.reduce((sum, residual) => sum + residual, 0) / since.length;
  return (
    `since ${dayText(set.checks[verdict.fromIndex]?.checkedOn ?? '')} it shows ` +
    `${shown(Math.abs(meanL), 'volume', units.volume, 'excess')} ${verdict.sign < 0 ? 'less' : 'more'} burned a flight ` +
    'than is bought.'
  );
}

/** After a flight from the same state, a gauge that fell too little stands too high. */
function whatItMeans(sign: 1 | -1): string {
  return sign < 0
    ? 'Lower down there may be less than the card says.'
    : 'Either less is there when it is filled than the card says, or more lower down.';
}

function repeatWords({ set, scale }: CheckAnswerParts, fromIndex: number): string {
  const readings = set.checks.slice(fromIndex).flatMap(({ before, after }) => [before, after]);
  const positions = readings.flatMap((reading) => (reading.at === 'scale' ? [reading.positionRatio] : []));
  const mark = (positionRatio: number) => readingText({ at: 'scale', positionRatio }, scale);
  return `Repeat the fill test between ${mark(Math.min(...positions))} and ${mark(Math.max(...positions))}.`;
}

const WHY_NOT: Readonly<Record<NotJudged, string>> = {
  atStop: 'not judged: a reading at a stop',
  beyondCurve: 'not judged: a reading beyond those of the fill test',
  otherAttitude: 'not judged: read in another attitude than the fill test',
  beforeTest: 'not judged: before the fill test of this curve',
  takenIn: 'part of the curve',
  notBurned: 'not judged: the gauge did not fall',
};

/** Why a check is not on the chart, for its row. */
export function notJudgedWords(why: NotJudged): string {
  return WHY_NOT[why];
}

/** Fuel flow by refills alone, with its band. Never through the gauge that the same refills check. */
export function learnedFlowSentence(flow: LearnedFlow, units: Pick<UnitPreferences, 'fuelFlow'>): string {
  const mean = shown(flow.meanLPerH, 'fuelFlow', units.fuelFlow);
  if (flow.lowLPerH === null || flow.highLPerH === null || flow.nextFlightHighLPerH === null)
    return `By one refill and its time: ${mean}, from start to shutdown, taxi and climb included. One flight says nothing of the next.`;
  return (
    `By ${String(flow.flightCount)} refills and their times alone: ${mean}, from start to shutdown, taxi and climb ` +
    `included; the mean lies within ${shownRange(flow.lowLPerH, flow.highLPerH, 'fuelFlow', units.fuelFlow)} nine times ` +
    `in ten. Nineteen such flights in twenty burn at most ` +
    `${shown(flow.nextFlightHighLPerH, 'fuelFlow', units.fuelFlow, 'excess')}.`
  );
}

/** What the gauge's reading with no usable fuel means. */
export function zeroSentence(verdict: ZeroVerdict, reading: GaugeReading, scale: GaugeScale): string {
  switch (verdict.kind) {
    case 'readsZero':
      return 'Reads zero with no usable fuel left, as it should.';
    case 'withinDivision':
      return 'Reads zero as far as its scale can tell.';
    case 'readsAbove':
      return (
        `Reads ${readingText(reading, scale)} with no usable fuel left, where it should read zero. Have it looked at; ` +
        'until then treat that reading as empty.'
      );
    case 'notLevel':
      return 'Says nothing of level flight: the aeroplane was not levelled as in flight.';
  }
}

/** Where the rule behind the check of the zero applies. */
export const ZERO_RULE =
  '14 CFR 23.1337(b)(1), as it stood until 2017, wants the gauge to read zero in level flight with only the unusable fuel ' +
  'left. It binds aeroplanes certificated under that part. A light-sport, amateur-built or older aeroplane may be held to ' +
  'another rule or none; its manual and placards decide.';
