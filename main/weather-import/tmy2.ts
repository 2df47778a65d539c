import { fixedDigits, textOf } from './digits.ts';
import { FileProblem } from './file-problem.ts';
import type { Kind } from './reader.ts';
import { openLayout, type Field, type Layout } from './typical-year.ts';
import { asIs, fromTenths, toWhole } from './units.ts';

// Typical years of 1961 to 1990 in fixed columns: one line for the station, then a line of 142 characters an hour, each
// figure with a letter for its source and a digit for its uncertainty. Local standard time, hour ending.
// Source: "User's Manual for TMY2s", NREL/SP-463-7668 (June 1995), tables 3-1 (header) and 3-2 (hourly records). The
// places of the header are checked against the manual's tables as quoted elsewhere; those of the hourly records are
// from memory, agree with the manual's FORTRAN format in sum, and no real file was at hand. Positions count from 1.

const firstYear = 61;
const lastYear = 90;
const recordLength = 142;
const wholeBeginning =
  /^.\d{5} .{22} [A-Z]{2} [ +-]{0,2}\d{1,2} [NS] [ \d]\d [ \d]\d [EW] [ \d]{2}\d [ \d]\d {2}[ \d-]{3}\d\s*?\r?\n.\d{8}/;

/** Position and length of each figure that is read, as the manual counts. */
const columns: readonly (Omit<Field, 'at'> & { position: number; length: number })[] = [
  { position: 68, length: 4, ...field('temperatureC100', fromTenths, 9999, 'temperature') },
  { position: 74, length: 4, ...field('dewPointC100', fromTenths, 9999, 'dew point') },
  { position: 85, length: 4, ...field('stationPressureHpa100', asIs, 9999, 'pressure') },
  { position: 91, length: 3, ...field('windFromDeg', toWhole, 999, 'wind direction') },
  { position: 96, length: 3, ...field('windSpeedMs100', fromTenths, 999, 'wind speed') },
];

function field(
  column: Field['column'],
  convert: Field['convert'],
  missing: number,
  inWords: string,
): Omit<Field, 'at'> {
  return { column, convert, missingAs: missing * 100, inWords };
}

export const tmy2: Kind = {
  recognises: (head) => wholeBeginning.test(textOf(head, 0, Math.min(head.length, 300))),
  open: (sink, problems, _options, head) => {
    const first = textOf(head, 0, Math.min(head.length, 100)).split('\n')[0] ?? '';
    return openLayout({ ...layoutOf(first), ...hourly }, sink, problems);
  },
};

const hourly: Pick<
  Layout,
  'kind' | 'kindInWords' | 'headerLines' | 'fields' | 'leastCells' | 'split' | 'time'
> = {
  kind: 'tmy2',
  kindInWords: 'typical year (TMY2)',
  headerLines: 1,
  // The first cell is the date.
  fields: columns.map((column, index) => ({ ...column, at: index + 1 })),
  leastCells: columns.length + 1,
  split: (_bytes, from, to, starts, ends) => {
    if (to - from < recordLength) return 0;
    starts[0] = from + 1;
    ends[0] = from + 9;
    columns.forEach(({ position, length }, index) => {
      starts[index + 1] = from + position - 1;
      ends[index + 1] = from + position - 1 + length;
    });
    return columns.length + 1;
  },
  time: (bytes, starts, _ends, into) => {
    const at = starts[0] ?? 0;
    const year = fixedDigits(bytes, at, 2);
    for (let part = 1; part < 4; part++) into[part] = fixedDigits(bytes, at + 2 * part, 2);
    into[0] = 1900 + year;
    return year >= firstYear && year <= lastYear && into.every((value) => value >= 0);
  },
};

function layoutOf(header: string): Pick<Layout, 'identifier' | 'place' | 'offsetMinutes'> {
  const at = (first: number, last: number) => header.slice(first - 1, last).trim();
  const angle = (letter: number, degrees: [number, number], minutes: [number, number]) =>
    (/[SW]/.test(at(letter, letter)) ? -1 : 1) * (Number(at(...degrees)) + Number(at(...minutes)) / 60);
  const latitudeDeg = angle(38, [40, 41], [43, 44]);
  const longitudeDeg = angle(46, [48, 50], [52, 53]);
  const zoneH = Number(at(34, 36).replace(/\s/g, ''));
  const elevationM = at(56, 59) === '' ? NaN : Number(at(56, 59));
  if (!(Math.abs(zoneH) <= 14)) throw new FileProblem(`Its first line gives no time zone ('${at(34, 36)}').`);
  if (!(Math.abs(latitudeDeg) <= 90 && Math.abs(longitudeDeg) <= 180))
    throw new FileProblem(`Its first line gives no place ('${at(38, 53)}').`);
  return {
    identifier: at(2, 6),
    offsetMinutes: Math.round(zoneH * 60),
    place: {
      name: at(8, 29).replaceAll('_', ' '),
      latitudeDeg,
      longitudeDeg,
      elevationM: elevationM >= -500 && elevationM <= 6000 ? elevationM : null,
      rowCount: 0,
      placedRowCount: 0,
    },
  };
}
