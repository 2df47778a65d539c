import { listWords } from './list-words.ts';
import { numberWord } from './number-words.ts';
import type { SeenVerdict, VerdictChange } from './verdict-changes.ts';

/** More scenarios of one kind than these are counted. */
const MOST_NAMED = 3;
/** What is outside now comes first, what is better last. */
const order = ['outside', 'does not fit', 'not checked', 'inside'] as const;

/** What stands in a cell whose verdict changed: "was inside". */
export function wasWords({ was }: Pick<VerdictChange, 'was'>): string {
  return thenWords(was.verdict, true);
}

/**
 * Above the review table: how many scenarios changed their verdict since they were looked at, and which. Each kind of
 * change is a sentence, what is outside now first; '' where nothing changed.
 * @param changes names as "Ines, 60 L"
 * @param total   scenarios of the table
 */
export function scenarioChangesSentence(changes: readonly VerdictChange[], total: number): string {
  if (changes.length === 0) return '';
  const count = `${capital(numberWord(changes.length))} of ${total <= 12 ? numberWord(total) : String(total)} scenarios`;
  const head = `${count} changed verdict since you last looked, by a figure of the aeroplane or somebody’s mass.`;
  const kinds = order.flatMap((now) =>
    order.flatMap((before) => {
      const these = changes.filter(({ was, is }) => was.verdict === before && is.verdict === now);
      if (these.length === 0) return [];
      const names = listWords(
        these.map(({ name }) => `“${name}”`),
        MOST_NAMED,
      );
      const isOne = these.length === 1;
      return [`${names} ${nowWords(now, isOne)} (${thenWords(before, isOne)}).`];
    }),
  );
  return [head, ...kinds].join(' ');
}

function nowWords(verdict: SeenVerdict['verdict'], isOne: boolean): string {
  if (verdict === 'does not fit') return `now ${isOne ? 'asks' : 'ask'} for more fuel than fits`;
  if (verdict === 'not checked') return 'can no longer be checked';
  return `${isOne ? 'is' : 'are'} now ${verdict}`;
}

function thenWords(verdict: SeenVerdict['verdict'], isOne: boolean): string {
  if (verdict === 'does not fit') return `${isOne ? 'its' : 'their'} fuel did not fit`;
  return `${isOne ? 'was' : 'were'} ${verdict}`;
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
