import type { TurnBackAnswer, TurnBackSide } from '../turnback/turn-back.ts';
import type { UnitPreferences } from '../units/preferences.ts';
import { shown } from '../units/shown.ts';
import { plain, strong } from './parts.ts';
import type { Sentence } from './parts.ts';

type TurnBackUnits = Pick<UnitPreferences, 'altitude'>;

/** Stands with every turn-back figure, in its place, before it. */
export const TURN_BACK_CAUTION =
  'For planning on the ground. After an engine failure lower the nose and land ahead, or slightly to either side. ' +
  'Turning back near the ground has killed many pilots who stalled in the turn. The flight manual and an instructor ' +
  'decide; practise at a safe height only.';

/**
 * The answer on turning back: landing ahead first, the height below which no turn is even possible, the better side, and
 * what the figure rests on. Heights are above the field and round up.
 * @example "Below 480 ft above the field land ahead; above it a turn may still fail. Right reaches from 480 ft, left from
 *   710 ft. By the model, from the bank and reaction that you stated."
 */
export function turnBackSentences(answer: TurnBackAnswer, units: TurnBackUnits): Sentence[] {
  const lowestM = Math.min(lowestOf(answer.left), lowestOf(answer.right));
  const basis =
    answer.basis === 'model'
      ? 'By the model, from the bank and reaction that you stated.'
      : 'By the loss that you measured at altitude; the way back by the model.';
  const stall = `In the turn the glide is ${stallShare(answer.speedOverStallRatio)} above the stall.`;
  if (lowestM === Infinity) {
    return [
      [
        strong('Land ahead: '),
        plain('a turn back does not reach the runway from any height looked at, to either side.'),
      ],
      [plain(basis)],
    ];
  }
  return [
    [
      strong(`Below ${height(lowestM, units)} above the field land ahead`),
      plain('; above it a turn may still fail.'),
    ],
    [plain(`${sideWords('Right', answer.right, units)}, ${sideWords('left', answer.left, units)}.`)],
    [plain(stall)],
    [plain(basis)],
  ];
}

function lowestOf(side: TurnBackSide): number {
  return side.kind === 'reaches' ? side.lowestHeightM : Infinity;
}

function sideWords(name: string, side: TurnBackSide, units: TurnBackUnits): string {
  return side.kind === 'reaches'
    ? `${name} reaches from ${height(side.lowestHeightM, units)}`
    : `${name} does not reach`;
}

function height(heightM: number, units: TurnBackUnits): string {
  return shown(heightM, 'altitude', units.altitude, 'needed');
}

/** Rounded down: a margin. */
function stallShare(ratio: number): string {
  return shown(ratio - 1, 'share', '%', 'margin');
}
