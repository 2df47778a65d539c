import type { FigureSource } from '../loading/records.ts';
import { dayText } from './day-text.ts';

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
  readonly lastObservation: string;
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
    for (const adoptedOn of new Set(gauges.map((gauge) => gauge.adoptedOn))) {
      const names = gauges.flatMap((gauge) => (gauge.adoptedOn === adoptedOn ? [gauge.name] : [])).join(', ');
      parts.push(
        `gauge ${adoptedOn === null ? 'not calibrated' : `calibrated ${dayText(adoptedOn)}`} (${names})`,
      );
    }
    for (const { name, enteredOn, source } of tables)
      parts.push(
        `${name} table ${enteredOn === null ? 'entered on a day that was not kept' : `entered ${dayText(enteredOn)}`}, ${comparedWords(source)}`,
      );
  }
  parts.push(`last observation ${dayText(lastObservation)}`);
  return parts.join('; ');
}

function comparedWords({ from, comparedOn }: FigureSource): string {
  if (from !== 'manual') return from;
  return comparedOn === null
    ? 'not compared with the manual'
    : `compared with the manual ${dayText(comparedOn)}`;
}
