import type { FigureSource } from '../loading/records.ts';
import { dayText } from './day-text.ts';
import { listWords } from './list-words.ts';

/** When what an answer rests on was found: days as '2026-07-19', null where there is none. */
export interface DataAgeParts {
  /** null where no aeroplane is asked. */
  readonly aeroplane: {
    readonly weighedOn: string | null;
    readonly gauges: readonly { readonly name: string; readonly adoptedOn: string | null }[];
    /** Those of the manual's tables that the answer uses. */
    readonly tables: readonly {
      readonly name: string;
      readonly enteredOn: string | null;
      readonly source: FigureSource;
    }[];
  } | null;
  /** null where the record is not of observations. */
  readonly lastObservation: string | null;
}

/**
 * One line on how old the data of an answer are, for a cell of the title block.
 * @example "weighed 12 March 2026; gauge calibrated 3 May 2026 (left tank); gauge not calibrated (right tank);
 *   take-off table entered 2 June 2026, compared with the manual 4 June 2026; last observation 31 December 2025"
 */
export function dataAgeWords({ aeroplane, lastObservation }: DataAgeParts): string {
  const parts: string[] = [];
  if (aeroplane !== null) {
    const { weighedOn, gauges, tables } = aeroplane;
    parts.push(weighedOn === null ? 'not weighed' : `weighed ${dayText(weighedOn)}`);
    const gauged = grouped(gauges, ({ adoptedOn }) =>
      adoptedOn === null ? 'gauge not calibrated' : `gauge calibrated ${dayText(adoptedOn)}`,
    );
    // All tanks alike need no names.
    for (const [words, of] of gauged) parts.push(gauged.size === 1 ? words : `${words} (${names(of)})`);
    const tabled = grouped(tables, ({ enteredOn, source }) =>
      [
        enteredOn === null ? 'entered on a day that was not kept' : `entered ${dayText(enteredOn)}`,
        comparedWords(source),
      ].join(', '),
    );
    for (const [words, of] of tabled)
      parts.push(`${listWords(of.map(({ name }) => name))} ${of.length === 1 ? 'table' : 'tables'} ${words}`);
  }
  parts.push(
    lastObservation === null ? 'not from observations' : `last observation ${dayText(lastObservation)}`,
  );
  return parts.join('; ');
}

function comparedWords({ from, comparedOn }: FigureSource): string {
  if (from !== 'manual') return from;
  return comparedOn === null
    ? 'not compared with the manual'
    : `compared with the manual ${dayText(comparedOn)}`;
}

function names(of: readonly { readonly name: string }[]): string {
  return of.map(({ name }) => name).join(', ');
}

/** What is said alike is said once, in the order of the first of each. */
function grouped<Each>(list: readonly Each[], wordsOf: (each: Each) => string): Map<string, Each[]> {
  const found = new Map<string, Each[]>();
  for (const each of list) found.set(wordsOf(each), [...(found.get(wordsOf(each)) ?? []), each]);
  return found;
}
