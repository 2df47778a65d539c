import { afterLeg } from '../../../shared-calc/turnback/glide-path.ts';
import {
  lossAgainstLeastRatio,
  theoreticalBankOfLeastLossDeg,
} from '../../../shared-calc/turnback/least-loss-bank.ts';
import { returnPaths } from '../../../shared-calc/turnback/return-path.ts';
import {
  bankForRateDeg,
  heightLostM,
  loadFactor,
  radiusForRateM,
  stallSpeedUnderLoadMs,
  turnRadiusM,
  turnRateRadS,
} from '../../../shared-calc/turnback/turn.ts';
import { turnBack } from '../../../shared-calc/turnback/turn-back.ts';
import { profileIntegralM, profileRatio, requireWind } from '../../../shared-calc/turnback/wind-profile.ts';
import { turnBackSentences } from '../../../shared-calc/wording/turnback.ts';
import { question } from '../turnback/questions.ts';
import { byPosition } from './table.ts';
import type { RangeRow, RoomRefusals } from './table.ts';

const SPEED = { field: 'trueAirspeedMs', min: 10, max: 200, good: 60 };
const BANK = { field: 'bankDeg', min: 1, max: 80, good: 30 };
const RATE = { field: 'rateRadS', min: 0.001, max: 1, good: 0.05 };

type Part = 'aeroplane' | 'pilot' | 'runway' | 'wind' | 'measured';
const row = (part: Part, field: string, min: number, max: number): RangeRow => ({
  field,
  min,
  max,
  call: (value) =>
    turnBack(question({ aeroplane: { stallSpeedMs: 8 }, [part]: { ...EASY[part], [field]: value } })),
});
/** What the other parts of a changed part have to be, so that the end of a range is refused for nothing else. */
const EASY: Record<Part, object> = {
  aeroplane: { stallSpeedMs: 8 },
  pilot: {},
  runway: { lengthM: 6000, landingRunM: 0 },
  wind: {},
  measured: {},
};

const wind = (field: string, min: number, max: number): RangeRow => ({
  field,
  min,
  max,
  call: (value) => {
    requireWind({ headwindMs: 0, crosswindFromRightMs: 0, gradientExponent: 0, [field]: value });
  },
});

export const refusals: RoomRefusals = {
  functions: [
    byPosition(turnRadiusM, [SPEED, BANK, { field: 'gravityMs2', min: 9.7, max: 10, good: 9.80665 }]),
    byPosition(turnRateRadS, [SPEED, BANK]),
    byPosition(bankForRateDeg, [SPEED, RATE]),
    byPosition(radiusForRateM, [SPEED, RATE]),
    byPosition(loadFactor, [{ ...BANK, min: 0 }]),
    byPosition(stallSpeedUnderLoadMs, [
      { field: 'stallSpeedMs', min: 5, max: 100, good: 20 },
      { field: 'loadFactorRatio', min: 1, max: 10, good: 2 },
    ]),
    byPosition(heightLostM, [
      { field: 'sinkMs', min: 0.2, max: 20, good: 5 },
      { field: 'reactionS', min: 0, max: 60, good: 4 },
      { field: 'headingChangeRad', min: 0, max: 2 * Math.PI, good: 3 },
      RATE,
    ]),
    {
      of: lossAgainstLeastRatio,
      ranges: [
        { field: 'bankDeg', min: 1, max: 80, call: (v) => lossAgainstLeastRatio(v, 'bestGlideSpeed') },
      ],
    },
    {
      of: requireWind,
      ranges: [
        wind('headwindMs', -15, 15),
        wind('crosswindFromRightMs', -15, 15),
        wind('gradientExponent', 0, 0.6),
      ],
    },
    {
      of: turnBack,
      ranges: [
        row('aeroplane', 'glideSpeedMs', 15, 60),
        row('aeroplane', 'glideSinkMs', 0.5, 10),
        {
          field: 'stallSpeedMs',
          min: 8,
          max: 50,
          call: (v) => turnBack(question({ aeroplane: { glideSpeedMs: 60, stallSpeedMs: v } })),
        },
        row('aeroplane', 'climbSpeedMs', 15, 60),
        row('aeroplane', 'climbRateMs', 0.3, 15),
        row('aeroplane', 'liftOffM', 10, 3000),
        row('pilot', 'bankDeg', 10, 45),
        row('pilot', 'reactionS', 4, 30),
        row('pilot', 'wingsLevelByM', 0, 150),
        {
          field: 'lengthM',
          min: 100,
          max: 6000,
          call: (v) => turnBack(question({ runway: { lengthM: v, landingRunM: 0 } })),
        },
        row('runway', 'landingRunM', 0, 6000),
        row('wind', 'headwindMs', -15, 15),
        row('wind', 'crosswindFromRightMs', -15, 15),
        row('wind', 'gradientExponent', 0, 0.6),
        row('measured', 'lossM', 10, 300),
        row('measured', 'headingChangeDeg', 90, 360),
      ],
      refused: [
        {
          when: 'a glide steeper than 1 in 3',
          call: () => turnBack(question({ aeroplane: { glideSpeedMs: 24, glideSinkMs: 8.1 } })),
          sentence: /glideSinkMs: 8.1 m\/s at 24 m\/s is steeper than 1 in 3/,
        },
        {
          when: 'a climb steeper than 30 degrees',
          call: () => turnBack(question({ aeroplane: { climbSpeedMs: 20, climbRateMs: 10.1 } })),
          sentence: /climbRateMs: 10.1 m\/s at 20 m\/s is steeper than 30 degrees/,
        },
        {
          when: 'a wind that grows to the glide speed',
          call: () => turnBack(question({ wind: { headwindMs: 10, gradientExponent: 0.4 } })),
          sentence: /wind: grows to 39.0 m\/s at 300 m/,
        },
        {
          when: 'a measured loss that would be a dive',
          call: () => turnBack(question({ measured: { lossM: 300, headingChangeDeg: 90 } })),
          sentence: /lossM: 300 m would be a turn steeper than 45 degrees down/,
        },
        {
          when: 'a landing run longer than the runway',
          call: () => turnBack(question({ runway: { landingRunM: 701 } })),
          sentence: /landingRunM: 701 m is longer than the runway/,
        },
        {
          when: 'a bank at which it stalls',
          call: () => turnBack(question({ aeroplane: { stallSpeedMs: 29 } })),
          sentence: /at 30 degrees the aeroplane stalls/,
        },
      ],
    },
  ],
  takeNoNumber: [
    [theoreticalBankOfLeastLossDeg, 'takes the name of a speed'],
    [afterLeg, 'inside of the path: legs that returnPaths has made'],
    [returnPaths, 'inside of turnBack, which lets its question through; its one refusal is listed there'],
    [profileRatio, 'defined for any height; the exponent is let through by requireWind'],
    [profileIntegralM, 'defined for any height; the exponent is let through by requireWind'],
    [turnBackSentences, 'words an answer that turnBack has made'],
  ],
};
