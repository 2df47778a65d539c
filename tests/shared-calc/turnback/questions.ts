import { DEFAULT_PILOT } from '../../../shared-calc/turnback/turn-back.ts';
import type { TurnBackQuestion } from '../../../shared-calc/turnback/turn-back.ts';
import { OPEN_GROUND_EXPONENT } from '../../../shared-calc/turnback/wind-profile.ts';

type Changes = { [Part in keyof TurnBackQuestion]?: Partial<TurnBackQuestion[Part]> };

/** An invented aeroplane of the 600 kg class on 700 m of runway in calm air, with changes. */
export function question(changes: Changes = {}): TurnBackQuestion {
  return {
    aeroplane: {
      glideSpeedMs: 30,
      glideSinkMs: 3,
      stallSpeedMs: 21,
      climbSpeedMs: 31,
      climbRateMs: 4.5,
      liftOffM: 180,
      ...changes.aeroplane,
    },
    pilot: { ...DEFAULT_PILOT, ...changes.pilot },
    runway: { lengthM: 700, landingRunM: 250, ...changes.runway },
    wind: {
      headwindMs: 0,
      crosswindFromRightMs: 0,
      gradientExponent: OPEN_GROUND_EXPONENT,
      ...changes.wind,
    },
    measured:
      changes.measured === undefined || changes.measured === null
        ? null
        : { lossM: 150, headingChangeDeg: 220, ...changes.measured },
  };
}
