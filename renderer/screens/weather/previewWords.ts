import type { OutputOf } from '../../../main/requests/table.ts';
import type { App } from '../../app/app.svelte.ts';
import { dayText } from '../../ui/dateKind.ts';
import type { Preview, StationChoice } from './weatherState.svelte.ts';

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

export function choiceOf(station: ListedStation): StationChoice {
  return { listKey: station.key };
}

export function skippedTotal(preview: Preview): number {
  return preview.skipped.reduce((sum, each) => sum + each.count, 0);
}
