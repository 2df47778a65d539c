import type { ContainerRecord, FillTestRecord } from '../records.ts';
import { ENDS, readingUnit, RUN_COLUMNS, STARTS } from './columns.ts';
import { csvText, decimal, exactReadingText } from './write-cells.ts';

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
  return csvText([header, ...rows]);
}
