import { shown } from '../units/shown.ts';
import { daysInWords } from './days-in-words.ts';
import { clockText } from './planner-words.ts';
import type { PlannerUnits } from './planner.ts';

/** On how many days an obstacle straight ahead is cleared. */
export interface DaysOverParts {
  readonly hour: number;
  readonly share: number;
  readonly clearanceM: number;
  /** Above obstacle and clearance on the share of days; minus infinity where nothing is answered, null for too few days. */
  readonly marginM: number | null;
  readonly daysNeeded: number;
  readonly dayCount: number;
  readonly clearCount: number;
  /** Days on which 50 ft are reached only behind it. */
  readonly nearerCount: number;
  readonly units: Pick<PlannerUnits, 'altitude'>;
}

/** Stands beside every answer on an obstacle. */
export const OBSTACLE_CAUTION =
  'An estimate: 50 ft where the take-off distance with its factor ends, then the manual’s climb straight ahead, no headwind counted. A turn, flaps still down, sinking air or a tired engine need more. The approved flight manual decides.';

/**
 * @example "At 09:00 the obstacle and the 50 ft wished above it are cleared by at least 40 ft, nine days in ten: 152 of 165
 *   days clear them."
 */
export function daysOverSentence({
  hour,
  share,
  clearanceM,
  marginM,
  daysNeeded,
  dayCount,
  clearCount,
  nearerCount,
  units,
}: DaysOverParts): string {
  const at = `At ${clockText(hour)}`;
  if (marginM === null)
    return `${at} there are too few days with wind to tell: ${String(dayCount)} of the ${String(daysNeeded)} needed.`;
  const height = (valueM: number, question: 'plain' | 'margin') =>
    shown(valueM, 'altitude', units.altitude, question);
  const isWished = clearanceM > 0;
  const what = isWished
    ? `the obstacle and the ${height(clearanceM, 'plain')} wished above it`
    : 'the obstacle';
  const days = `${String(clearCount)} of ${String(dayCount)} days clear ${isWished ? 'them' : 'it'}`;
  if (marginM >= 0)
    return `${at} ${what} ${isWished ? 'are' : 'is'} cleared by at least ${height(marginM, 'margin')}, ${daysInWords(share)}: ${days}.`;
  const nearer =
    nearerCount === 0
      ? ''
      : ` On ${String(nearerCount)} of them 50 ft are reached only behind it, and the manual says nothing of less.`;
  return `${at} ${what} ${isWished ? 'are' : 'is'} not cleared ${daysInWords(share)}: ${days}. Do not take off towards it.${nearer}`;
}
