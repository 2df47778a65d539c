import { textOf } from './digits.ts';
import { FileProblem } from './file-problem.ts';
import { degrees } from './places-seen.ts';
import type { StandardTime } from './reader.ts';
import { headerNames } from './split-row.ts';

/** Among so many rows at the beginning the quoted reports vote. */
const votingRows = 200;

/**
 * What local standard time of a file of local climatological data is. First by the reports that its rows quote (a row
 * of 00:52 quotes 010552Z), then by the place in it, then as a
 * person gives it.
 * @param given minutes ahead of UTC
 * @throws FileProblem where nothing tells
 */
export async function lcdStandardTime(head: Uint8Array, given: number | undefined): Promise<StandardTime> {
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
    ) {
      const { standardOffsetMinutes } = await import('./standard-offset.ts');
      return {
        minutes: standardOffsetMinutes(latitudeDeg, longitudeDeg, year),
        from: 'by the place in it',
      };
    }
  }
  if (given !== undefined) return { minutes: given, from: 'as it was given' };
  throw new FileProblem(
    'Its times are local standard time, but neither a quoted report nor a place in it tells of which zone. Give the hours that its standard time is ahead of UTC.',
    'zone-needed',
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
