import { minuteOfMonth } from './calendar.ts';
import { absent, emptyRow, fillReport, type RawValues } from './check-ranges.ts';
import { fixedDigits, hundredths, integer, numbersFrom, textOf } from './digits.ts';
import { FileProblem } from './file-problem.ts';
import { putLocalTime } from './local-standard-time.ts';
import { emptyReport } from './report-rows.ts';
import type { ProblemList } from './problems.ts';
import type { Kind, PlaceInFile, Reader, Sink } from './reader.ts';
import { headerNames, splitRow } from './split-row.ts';
import { asIs, fromPascal, toWhole, type Convert } from './units.ts';

// Typical years: twelve months picked from different years and joined, hours filled and modelled. Local standard time,
// hour ending: hour 1 is the reading at 01:00, hour 24 that at 00:00 of the next day.
// Sources: "Auxiliary Programs", EnergyPlus Weather File (EPW) Data Dictionary, US Department of Energy; "Users Manual
// for TMY3 Data Sets", NREL/TP-581-43156 (revised May 2008), table of data fields.

export interface Field {
  column: keyof RawValues;
  at: number;
  /** In hundredths of the file's unit. */
  missingAs: number;
  convert: Convert;
  inWords: string;
}

export interface Layout {
  kind: string;
  kindInWords: string;
  headerLines: number;
  identifier: string;
  place: PlaceInFile;
  offsetMinutes: number;
  fields: readonly Field[];
  /** Cells that a whole row has at the least. */
  leastCells: number;
  /** Where the cells begin and end, and how many were found; left out, they are separated by commas. */
  split?(bytes: Uint8Array, from: number, to: number, starts: Int32Array, ends: Int32Array): number;
  /** Year, month, day and hour (1 to 24) into the array; false where they are no numbers. */
  time(bytes: Uint8Array, starts: Int32Array, ends: Int32Array, into: number[]): boolean;
}

const hourOfNextDay = 24;

export function openLayout(layout: Layout, sink: Sink, problems: ProblemList): Reader {
  const cells = Math.max(...layout.fields.map(({ at }) => at)) + 1;
  const starts = new Int32Array(cells);
  const ends = new Int32Array(cells);
  const report = emptyReport();
  const raw = emptyRow();
  const time = [0, 0, 0, 0];
  let rowCount = 0;
  return {
    kind: layout.kind,
    kindInWords: layout.kindInWords,
    nature: 'typical year',
    remarks: [
      'A typical year, joined from months of different years: it tells what is usual, never how many days in ten.',
      'Hours are hour endings in local standard time: 24:00 is 00:00 of the next day, on 31 December of 1 January after it.',
    ],
    stationsInFile: () => [{ identifier: layout.identifier, rowCount }],
    placeInFile: () => ({ ...layout.place, rowCount, placedRowCount: rowCount }),
    line(bytes, from, to, lineNumber) {
      if (lineNumber <= layout.headerLines || to === from) return;
      const example = () => textOf(bytes, from, to);
      const found =
        layout.split?.(bytes, from, to, starts, ends) ?? commaSplit(bytes, from, to, starts, ends);
      if (found < layout.leastCells) {
        problems.add('row cut short: left out', lineNumber, example);
        return;
      }
      if (!layout.time(bytes, starts, ends, time)) {
        problems.add('no such date or hour: row left out', lineNumber, example);
        return;
      }
      const [year = 0, month = 0, day = 0, hour = 0] = time;
      const midnight = hour === hourOfNextDay;
      const minute = minuteOfMonth(year, month, day, midnight ? 0 : hour, 0);
      if (minute < 0 || hour === 0) {
        problems.add('no such date or hour: row left out', lineNumber, example);
        return;
      }
      rowCount++;
      for (const { column, at, missingAs, convert, inWords } of layout.fields) {
        const value = hundredths(bytes, starts[at] ?? 0, ends[at] ?? 0);
        if (value < numbersFrom) {
          problems.add(`${inWords} is not a number: row left out`, lineNumber, example);
          return;
        }
        raw[column] = value === missingAs ? absent : convert(value);
      }
      if (!fillReport(report.values, raw, 0, problems, lineNumber, example)) {
        problems.add('no value in it that is kept: row left out', lineNumber, example);
        return;
      }
      putLocalTime(report, year, month, midnight ? minute + 1440 : minute, layout.offsetMinutes);
      sink.add(report);
    },
  };
}

const comma = 44;

/** Places of the first cells, as many as there is room for; counts all of them. */
function commaSplit(
  bytes: Uint8Array,
  from: number,
  to: number,
  starts: Int32Array,
  ends: Int32Array,
): number {
  const cells = starts.length;
  let count = splitRow(bytes, from, to, comma, starts, ends);
  if (count > cells) for (let at = ends[cells - 1] ?? to; ++at < to;) if (bytes[at] === comma) count++;
  return count;
}

export const epw: Kind = {
  recognises: (head) => /^LOCATION,/.test(textOf(head, 0, Math.min(head.length, 20))),
  open: (sink, problems, _options, head) => {
    // LOCATION, city, state, country, source, number, latitude, longitude, zone in hours, elevation
    const cells = headerNames(textOf(head, 0, head.length).split('\n')[0] ?? '', ',');
    const [, name = '', , , , identifier = ''] = cells;
    return openLayout(
      {
        kind: 'epw',
        kindInWords: 'typical year (EPW)',
        headerLines: 8,
        identifier,
        ...placeOf(name, cells.slice(6, 8), cells[9], cells[8]),
        fields: [
          { column: 'temperatureC100', at: 6, missingAs: 9990, convert: asIs, inWords: 'temperature' },
          { column: 'dewPointC100', at: 7, missingAs: 9990, convert: asIs, inWords: 'dew point' },
          {
            column: 'stationPressureHpa100',
            at: 9,
            missingAs: 99_999_900,
            convert: fromPascal,
            inWords: 'pressure',
          },
          { column: 'windFromDeg', at: 20, missingAs: 99_900, convert: toWhole, inWords: 'wind direction' },
          { column: 'windSpeedMs100', at: 21, missingAs: 99_900, convert: asIs, inWords: 'wind speed' },
        ],
        leastCells: 30,
        time: (bytes, starts, ends, into) => {
          for (let i = 0; i < 4; i++) {
            into[i] = integer(bytes, starts[i] ?? 0, ends[i] ?? 0);
            if ((into[i] ?? 0) < numbersFrom) return false;
          }
          return true;
        },
      },
      sink,
      problems,
    );
  },
};

const tmy3First =
  /^\d{5,6},"?[^",]*"?,[A-Z]{2},-?[\d.]+,-?[\d.]+,-?[\d.]+,-?[\d.]+\r?\n"?Date \(MM\/DD\/YYYY\)/;

export const tmy3: Kind = {
  recognises: (head) => tmy3First.test(textOf(head, 0, Math.min(head.length, 500))),
  open: (sink, problems, _options, head) => {
    const lines = textOf(head, 0, head.length).split('\n');
    // number, name, state, zone in hours, latitude, longitude, elevation
    const first = headerNames(lines[0] ?? '', ',');
    const headings = headerNames(lines[1] ?? '', ',');
    const field = (heading: string, rest: Omit<Field, 'at' | 'missingAs'>): Field => {
      const at = headings.indexOf(heading);
      if (at < 0) throw new FileProblem(`Its headings have no '${heading}'.`);
      return { at, missingAs: -990_000, ...rest };
    };
    return openLayout(
      {
        kind: 'tmy3',
        kindInWords: 'typical year (TMY3)',
        headerLines: 2,
        identifier: first[0] ?? '',
        ...placeOf(first[1] ?? '', first.slice(4, 6), first[6], first[3]),
        fields: [
          field('Dry-bulb (C)', { column: 'temperatureC100', convert: asIs, inWords: 'temperature' }),
          field('Dew-point (C)', { column: 'dewPointC100', convert: asIs, inWords: 'dew point' }),
          field('Pressure (mbar)', { column: 'stationPressureHpa100', convert: asIs, inWords: 'pressure' }),
          field('Wdir (degrees)', { column: 'windFromDeg', convert: toWhole, inWords: 'wind direction' }),
          field('Wspd (m/s)', { column: 'windSpeedMs100', convert: asIs, inWords: 'wind speed' }),
        ],
        leastCells: headings.length,
        time: (bytes, starts, ends, into) => {
          const date = starts[0] ?? 0;
          const clock = starts[1] ?? 0;
          if ((ends[0] ?? 0) - date !== 10 || (ends[1] ?? 0) - clock !== 5) return false;
          into[0] = fixedDigits(bytes, date + 6, 4);
          into[1] = fixedDigits(bytes, date, 2);
          into[2] = fixedDigits(bytes, date + 3, 2);
          into[3] = fixedDigits(bytes, clock, 2);
          return fixedDigits(bytes, clock + 3, 2) === 0;
        },
      },
      sink,
      problems,
    );
  },
};

function placeOf(
  name: string,
  [latitude = '', longitude = '']: string[],
  elevation = '',
  zone = '',
): { place: PlaceInFile; offsetMinutes: number } {
  const [latitudeDeg, longitudeDeg, elevationM, zoneH] = [latitude, longitude, elevation, zone].map((text) =>
    text === '' ? NaN : Number(text),
  ) as [number, number, number, number];
  if (!(Math.abs(zoneH) <= 14)) throw new FileProblem(`Its first line gives no time zone ('${zone}').`);
  if (!(Math.abs(latitudeDeg) <= 90 && Math.abs(longitudeDeg) <= 180))
    throw new FileProblem(`Its first line gives no place ('${latitude}', '${longitude}').`);
  return {
    place: {
      name,
      latitudeDeg,
      longitudeDeg,
      elevationM: elevationM >= -500 && elevationM <= 6000 ? elevationM : null,
      rowCount: 0,
      placedRowCount: 0,
    },
    offsetMinutes: Math.round(zoneH * 60),
  };
}
