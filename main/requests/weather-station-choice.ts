import {
  weatherStation,
  weatherStationOfList,
  weatherStationOfRecords,
  type WeatherStation,
} from '../store/weather-stations.ts';
import type { ScanSummary } from '../weather-import/scan.ts';
import {
  listedStation,
  stationOfFileName,
  stationOfIdentifier,
  type ListedStation,
} from '../weather-import/stations/station-list.ts';
import type { Context } from './define.ts';
import { Refusal } from './problem.ts';
import type { StationChoice } from './weather-schema.ts';

/** A station of the bundled list as the window gets it. */
export interface ListedOut {
  key: string;
  name: string;
  state: string;
  identifier: string | null;
  latitudeDeg: number;
  longitudeDeg: number;
  elevationM: number;
}

/**
 * The station that a choice means: one that the library has, or a new one that is not written yet.
 * @throws Refusal where there is none
 */
export function resolveStation({ db, newId }: Context, choice: StationChoice): WeatherStation {
  if ('stationId' in choice) {
    const known = weatherStation(db, choice.stationId);
    if (known === null)
      throw new Refusal(
        'not-found',
        `There is no weather station '${choice.stationId}'. Nothing was changed.`,
      );
    return known;
  }
  if ('listKey' in choice) {
    const found = listedStation(choice.listKey);
    if (found === undefined)
      throw new Refusal(
        'not-found',
        `There is no station ${choice.listKey} in the bundled list. Give its place and elevation instead. Nothing was changed.`,
      );
    const { key, name, latitudeDeg, longitudeDeg, elevationM } = listedOut(found);
    const fromRecords = choice.elevationM;
    return (
      weatherStationOfList(db, key) ?? {
        id: newId(),
        listKey: key,
        name,
        identifier: found.icao === '' ? null : found.icao,
        latitudeDeg,
        longitudeDeg,
        elevationM: fromRecords ?? elevationM,
        placeFrom: fromRecords === undefined ? 'station list' : 'file',
      }
    );
  }
  const { place } = choice;
  // A second file of the same records must not make a second station of it.
  const again =
    place.placeFrom === 'file' && place.identifier !== null
      ? weatherStationOfRecords(db, place.identifier)
      : null;
  return again ?? { id: newId(), listKey: null, ...place };
}

/** The bundled list's station that a file is probably of, by the identifier in it or by its name. */
export function guessStation(
  fileName: string,
  summary: ScanSummary,
): { station: ListedOut | null; from: 'file name' | 'identifier in the file' | null } {
  if (summary.firstEpochS === null || summary.lastEpochS === null) return { station: null, from: null };
  const span = { firstDay: dayNumber(summary.firstEpochS), lastDay: dayNumber(summary.lastEpochS) };
  const read = summary.stationsInFile.find(({ identifier }) => identifier === summary.stationRead);
  if (read !== undefined) {
    const found = stationOfIdentifier(read.identifier, span);
    if (found !== null) return { station: listedOut(found), from: 'identifier in the file' };
  }
  const found = stationOfFileName(fileName, span);
  return found === null ? { station: null, from: null } : { station: listedOut(found), from: 'file name' };
}

export function listedOut(found: ListedStation): ListedOut {
  return {
    key: found.key,
    name: found.name,
    state: found.state,
    identifier: found.icao === '' ? null : found.icao,
    latitudeDeg: found.latitudeDeg,
    longitudeDeg: found.longitudeDeg,
    elevationM: found.elevationM,
  };
}

function dayNumber(epochS: number): number {
  return Number(new Date(epochS * 1000).toISOString().slice(0, 10).replaceAll('-', ''));
}
