import type { GaugeReading } from '../fill-run.ts';
import { printedSpan, readingText, type GaugeScale } from '../gauge-scale.ts';
import { parseReading } from '../parse-reading.ts';
import type { ContainerRecord, FillTestRecord } from '../records.ts';
import { ENDS, readingUnit, RUN_COLUMNS, STARTS } from './columns.ts';

/**
 * All runs of a fill test as CSV (RFC 4180), a row a pour, volumes in litres and readings as the gauge prints them.
 * @throws RangeProblem for a scale outside its ranges
 * @see runsFromCsv the other way round
 */
export function runsToCsv(
  test: Pick<FillTestRecord, 'runs' | 'scale'>,
  containers: readonly Pick<ContainerRecord, 'id' | 'name'>[],
): string {
  const unit = readingUnit(test.scale);
  const header = RUN_COLUMNS.map((column) =>
    column.replace('WRITTEN_READING', `written_reading_${unit}`).replace('READING', `reading_${unit}`),
  );
  const rows = test.runs.flatMap((run, index) =>
    run.pours.map((pour) => [
      String(index + 1),
      run.direction,
      STARTS[run.start.from],
      run.start.from === 'known' ? decimal(run.start.usableL) : '',
      run.startSdL === null ? '' : decimal(run.startSdL),
      containers.find(({ id }) => id === run.containerId)?.name ?? '',
      run.endsAt === null ? '' : ENDS[run.endsAt],
      new Date(pour.atEpochS * 1000).toISOString(),
      decimal(pour.volumeL),
      pour.reading === null ? '' : exactReadingText(pour.reading, test.scale),
      pour.stickMm == null ? '' : decimal(pour.stickMm),
      pour.asideReason ?? '',
      pour.written === null ? '' : decimal(pour.written.volumeL),
      pour.written?.reading == null ? '' : exactReadingText(pour.written.reading, test.scale),
    ]),
  );
  return [header, ...rows].map((cells) => `${cells.map(quoted).join(',')}\r\n`).join('');
}

/** As the gauge prints it where that says all; else with every digit, so that it comes back as it was. */
function exactReadingText(reading: GaugeReading, scale: GaugeScale): string {
  const short = readingText(reading, scale).replaceAll('\u00a0', ' ');
  if (reading.at !== 'scale') return reading.at === 'emptyStop' ? 'E' : 'F';
  const parsed = parseReading(short, scale);
  const { positionRatio } = reading;
  if (parsed.ok && parsed.reading.at === 'scale' && parsed.reading.positionRatio === positionRatio)
    return short;
  const { start, end } = printedSpan(scale);
  return decimal(start + positionRatio * (end - start), 15);
}

/** Without an exponent, which spreadsheets and people read differently; a nanolitre is close enough. */
function decimal(value: number, places = 9): string {
  return value.toFixed(places).replace(/\.?0+$/, '');
}

function quoted(cell: string): string {
  return /[",\r\n;\t]|^\s|\s$/.test(cell) ? `"${cell.replaceAll('"', '""')}"` : cell;
}
