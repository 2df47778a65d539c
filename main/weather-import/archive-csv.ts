import { columnsOf, headerOf, type Columns, type Role } from './archive-columns.ts';
import { minuteOfMonth } from './calendar.ts';
import { absent, emptyRow, fillReport } from './check-ranges.ts';
import { hundredths, nothing, numbersFrom, plainHundredths, textOf } from './digits.ts';
import { FileProblem } from './file-problem.ts';
import { OneStation } from './one-station.ts';
import type { Kind, Reader } from './reader.ts';
import { emptyReport } from './report-rows.ts';
import { splitRow, splitUnquoted } from './split-row.ts';
import { fourDigits, twoDigits } from './words.ts';

// Station archive of airport reports as CSV: a header names the columns, whose choice and units differ from export to
// export; M (or nothing) where missing; one row a report, routine and special alike, unmarked.
// Source: column list of the airport archive of the Iowa Environmental Mesonet ("ASOS-AWOS-METAR Data Download").
// Trap: an export can be ordered in local time and does not say so. The whole report, where it is in the file, has
// its own time in UTC; where the two disagree the file is refused (see timeDisagrees).

/** Rows whose own report is compared with the row's time, at the file's beginning. */
const comparedRows = 500;

const letterM = 77;
const lowerS = 115;
const hash = 35;
/** Length of a time: 2020-01-31 23:51. */
const timeBytes = 16;

export const archiveCsv: Kind = {
  recognises: (head) =>
    textOf(head, 0, Math.min(head.length, 8192))
      .split('\n')
      .filter((line) => !line.startsWith('#'))
      .slice(0, 1)
      .some((line) => headerOf(line) !== null),
  open: (sink, problems, options): Reader => {
    const report = emptyReport();
    const raw = emptyRow();
    const remarks: string[] = ['Special reports are in it and are not marked as such.'];
    const stations = new OneStation(options.stationInFile, problems, options.carried?.station);
    // The line that is read, kept here so that no row makes functions of its own: there are a million of them.
    let bytes: Uint8Array = new Uint8Array(0);
    let view = new DataView(bytes.buffer);
    let begin = 0;
    let end = 0;
    let isSpoilt = false;
    const example = () => textOf(bytes, begin, end);
    let columns: Columns | null = null;
    let headerLine: string | null = null;
    let compared = 0;
    let disagreeing = 0;

    if (options.carried !== undefined) {
      const found = headerOf(options.carried.header ?? '');
      if (found !== null) columns = columnsOf(found);
      compared = comparedRows;
    }

    /** Find the header; true when the line was one. */
    function header(bytes: Uint8Array, from: number, to: number, lineNumber: number): boolean {
      if (columns !== null) {
        if (!startsLikeHeader(bytes, from, to, columns.delimiter)) return false;
        problems.add('header again: line left out', lineNumber, () => textOf(bytes, from, to));
        return true;
      }
      headerLine = textOf(bytes, from, to);
      const found = headerOf(headerLine);
      if (found === null) throw new FileProblem('The header with the names of the columns is missing.');
      columns = columnsOf(found);
      remarks.push(...columns.remarks);
      return true;
    }

    function minuteFrom(year: number, month: number, at: number): number {
      const day = twoDigits(view, at + 8);
      const hour = twoDigits(view, at + 11);
      return minuteOfMonth(year, month, day, hour, twoDigits(view, at + 14));
    }

    /** The value in a column's cell in our unit; absent where there is none, or something else. */
    function valueOf(role: Role | undefined): number {
      if (role === undefined || columns === null) return absent;
      const start = columns.starts[role.at] ?? 0;
      const stop = columns.ends[role.at] ?? 0;
      if (stop - start === 1 && bytes[start] === letterM) return absent;
      const value = plainHundredths(bytes, start, stop);
      if (value >= numbersFrom) return role.convert(value);
      if (value !== nothing && !isNull(bytes, start, stop)) isSpoilt = true;
      return absent;
    }

    /** Count a row by the first of its columns that holds something else than a number. */
    function tellSpoilt(lineNumber: number): void {
      if (columns === null) return;
      for (const { at, inWords, name } of columns.roles) {
        const start = columns.starts[at] ?? 0;
        const stop = columns.ends[at] ?? 0;
        const value = hundredths(bytes, start, stop);
        if (value >= numbersFrom || value === nothing || isNull(bytes, start, stop)) continue;
        problems.add(
          `${inWords} (${name}) is not a number: row left out`,
          lineNumber,
          () => `${name} is "${textOf(bytes, start, stop)}"`,
        );
        return;
      }
    }

    function compare(rest: string, minute: number): void {
      const agrees = reportAgrees(rest, minute);
      if (agrees === null) return;
      compared++;
      if (!agrees) disagreeing++;
      if (compared >= 20 && disagreeing * 2 > compared)
        throw new FileProblem(
          'The times of its rows are not those of the reports beside them, which are in UTC: the file was ordered in local time. Fetch it again in UTC.',
        );
    }

    return {
      kind: 'archive-csv',
      kindInWords: 'station archive of airport reports (CSV)',
      nature: 'observed',
      remarks,
      stationsInFile: () => stations.list(),
      stretches: {
        carried: () => {
          const station = stations.carried();
          const isSettled = columns?.hasReport === false || compared === comparedRows;
          return station === null || !isSettled ? null : { station, header: headerLine };
        },
        seen: () => ({ stations: stations.list(), places: [] }),
        take: (seen) => {
          if (!stations.canTake(seen)) return false;
          stations.take(seen);
          return true;
        },
      },
      line(lineBytes, from, to, lineNumber) {
        if (lineBytes !== bytes) {
          bytes = lineBytes;
          view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
        }
        begin = from;
        end = to;
        if (to === from || bytes[from] === hash) return;
        if (columns === null || bytes[from] === lowerS) if (header(bytes, from, to, lineNumber)) return;
        const { starts, ends, roleOf, delimiter, lastNeeded, stationColumn, timeColumn, moreBehind } =
          columns as Columns;

        // What comes after the last column that is read is not looked at.
        const unquoted = splitUnquoted(view, from, to, delimiter, starts, ends);
        const found = unquoted >= 0 ? unquoted : splitRow(bytes, from, to, delimiter, starts, ends);
        // A last column that touches the end of a cut row may have lost digits.
        if (found <= lastNeeded || (found === lastNeeded + 1 && moreBehind)) {
          problems.add('row cut short: left out', lineNumber, example);
          return;
        }
        const stationFrom = starts[stationColumn] ?? from;
        if (!stations.takes(bytes, stationFrom, ends[stationColumn] ?? from, lineNumber, example)) return;

        const timeFrom = starts[timeColumn] ?? from;
        const isTime = (ends[timeColumn] ?? from) - timeFrom >= timeBytes;
        const year = isTime ? fourDigits(view, timeFrom) : -1;
        const month = isTime ? twoDigits(view, timeFrom + 5) : -1;
        const minute = isTime ? minuteFrom(year, month, timeFrom) : -1;
        if (minute < 0) {
          problems.add('no such date or time: row left out', lineNumber, example);
          return;
        }

        isSpoilt = false;
        raw.temperatureC100 = valueOf(roleOf.temperatureC100);
        raw.dewPointC100 = valueOf(roleOf.dewPointC100);
        raw.altimeterSettingHpa100 = valueOf(roleOf.altimeterSettingHpa100);
        raw.seaLevelPressureHpa100 = valueOf(roleOf.seaLevelPressureHpa100);
        raw.windFromDeg = valueOf(roleOf.windFromDeg);
        raw.windSpeedMs100 = valueOf(roleOf.windSpeedMs100);
        raw.gustMs100 = valueOf(roleOf.gustMs100);
        if (isSpoilt) {
          tellSpoilt(lineNumber);
          return;
        }
        if (!fillReport(report.values, raw, 0, problems, lineNumber, example)) {
          problems.add('no value in it that is kept: row left out', lineNumber, example);
          return;
        }
        if (compared < comparedRows && columns?.hasReport === true)
          compare(textOf(bytes, ends[lastNeeded] ?? to, to), minute);
        report.monthIndex = year * 12 + month - 1;
        report.minuteOfMonth = minute;
        sink.add(report);
      },
    };
  },
};

function startsLikeHeader(bytes: Uint8Array, from: number, to: number, delimiter: number): boolean {
  return to - from > 7 && textOf(bytes, from, from + 7) === 'station' && bytes[from + 7] === delimiter;
}

function isNull(bytes: Uint8Array, from: number, to: number): boolean {
  return /^(m|null|none)$/i.test(textOf(bytes, from, to).trim());
}

/** Whether a report's own time (KJFK 010051Z) is that of the row; null where no time is found. */
function reportAgrees(rest: string, minuteOfMonthOfRow: number): boolean | null {
  const time = /\b(\d\d)(\d\d)(\d\d)Z\b/.exec(rest);
  if (time === null) return null;
  const [, day, hour, minute] = time;
  return ((Number(day) - 1) * 24 + Number(hour)) * 60 + Number(minute) === minuteOfMonthOfRow;
}
