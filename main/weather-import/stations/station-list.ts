import { brotliDecompressSync } from 'node:zlib';
import { packedStations } from './us-stations.ts';

/** A station as NOAA's station history lists it. */
export interface ListedStation {
  /** USAF and WBAN number, '725300-94846'. */
  key: string;
  usaf: string;
  wban: string;
  name: string;
  state: string;
  /** '' where it has none. */
  icao: string;
  latitudeDeg: number;
  longitudeDeg: number;
  elevationM: number;
  /** First and last day of its record, yyyymmdd as a number. */
  beginDay: number;
  endDay: number;
}

/** Numbers that mean 'none'. */
const noUsaf = '999999';
const noWban = '99999';

let unpacked: readonly ListedStation[] | null = null;

/** Every listed station. Unpacked once, on the first call (some 10 ms). */
export function listedStations(): readonly ListedStation[] {
  unpacked ??= brotliDecompressSync(Buffer.from(packedStations, 'base64'))
    .toString('utf8')
    .split('\n')
    .map((line) => {
      const [usaf = '', wban = '', name = '', state = '', icao = '', ...numbers] = line.split('\t');
      const [latitudeDeg = NaN, longitudeDeg = NaN, elevationM = NaN, beginDay = NaN, endDay = NaN] =
        numbers.map(Number);
      return {
        key: `${usaf}-${wban}`,
        usaf,
        wban,
        name: titleCase(name),
        state,
        icao,
        latitudeDeg,
        longitudeDeg,
        elevationM,
        beginDay,
        endDay,
      };
    });
  return unpacked;
}

export function listedStation(key: string): ListedStation | undefined {
  return listedStations().find((station) => station.key === key);
}

/**
 * The station that a file's name tells by its numbers, as in 725300-94846-2016.gz.
 * Several rows can share a number over time: the one whose days cover the data, else the newest.
 */
export function stationOfFileName(fileName: string, span: DaySpan): ListedStation | null {
  const numbers = /(?<!\d)(\d{6}|[A-Z]\d{5})-(\d{5})(?!\d)/.exec(fileName);
  if (numbers === null) return null;
  const [, usaf = '', wban = ''] = numbers;
  return stationOfNumbers(usaf, wban, span);
}

function stationOfNumbers(usaf: string, wban: string, span: DaySpan): ListedStation | null {
  const stations = listedStations();
  const byBoth = stations.filter((station) => station.usaf === usaf && station.wban === wban);
  if (byBoth.length > 0) return best(byBoth, span);
  const byWban = wban === noWban ? [] : stations.filter((station) => station.wban === wban);
  if (byWban.length > 0) return best(byWban, span);
  return usaf === noUsaf || usaf === '-' ? null : best(stations.filter((station) => station.usaf === usaf), span);
}

/**
 * The station of an identifier as files write it: ICAO, or ICAO without the K of the 48 states; USAF and WBAN number
 * together (72565003017) or USAF alone (725650); WBAN as the climatology network has it (USW00003017).
 */
export function stationOfIdentifier(identifier: string, span: DaySpan): ListedStation | null {
  const wanted = identifier.trim().toUpperCase();
  if (wanted === '') return null;
  const both = /^([A-Z\d]\d{5})(\d{5})$/.exec(wanted);
  if (both !== null) return stationOfNumbers(both[1] ?? '', both[2] ?? '', span);
  const network = /^US[A-Z]000(\d{5})$/.exec(wanted);
  // No USAF number is '-', so that only the WBAN number is looked for.
  if (network !== null) return stationOfNumbers('-', network[1] ?? '', span);
  if (/^\d{6}$/.test(wanted)) return stationOfNumbers(wanted, noWban, span);
  const stations = listedStations();
  const exact = stations.filter((station) => station.icao === wanted);
  if (exact.length > 0) return best(exact, span);
  if (wanted.length !== 3) return null;
  return best(
    stations.filter((station) => station.icao === `K${wanted}`),
    span,
  );
}

/** Stations whose identifier, number or name holds the text; identifiers that begin with it first. */
export function findStations(text: string, most: number): ListedStation[] {
  const wanted = text.trim().toUpperCase();
  if (wanted === '') return [];
  const rank = (station: ListedStation) => {
    if (station.icao === wanted || station.icao === `K${wanted}`) return 0;
    if (station.icao.startsWith(wanted)) return 1;
    if (station.key.startsWith(wanted)) return 2;
    const name = station.name.toUpperCase();
    return name.startsWith(wanted) ? 3 : name.includes(wanted) ? 4 : 9;
  };
  return listedStations()
    .map((station) => ({ station, rank: rank(station) }))
    .filter((each) => each.rank < 9)
    .sort((a, b) => a.rank - b.rank || b.station.endDay - a.station.endDay)
    .slice(0, most)
    .map((each) => each.station);
}

/** The data's first and last day, yyyymmdd as numbers. */
export interface DaySpan {
  firstDay: number;
  lastDay: number;
}

function best(stations: ListedStation[], span: DaySpan): ListedStation | null {
  const covering = stations.filter(
    (station) => station.beginDay <= span.firstDay && station.endDay >= span.lastDay,
  );
  const from = covering.length > 0 ? covering : stations;
  return from.reduce<ListedStation | null>(
    (newest, station) => (newest === null || station.endDay > newest.endDay ? station : newest),
    null,
  );
}

/** 'CHICAGO O'HARE INTERNATIONAL AIRPORT' as a person would write it. */
function titleCase(name: string): string {
  return name
    .toLowerCase()
    .replaceAll(/(^|[\s/(-])[a-z]/g, (start) => start.toUpperCase())
    .replaceAll(/\bO'[a-z]/g, (start) => start.toUpperCase());
}
