import type { CsvRefusal } from '../fuel/csv/read-runs.ts';
import type { RunFlag } from '../fuel/run-flags.ts';
import type { CurveByHand, FillTestRecord } from '../fuel/records.ts';
import type { UnitPreferences } from '../units/preferences.ts';
import { shown } from '../units/shown.ts';
import { listWords } from './list-words.ts';

// What is said about a fill test as it was taken: its runs, its file, what was done to its curve by hand.

/** What is odd about a run, and what would explain it. */
export function runFlagSentence(flag: RunFlag, units: Pick<UnitPreferences, 'volume'>): string {
  switch (flag.kind) {
    case 'runsBackwards':
      return (
        `Every reading ${flag.direction === 'filling' ? 'fell though fuel went in' : 'rose though fuel came out'}; kept. ` +
        'Likely: the gauge runs backwards. If it does, say so; else look at the direction of the run.'
      );
    case 'leapt':
      return (
        `The needle went ${share(flag.movedRatio)} of the scale, ${share(flag.usualRatio)} would be usual here; kept. ` +
        'Likely: a pour before this row was forgotten, or typed too small.'
      );
    case 'brimBelowCapacity':
      return (
        `Full to the brim with ${shown(flag.usableL, 'volume', units.volume)}, ` +
        `${shown(flag.missingL, 'volume', units.volume)} less than the tank holds. ` +
        (flag.likely === 'pourForgotten'
          ? 'Likely: a pour was forgotten.'
          : 'Likely: the tank was not empty at the start, or a container holds more than it says.')
      );
  }
}

/** Why figures of a file were not taken, by line, field and value; nothing of it was. */
export function csvRefusalSentence(refusals: readonly CsvRefusal[]): string {
  const told = refusals.slice(0, MOST_TOLD).map(({ line, field, value, expected }) => {
    const what = value === '' ? 'nothing' : `"${value}"`;
    return `line ${String(line)}, ${field}: ${what}, expected ${expected}`;
  });
  const more = refusals.length - told.length;
  return `Nothing was taken from the file. ${capital(told.join('; '))}${more > 0 ? `; and ${String(more)} more` : ''}.`;
}

const MOST_TOLD = 5;

/** What a person did to a curve, for the title block and the card: '1 row corrected, 1 value pinned'; '' for nothing. */
export function byHandWords({ correctedCount, pinnedCount, smoothness }: CurveByHand): string {
  return listWords(
    [
      correctedCount > 0 ? `${counted(correctedCount, 'row')} corrected` : '',
      pinnedCount > 0 ? `${counted(pinnedCount, 'value')} pinned` : '',
      smoothness === null ? '' : 'stiffness chosen',
    ].filter((part) => part !== ''),
  );
}

/** Why tests of one tank do not make one curve: the first thing in which they differ; '' where they are alike. */
export function unlikeWords(a: FillTestRecord, b: FillTestRecord): string {
  if (a.attitude !== b.attitude) return 'another attitude';
  if (a.power !== b.power) return 'another supply';
  if (a.fuelKind !== b.fuelKind) return 'another fuel';
  return JSON.stringify(a.scale) === JSON.stringify(b.scale) ? '' : 'another scale';
}

function counted(count: number, one: string): string {
  return `${String(count)} ${count === 1 ? one : `${one}s`}`;
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

function share(ratio: number): string {
  return `${String(Math.round(ratio * 100))}\u00a0%`;
}
