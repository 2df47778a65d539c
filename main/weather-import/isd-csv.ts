import { flag } from '../store/observation-columns.ts';
import { absent, emptyRow, fillReport } from './check-ranges.ts';
import { integer, numbersFrom, textOf } from './digits.ts';
import { readIsoStamp, type Stamp } from './iso-stamp.ts';
import { emptyReport } from './report-rows.ts';
import { NamedColumns } from './named-columns.ts';
import { OneStation } from './one-station.ts';
import { PlacesSeen } from './places-seen.ts';
import type { Kind, Reader } from './reader.ts';
import { isSpecial, leftOutAs } from './report-kinds.ts';
import { isdVerdict, SourceQuality } from './source-quality.ts';
import { firstLine, headerNames } from './split-row.ts';

// Global hourly CSV: the groups of the Integrated Surface Data, one a quoted field: TMP "+0150,1", WND
// "310,1,N,0093,1", MA1 "10220,5,09847,5". UTC. Only groups that occur have a column, so all goes by name.
// Source: as of isd-fixed.ts, CSV edition "Global Hourly" (NOAA/NCEI).

const needed = ['STATION', 'DATE', 'TMP', 'DEW', 'WND'];
const wanted = [...needed, 'LATITUDE', 'LONGITUDE', 'ELEVATION', 'NAME', 'REPORT_TYPE', 'SLP', 'MA1', 'OC1'];
const comma = 44;

export const isdCsv: Kind = {
  recognises: (head) => {
    const names = headerNames(firstLine(head) ?? '', ',');
    return needed.every((name) => names.includes(name));
  },
  open: (sink, problems, options, head): Reader => {
    const columns = new NamedColumns(head, ',', true, wanted, problems);
    const [station, date, tmp, dew, wnd, lat, lon, elev, name, type, slp, ma1, oc1] = wanted.map((each) =>
      columns.at(each),
    ) as [
      number,
      number,
      number,
      number,
      number,
      number,
      number,
      number,
      number,
      number,
      number,
      number,
      number,
    ];
    const { starts, ends } = columns;
    const report = emptyReport();
    const raw = emptyRow();
    const quality = new SourceQuality(problems);
    const stations = new OneStation(options.stationInFile, problems);
    const places = new PlacesSeen();
    const stamp: Stamp = { year: 0, month: 0, minute: 0 };
    let spoilt = false;

    /** One value of a packed group with the code behind it. */
    function packed(
      bytes: Uint8Array,
      column: number,
      part: number,
      missingAs: number,
      scale: number,
      words: string,
      suspectFlag: number,
      lineNumber: number,
      example: () => string,
    ): number {
      if (column < 0) return absent;
      const end = ends[column] ?? 0;
      let at = starts[column] ?? 0;
      if (at >= end) return absent;
      for (let skip = part; skip > 0; skip--) {
        while (at < end && bytes[at] !== comma) at++;
        at++;
      }
      let stop = at;
      while (stop < end && bytes[stop] !== comma) stop++;
      if (stop + 1 >= end && stop >= end) {
        spoilt = true;
        return absent;
      }
      const value = integer(bytes, bytes[at] === 43 ? at + 1 : at, stop);
      if (value < numbersFrom) {
        spoilt = true;
        return absent;
      }
      if (value === missingAs) return absent;
      // The code stands behind the value; between direction and speed there is the type code.
      return quality.apply(
        value * scale,
        isdVerdict(bytes[stop + 1] ?? 0),
        words,
        suspectFlag,
        lineNumber,
        example,
      );
    }

    return {
      kind: 'isd-csv',
      kindInWords: 'global hourly file of the Integrated Surface Data (CSV)',
      nature: 'observed',
      remarks: [],
      stationsInFile: () => stations.list(),
      placeInFile: () => places.most(),
      line(bytes, from, to, lineNumber) {
        if (!columns.row(bytes, from, to, lineNumber)) return;
        const example = () => textOf(bytes, from, to);
        if (!stations.takes(bytes, starts[station] ?? 0, ends[station] ?? 0, lineNumber, example)) return;
        const reportType = columns.text(bytes, type);
        const leftOut = leftOutAs(reportType);
        if (leftOut !== null) {
          problems.add(leftOut, lineNumber, example);
          return;
        }
        readIsoStamp(bytes, starts[date] ?? 0, ends[date] ?? 0, stamp);
        if (stamp.minute < 0) {
          problems.add('no such date or time: row left out', lineNumber, example);
          return;
        }
        quality.flags = isSpecial(reportType) ? flag.special : 0;
        spoilt = false;
        const air = (column: number, part: number, missingAs: number, words: string) =>
          packed(bytes, column, part, missingAs, 10, words, flag.suspectBySource, lineNumber, example);
        const wind = (column: number, part: number, missingAs: number, scale: number, words: string) =>
          packed(bytes, column, part, missingAs, scale, words, flag.suspectWindBySource, lineNumber, example);
        raw.temperatureC100 = air(tmp, 0, 9999, 'temperature');
        raw.dewPointC100 = air(dew, 0, 9999, 'dew point');
        raw.seaLevelPressureHpa100 = air(slp, 0, 99_999, 'sea-level pressure');
        raw.altimeterSettingHpa100 = air(ma1, 0, 99_999, 'altimeter setting');
        raw.stationPressureHpa100 = air(ma1, 2, 99_999, 'station pressure');
        raw.windSpeedMs100 = wind(wnd, 3, 9999, 10, 'wind speed');
        raw.windFromDeg = wind(wnd, 0, 999, 1, 'wind direction');
        raw.gustMs100 = wind(oc1, 0, 9999, 10, 'gust');
        if (spoilt) {
          problems.add('a column that is not a number: row left out', lineNumber, example);
          return;
        }
        if (!fillReport(report.values, raw, quality.flags, problems, lineNumber, example)) {
          problems.add('no value in it that is kept: row left out', lineNumber, example);
          return;
        }
        places.addTexts(columns.text(bytes, lat), columns.text(bytes, lon), columns.text(bytes, elev));
        if (name >= 0) places.named(columns.text(bytes, name));
        report.monthIndex = stamp.year * 12 + stamp.month - 1;
        report.minuteOfMonth = stamp.minute;
        sink.add(report);
      },
    };
  },
};
