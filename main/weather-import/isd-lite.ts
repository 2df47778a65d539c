import { absent, emptyRow, fillReport } from './check-ranges.ts';
import { minuteOfMonth } from './calendar.ts';
import { fixedDigits, integer, numbersFrom, textOf } from './digits.ts';
import { emptyReport } from './report-rows.ts';
import type { Kind, Reader } from './reader.ts';

// Compact hourly summaries: fixed columns, UTC, temperature in tenths of degC, sea-level pressure in tenths of hPa,
// wind in tenths of m/s, -9999 where missing. Each row stands for the report nearest its full hour, in the source's
// own choice, which has thrown out what failed its checks.
// Source: NOAA, "Integrated Surface Data - Lite Format Documentation" (isd-lite-format.txt).

const notReported = -9999;
/** Ends of the columns that are read; the sky and rain behind them are not kept. */
const columns = {
  temperature: [13, 19],
  dewPoint: [19, 25],
  pressure: [25, 31],
  direction: [31, 37],
  speed: [37, 43],
} as const;
const shortestLine = 43;
const layout = /^\d{4} \d\d \d\d \d\d[ \d-]{29}\d([ \d-]{18})?\r?\n/;

export const isdLite: Kind = {
  recognises: (head) => layout.test(textOf(head, 0, Math.min(head.length, 80))),
  open: (sink, problems): Reader => {
    const report = emptyReport();
    const raw = emptyRow();
    return {
      kind: 'isd-lite',
      kindInWords: 'compact hourly file of the Integrated Surface Data',
      nature: 'observed',
      remarks: [
        'It has only the pressure reduced to sea level: the least certain way to density altitude.',
        'Times are rounded to the full hour by its source.',
      ],
      stationsInFile: () => [],
      line(bytes, from, to, lineNumber) {
        const example = () => textOf(bytes, from, to);
        if (to - from < shortestLine) {
          if (to > from) problems.add('row cut short: left out', lineNumber, example);
          return;
        }
        const year = fixedDigits(bytes, from, 4);
        const month = fixedDigits(bytes, from + 5, 2);
        const minute = minuteOfMonth(
          year,
          month,
          fixedDigits(bytes, from + 8, 2),
          fixedDigits(bytes, from + 11, 2),
          0,
        );
        if (minute < 0) {
          problems.add('no such date or hour: row left out', lineNumber, example);
          return;
        }
        const temperature = integer(bytes, from + columns.temperature[0], from + columns.temperature[1]);
        const dewPoint = integer(bytes, from + columns.dewPoint[0], from + columns.dewPoint[1]);
        const pressure = integer(bytes, from + columns.pressure[0], from + columns.pressure[1]);
        const direction = integer(bytes, from + columns.direction[0], from + columns.direction[1]);
        const speed = integer(bytes, from + columns.speed[0], from + columns.speed[1]);
        if (Math.min(temperature, dewPoint, pressure, direction, speed) < numbersFrom) {
          problems.add('a column that is not a number: row left out', lineNumber, example);
          return;
        }
        raw.temperatureC100 = temperature === notReported ? absent : temperature * 10;
        raw.dewPointC100 = dewPoint === notReported ? absent : dewPoint * 10;
        raw.seaLevelPressureHpa100 = pressure === notReported ? absent : pressure * 10;
        raw.windFromDeg = direction === notReported ? absent : direction;
        raw.windSpeedMs100 = speed === notReported ? absent : speed * 10;
        if (!fillReport(report.values, raw, 0, problems, lineNumber, example)) {
          problems.add('no value in it that is kept: row left out', lineNumber, example);
          return;
        }
        report.monthIndex = year * 12 + month - 1;
        report.minuteOfMonth = minute;
        sink.add(report);
      },
    };
  },
};
