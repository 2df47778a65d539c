import { checkResiduals } from '../../../shared-calc/fuel/checks/check-residuals.ts';
import { checksAsRuns } from '../../../shared-calc/fuel/checks/checks-as-runs.ts';
import { drawsOfKept } from '../../../shared-calc/fuel/checks/draws-of-kept.ts';
import { flowFromRefills } from '../../../shared-calc/fuel/checks/flow-from-refills.ts';
import {
  dayNumber,
  flowOfLog,
  judgeLog,
  refillsOf,
  termsOfLog,
} from '../../../shared-calc/fuel/checks/judge-log.ts';
import { judgeChecks } from '../../../shared-calc/fuel/checks/judge-checks.ts';
import { refillMeasure } from '../../../shared-calc/fuel/checks/pump.ts';
import { judgeZero } from '../../../shared-calc/fuel/checks/zero-check.ts';
import { csvText, decimal, exactReadingText } from '../../../shared-calc/fuel/csv/write-cells.ts';
import { checksToCsv } from '../../../shared-calc/fuel/csv/write-checks.ts';
import { ensembleL, mean, meanSlopeL } from '../../../shared-calc/fuel/fit/ensemble.ts';
import { chiSquaredTailProb } from '../../../shared-calc/numeric/chi-squared.ts';
import { cusum, individualsLimits } from '../../../shared-calc/numeric/control-chart.ts';
import { logGamma } from '../../../shared-calc/numeric/log-gamma.ts';
import {
  checkAnswer,
  learnedFlowSentence,
  notJudgedWords,
  zeroSentence,
} from '../../../shared-calc/wording/fuel-checks.ts';
import {
  checksDisagree,
  gaugeChecksWords,
  gaugeDoubtSentence,
} from '../../../shared-calc/wording/gauge-standing.ts';
import { exampleCheck, twoStraightCurves } from '../fuel/checks/example-checks.ts';
import { byPosition, type RoomRefusals } from './table.ts';

const residuals = (changed: Parameters<typeof exampleCheck>[0]) =>
  checkResiduals(twoStraightCurves, [exampleCheck(changed)], [], [], 'level flight');
const refill = { refillL: 18, flightS: 3600, refillSdL: 0.5 };

export const refusals: RoomRefusals = {
  functions: [
    byPosition(chiSquaredTailProb, [
      { field: 'x', min: 0, max: 1e12, good: 3 },
      { field: 'degreesOfFreedom', min: 1, max: 10_000, good: 4 },
    ]),
    byPosition(logGamma, [{ field: 'x', min: 0.25, max: 1e6, good: 3 }]),
    {
      of: individualsLimits,
      ranges: [{ field: 'values[1]', min: -1e150, max: 1e150, call: (v) => individualsLimits([1, v, 2]) }],
      refused: [{ when: 'one value alone', call: () => individualsLimits([1]), sentence: /at least two/ }],
    },
    {
      of: cusum,
      ranges: [
        { field: 'deviations[0]', min: -1e150, max: 1e150, call: (v) => cusum([v], 0.5, 5) },
        { field: 'allowance', min: 1e-9, max: 1e150, call: (v) => cusum([1], v, 5) },
        { field: 'limit', min: 1e-9, max: 1e150, call: (v) => cusum([1], 0.5, v) },
      ],
    },
    {
      of: checkResiduals,
      ranges: [
        { field: 'refillL', min: 0.1, max: 1000, call: (refillL) => residuals({ refillL }) },
        { field: 'stateSdL', min: 0, max: 100, call: (stateSdL) => residuals({ stateSdL }) },
      ],
    },
    {
      of: judgeChecks,
      ranges: [
        { field: 'residualsL[0]', min: -10_000, max: 10_000, call: (v) => judgeChecks([v], [[1]], [0]) },
        { field: 'daysFromFirst[0]', min: 0, max: 36_525, call: (v) => judgeChecks([1], [[1]], [v]) },
      ],
      refused: [
        {
          when: 'lists of different length',
          call: () => judgeChecks([1], [[1]], []),
          sentence: /differ in number/,
        },
        {
          when: 'days that fall',
          call: () =>
            judgeChecks(
              [1, 1],
              [
                [1, 0],
                [0, 1],
              ],
              [2, 1],
            ),
          sentence: /must not fall/,
        },
        {
          when: 'a covariance that is none',
          call: () => judgeChecks([1], [[-1]], [0]),
          sentence: /positive definite/,
        },
      ],
    },
    {
      of: flowFromRefills,
      ranges: [
        { field: 'scaleSdRatio', min: 0, max: 0.2, call: (v) => flowFromRefills([refill], v) },
        {
          field: 'refills[0].refillL',
          min: 0.1,
          max: 1000,
          call: (refillL) => flowFromRefills([{ ...refill, refillL }], 0),
        },
        {
          field: 'refills[0].flightS',
          min: 300,
          max: 86_400,
          call: (flightS) => flowFromRefills([{ ...refill, flightS }], 0),
        },
        {
          field: 'refills[0].refillSdL',
          min: 0,
          max: 100,
          call: (refillSdL) => flowFromRefills([{ ...refill, refillSdL }], 0),
        },
      ],
    },
    {
      of: judgeZero,
      ranges: [
        {
          field: 'positionRatio',
          min: 0,
          max: 1,
          call: (positionRatio) => judgeZero({ at: 'scale', positionRatio }, 'level flight', 0.125),
        },
        {
          field: 'resolutionRatio',
          min: 0.001,
          max: 0.5,
          call: (v) => judgeZero({ at: 'emptyStop' }, 'level flight', v),
        },
      ],
    },
    {
      of: checksAsRuns,
      ranges: [
        {
          field: 'usableCapacityL',
          min: 1,
          max: 1000,
          call: (v) => checksAsRuns([exampleCheck()], [], v, () => 0),
        },
      ],
      refused: [
        {
          when: 'a reading at a stop',
          call: () => checksAsRuns([exampleCheck({ after: { at: 'emptyStop' } })], [], 50, () => 0),
          sentence: /at a stop/,
        },
      ],
    },
  ],
  takeNoNumber: [
    [drawsOfKept, 'takes curves that were kept'],
    [refillMeasure, 'takes a container and a refill that the store has checked'],
    [mean, 'takes what the curves of a fit gave'],
    [ensembleL, 'takes positions that its callers have checked'],
    [meanSlopeL, 'takes positions that its callers have checked'],
    [csvText, 'joins words'],
    [decimal, 'writes a number'],
    [exactReadingText, 'takes a reading that the door has let through'],
    [checksToCsv, 'takes records that the store has checked'],
    [judgeLog, 'takes records that the store has checked; checkResiduals refuses'],
    [flowOfLog, 'takes records that the store has checked; flowFromRefills refuses'],
    [termsOfLog, 'takes records'],
    [refillsOf, 'takes records'],
    [dayNumber, 'takes a day that the store has checked'],
    [checksDisagree, 'takes checked results'],
    [gaugeChecksWords, 'takes checked results'],
    [gaugeDoubtSentence, 'takes checked results'],
    [checkAnswer, 'takes checked results'],
    [learnedFlowSentence, 'takes checked results'],
    [notJudgedWords, 'takes a word'],
    [zeroSentence, 'takes checked results'],
  ],
};
