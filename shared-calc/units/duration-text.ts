import { requireRange } from '../problem.ts';
import { figureText, NO_BREAK_SPACE } from './figure-text.ts';
import { roundSafely, type Question } from './round-safely.ts';

const MINUTE_S = 60;
/** A hundred years: longer is an instant taken for a span. */
const LONGEST_S = 3_155_760_000;

/**
 * A span in words, "2 h 35 min", "25 min", "less than 1 min"; rounded to the safe side of its question.
 * @param durationS   seconds, magnitude up to a hundred years
 * @param question    'plain' unless told
 * @param resolutionS to what it is rounded, a whole number of minutes; one minute unless told
 * @throws RangeProblem naming durationS or resolutionS
 */
export function shownDuration(
  durationS: number,
  question: Question = 'plain',
  resolutionS: number = MINUTE_S,
): string {
  const minutes = wholeMinutes(durationS, question, resolutionS);
  if (minutes === 0 && durationS > 0 && (question === 'margin' || question === 'duration left')) {
    return `less than ${spanText(resolutionS / MINUTE_S)}`;
  }
  return minutes < 0 ? `\u2212${spanText(-minutes)}` : spanText(minutes);
}

/** The same for a column: "2:35", "0:05". */
export function columnDuration(
  durationS: number,
  question: Question = 'plain',
  resolutionS: number = MINUTE_S,
): string {
  const minutes = wholeMinutes(durationS, question, resolutionS);
  const size = Math.abs(minutes);
  const text = `${String(Math.floor(size / 60))}:${String(size % 60).padStart(2, '0')}`;
  return minutes < 0 ? `\u2212${text}` : text;
}

function wholeMinutes(durationS: number, question: Question, resolutionS: number): number {
  requireRange('durationS', durationS, -LONGEST_S, LONGEST_S, 's');
  requireRange('resolutionS', resolutionS, MINUTE_S, 86_400, 's');
  return Math.round(roundSafely(durationS, resolutionS, question) / MINUTE_S);
}

function spanText(minutes: number): string {
  const hours = Math.floor(minutes / 60);
  const rest = minutes % 60;
  const restText = `${String(rest)}${NO_BREAK_SPACE}min`;
  if (hours === 0) return restText;
  const hoursText = `${figureText(hours, 0)}${NO_BREAK_SPACE}h`;
  return rest === 0 ? hoursText : `${hoursText}${NO_BREAK_SPACE}${restText}`;
}
