import type { OutputOf } from '../../../main/requests/table.ts';
import type { App } from '../../app/app.svelte.ts';
import { dayText } from '../../ui/dateKind.ts';
import type { Preview, StationChoice } from './pendingFile.ts';

export type ListedStation = OutputOf<'weather.findStations'>[number];

/** A moment's day in UTC, in words: the clock in which weather files are kept. */
export function utcDay(epochS: number): string {
  return dayText(new Date(epochS * 1000).toISOString().slice(0, 10));
}

export function spanWords({ firstEpochS, lastEpochS }: Pick<Preview, 'firstEpochS' | 'lastEpochS'>): string {
  if (firstEpochS === null || lastEpochS === null) return 'no day';
  const [first, last] = [utcDay(firstEpochS), utcDay(lastEpochS)];
  return first === last ? first : `${first} to ${last}`;
}

/** "Denver International Airport, CO (KDEN), 1 650 m". */
export function stationWords(app: App, station: ListedStation): string {
  const names = [station.name, station.state].filter((part) => part !== '').join(', ');
  const code = station.identifier === null ? '' : ` (${station.identifier})`;
  return `${names}${code}, ${app.units.shown(station.elevationM, 'elevation')}`;
}

/** The station that file and list suggest, and by what; empty where nothing tells. */
export function proposalWords(app: App, preview: Preview): string {
  const { stationProposal, stationGuess, guessedFrom } = preview;
  if (stationProposal === null) return '';
  if ('place' in stationProposal) {
    const { name, elevationM } = stationProposal.place;
    return `${name}, ${app.units.shown(elevationM, 'elevation')}, as its records say`;
  }
  if (stationGuess === null) return '';
  const elevationM =
    'elevationM' in stationProposal && stationProposal.elevationM !== undefined
      ? stationProposal.elevationM
      : stationGuess.elevationM;
  return `${stationWords(app, { ...stationGuess, elevationM })}, by the ${guessedFrom ?? 'file'}`;
}

export function choiceOf(station: ListedStation): StationChoice {
  return { listKey: station.key };
}
