import { textOf } from './digits.ts';
import { FileProblem } from './file-problem.ts';
import { degrees } from './isd-csv.ts';
import { standardOffsetMinutes } from './local-standard-time.ts';
import { headerNames } from './split-row.ts';
import { listedStations } from './stations/station-list.ts';

/** How far a file's clock is ahead of UTC, and from what that is known ('by the reports quoted in it'). */
export interface FileOffset {
  minutes: number;
  from: string;
}

/** Among so many rows at the beginning the quoted reports vote. */
const votingRows = 200;

/**
 * What local standard time of a file of local climatological data is. First by the reports that its rows quote (a row
 * of 00:52 quotes 010552Z), then by the place in it, then by its station in the bundled list.
 * @throws FileProblem where nothing tells
 */
export function lcdOffset(head: Uint8Array): FileOffset {
  const lines = textOf(head, 0, head.length).split('\n');
  const names = headerNames(lines[0] ?? '', ',');
  const rows = lines
    .slice(1, -1)
    .filter((line) => line !== '')
    .slice(0, votingRows);
  const votes = new Map<number, number>();
  for (const row of rows) {
    const offset = offsetOfRow(row);
    if (offset !== null) votes.set(offset, (votes.get(offset) ?? 0) + 1);
  }
  const [most] = [...votes].sort((a, b) => b[1] - a[1]);
  if (most !== undefined) return { minutes: most[0], from: 'by the reports quoted in it' };

  for (const row of rows) {
    const cells = headerNames(row, ',');
    const cell = (name: string) => cells[names.indexOf(name)] ?? '';
    const year = Number(/\b(19|20)\d\d-\d\d-\d\d/.exec(row)?.[0].slice(0, 4));
    if (!(year > 1900)) continue;
    const [latitudeDeg, longitudeDeg] = [degrees(cell('LATITUDE')), degrees(cell('LONGITUDE'))];
    if (
      Math.abs(latitudeDeg) <= 90 &&
      Math.abs(longitudeDeg) <= 180 &&
      (latitudeDeg !== 0 || longitudeDeg !== 0)
    )
      return {
        minutes: standardOffsetMinutes(latitudeDeg, longitudeDeg, year),
        from: 'by the place in it',
      };
    const wban = /(\d{5})$/.exec(cell('STATION'))?.[1];
    const listed = listedStations().find((station) => station.wban === wban && wban !== '99999');
    if (listed !== undefined)
      return {
        minutes: standardOffsetMinutes(listed.latitudeDeg, listed.longitudeDeg, year),
        from: `by its station in the list, ${listed.name}`,
      };
  }
  throw new FileProblem(
    'Its times are local standard time, but neither a quoted report nor a place nor a listed station in it tells of which zone.',
  );
}

/** A row's stamp less the time of the report that it quotes, in minutes; null where that is no possible zone. */
function offsetOfRow(row: string): number | null {
  const stamp = /\b\d{4}-\d\d-(\d\d)[T ](\d\d):(\d\d)/.exec(row);
  const quoted = /\b(?:METAR|SPECI) (?:COR )?[A-Z][A-Z\d]{3} (\d\d)(\d\d)(\d\d)Z/.exec(row);
  if (stamp === null || quoted === null) return null;
  const minutes = ([, day, hour, minute]: RegExpExecArray) =>
    (Number(day) * 24 + Number(hour)) * 60 + Number(minute);
  let ahead = minutes(stamp) - minutes(quoted);
  // Across the month's end the day falls to 1.
  if (ahead > 20 * 1440) ahead -= quotedMonthMinutes(row);
  else if (ahead < -20 * 1440) ahead += quotedMonthMinutes(row);
  return Math.abs(ahead) <= 14 * 60 && ahead % 15 === 0 ? ahead : null;
}

/** Minutes of the row's own month or the one before: the difference of days is a whole month less the hours apart. */
function quotedMonthMinutes(row: string): number {
  const stamp = /\b(\d{4})-(\d\d)-(\d\d)/.exec(row);
  const days = new Date(
    Date.UTC(Number(stamp?.[1]), Number(stamp?.[2]) - (Number(stamp?.[3]) === 1 ? 1 : 0), 0),
  ).getUTCDate();
  return days * 1440;
}
