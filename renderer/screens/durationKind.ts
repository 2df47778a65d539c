import { shownDuration } from '../../shared-calc/units/duration-text.ts';
import type { FieldKind } from '../ui/fieldKind.ts';

/**
 * A span of time in seconds, shown as '3 h 10 min'; read as that, as 3:10, as 190 min, as 2.5 h, or as bare minutes.
 * @param mostS longest that is allowed, s
 */
export function durationKind(mostS: number): FieldKind<number> {
  return {
    show: (seconds) => shownDuration(seconds).replaceAll('\u00a0', ' '),
    read: (text) => {
      const trimmed = text.trim().toLowerCase().replaceAll('\u00a0', ' ').replace(',', '.');
      if (trimmed === '') return { value: null };
      const minutes = minutesOf(trimmed);
      if (minutes === null)
        return { refused: `'${text.trim()}' is not a span of time. Write it like 3:10 or 190 min.` };
      const value = minutes * 60;
      if (value > mostS)
        return {
          refused: `${shownDuration(value)} is above what is allowed: at most ${shownDuration(mostS)}.`,
        };
      return { value, becomes: `becomes ${shownDuration(value)}` };
    },
    step: (seconds, steps) => Math.min(mostS, Math.max(0, (Math.round((seconds ?? 0) / 300) + steps) * 300)),
    widthCount: 10,
    align: 'right',
  };
}

function minutesOf(text: string): number | null {
  const clock = /^(\d{1,2}):([0-5]\d)$/.exec(text);
  if (clock !== null) return Number(clock[1]) * 60 + Number(clock[2]);
  const words = /^(?:(\d+(?:\.\d+)?)\s*h(?:ours?)?)?\s*(?:(\d+(?:\.\d+)?)\s*(?:m|min|minutes?)?)?$/.exec(
    text,
  );
  if (words === null || (words[1] === undefined && words[2] === undefined)) return null;
  return Number(words[1] ?? 0) * 60 + Number(words[2] ?? 0);
}
