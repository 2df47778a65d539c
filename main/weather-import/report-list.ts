import { readReport, type WeatherReport } from '../../shared-calc/metar/report.ts';
import { reportEpochS } from '../../shared-calc/metar/report-time.ts';
import { flag } from '../store/observation-columns.ts';
import { minuteOfMonth, monthStartEpochS } from './calendar.ts';
import { absent, emptyRow, fillReport } from './check-ranges.ts';
import { textOf } from './digits.ts';
import { FileProblem } from './file-problem.ts';
import { emptyReport } from './report-rows.ts';
import { OneStation } from './one-station.ts';
import type { Kind, Reader } from './reader.ts';

// Lists of METAR and SPECI: lines with a stamp before the report (201301010053 METAR KDEN ...), cycle files (a line
// with date and time, then one with the report), or bare reports, whose year and month a person has to give.
// Source: FMH-1 chapter 12; WMO-No. 306, FM 15 and FM 16.

const stampBefore = /^(\d{4})[-/]?(\d\d)[-/]?(\d\d)[ T]?(\d\d):?(\d\d)(?::?\d\d)?Z?[ ,]+(?=[A-Z])/;
const stampAlone = /^(\d{4})\/(\d\d)\/(\d\d) (\d\d):(\d\d)\s*$/;
const reportBegins = /^(?:(?:METAR|SPECI)(?: COR)? )?[A-Z][A-Z\d]{3} \d{6}Z /;
/** A stamp further from its report's own time belongs to another. */
const furthestS = 12 * 3600;

export const reportList: Kind = {
  recognises: (head) =>
    textOf(head, 0, Math.min(head.length, 4096))
      .split(/\r?\n/)
      .slice(0, 8)
      .some((line) => reportBegins.test(line.replace(stampBefore, ''))),
  open: (sink, problems, options): Reader => {
    const report = emptyReport();
    const raw = emptyRow();
    const stations = new OneStation(options.stationInFile, problems);
    const remarks: string[] = [];
    let stampEpochS: number | null = null;
    let lastEpochS: number | null = null;

    /** The instant near to which the report lies; null where it has no time that could be. */
    function about(line: string): { epochS: number; stamped: boolean } {
      const before = stampBefore.exec(line);
      if (before !== null) return { epochS: epochOf(before) ?? NaN, stamped: true };
      if (stampEpochS !== null) return { epochS: stampEpochS, stamped: true };
      if (lastEpochS !== null) return { epochS: lastEpochS, stamped: false };
      const given = options.reportMonth;
      if (given === undefined)
        throw new FileProblem(
          'Its reports give only the day of the month. Say of which year and month the first of them is.',
          'month-needed',
        );
      remarks.push(
        'Year and month were given for its first report; the month steps where the day falls back.',
      );
      const day = Number(/ (\d\d)\d{4}Z /.exec(line)?.[1] ?? 1);
      return {
        epochS: monthStartEpochS(given.year * 12 + given.month - 1) + (day - 0.5) * 86_400,
        stamped: false,
      };
    }

    return {
      kind: 'report-list',
      kindInWords: 'list of weather reports (METAR and SPECI)',
      nature: 'observed',
      remarks,
      stationsInFile: () => stations.list(),
      line(bytes, from, to, lineNumber) {
        const line = textOf(bytes, from, to).trim();
        if (line === '') return;
        const alone = stampAlone.exec(line);
        if (alone !== null) {
          stampEpochS = epochOf(alone);
          if (stampEpochS === null)
            problems.add('no such date or time: line left out', lineNumber, () => line);
          return;
        }
        const text = line.replace(stampBefore, '');
        if (!reportBegins.test(text)) {
          problems.add('no report begins in it: line left out', lineNumber, () => line);
          return;
        }
        const read = readReport(text);
        if (read.time === null || read.station === null) {
          problems.add('no such day or time: report left out', lineNumber, () => line);
          return;
        }
        const near = about(line);
        if (Number.isNaN(near.epochS)) {
          problems.add('no such date or time: report left out', lineNumber, () => line);
          return;
        }
        const epochS = reportEpochS(read.time, near.epochS);
        if (near.stamped && Math.abs(epochS - near.epochS) > furthestS) {
          problems.add('stamp and time of the report disagree: report left out', lineNumber, () => line);
          return;
        }
        const name = Buffer.from(read.station, 'latin1');
        if (!stations.takes(name, 0, name.length, lineNumber, () => line)) return;
        lastEpochS = epochS;
        if (read.nil) {
          problems.add('report that says there is none (NIL): left out', lineNumber, () => line);
          return;
        }
        for (const group of read.malformed)
          problems.add(
            'group that is malformed: left out of its report',
            lineNumber,
            () => `${group} in ${text}`,
          );
        fillRaw(read);
        const flags =
          (read.type === 'SPECI' ? flag.special : 0) | (read.temperatureIsWhole ? flag.wholeDegrees : 0);
        if (!fillReport(report.values, raw, flags, problems, lineNumber, () => line)) {
          problems.add('no value in it that is kept: report left out', lineNumber, () => line);
          return;
        }
        const at = new Date(epochS * 1000);
        report.monthIndex = at.getUTCFullYear() * 12 + at.getUTCMonth();
        report.minuteOfMonth = ((at.getUTCDate() - 1) * 24 + at.getUTCHours()) * 60 + at.getUTCMinutes();
        sink.add(report);
      },
    };

    function fillRaw({
      temperatureC,
      dewPointC,
      settingHpa,
      seaLevelPressureHpa,
      wind,
    }: WeatherReport): void {
      raw.temperatureC100 = in100(temperatureC);
      raw.dewPointC100 = in100(dewPointC);
      raw.altimeterSettingHpa100 = in100(settingHpa);
      raw.seaLevelPressureHpa100 = in100(seaLevelPressureHpa);
      raw.windSpeedMs100 = in100(wind?.speed?.speedMs ?? null);
      raw.gustMs100 = in100(wind?.gust?.speedMs ?? null);
      raw.windFromDeg = wind?.fromDeg ?? absent;
    }
  },
};

function in100(value: number | null): number {
  return value === null ? absent : Math.round(value * 100);
}

function epochOf([, year, month, day, hour, minute]: RegExpExecArray): number | null {
  const of = minuteOfMonth(Number(year), Number(month), Number(day), Number(hour), Number(minute));
  return of < 0 ? null : monthStartEpochS(Number(year) * 12 + Number(month) - 1) + of * 60;
}
