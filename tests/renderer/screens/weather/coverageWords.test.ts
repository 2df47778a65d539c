import { expect, test } from 'vitest';
import {
  cellWords,
  changesSource,
  gapWords,
  percentOf,
  yearRows,
  type Coverage,
} from '../../../../renderer/screens/weather/coverageWords.ts';

const plain = (text: string) => text.replaceAll(/[\u2009\u2060]/g, '').replaceAll('\u00a0', ' ');
const month = (year: number, of: number, hourCount: number, sources: number[]) => ({
  year,
  month: of,
  hourCount,
  possibleCount: 744,
  sources,
});
const coverage: Coverage = {
  months: [
    month(2011, 12, 744, [0]),
    month(2012, 1, 743, [1, 0]),
    month(2012, 2, 0, []),
    month(2012, 3, 3, [2]),
  ],
  gaps: [],
  sources: [
    { importId: 1, fileName: '2011.gz', kind: 'isd-fixed' },
    { importId: 2, fileName: '2012.gz', kind: 'isd-fixed' },
    { importId: 3, fileName: 'asos.csv', kind: 'archive-csv' },
  ],
  hourCount: 1490,
  marked: { spikeCount: 0, stuckCount: 0, suspectCount: 0 },
};

test('percents are rounded down: 100 only where no hour is missing, 0 only where none is there', () => {
  expect(coverage.months.map(percentOf)).toEqual([100, 99, 0, 1]);
});

test('years are rows of twelve, empty before the record begins and after it ends', () => {
  const rows = yearRows(coverage.months);
  expect(rows.map(({ year, months }) => [year, months.filter((cell) => cell !== null).length])).toEqual([
    [2011, 1],
    [2012, 3],
  ]);
});

test('many empty years on end are one row, and an hour spilt into a month without a file is no row', () => {
  const empty = Array.from({ length: 36 }, (_, at) =>
    month(2012 + Math.floor(at / 12), (at % 12) + 1, 0, []),
  );
  const rows = yearRows([
    month(2011, 12, 700, [0]),
    ...empty,
    month(2015, 1, 744, [1]),
    month(2015, 2, 1, []),
  ]);
  expect(rows.map(({ year, lastYear, months }) => [year, lastYear, months.length])).toEqual([
    [2011, 2011, 12],
    [2012, 2014, 0],
    [2015, 2015, 12],
  ]);
  expect(rows.at(-1)?.months.filter((cell) => cell !== null)).toHaveLength(1);
  // Two empty years are shown as they are.
  expect(yearRows([month(2011, 12, 700, [0]), ...empty.slice(0, 24), month(2014, 1, 1, [1])])).toHaveLength(
    4,
  );
});

test('a month says its hours, its files and where the kind of file changes', () => {
  const [december, january, february, march] = coverage.months;
  if (december === undefined || january === undefined || february === undefined || march === undefined)
    throw new Error();
  expect(plain(cellWords(coverage, january))).toBe(
    'January 2012: 743 of 744 hours, 99 percent; from 2012.gz and 2011.gz',
  );
  expect(coverage.months.map((cell) => changesSource(coverage, cell))).toEqual([false, false, false, false]);
  const adjacent = { ...coverage, months: [january, { ...march, month: 2 }] };
  expect(plain(cellWords(adjacent, adjacent.months[1] ?? march))).toBe(
    'February 2012: 3 of 744 hours, 1 percent; from asos.csv; another kind of file than the month before',
  );
  expect(gapWords({ fromEpochS: Date.UTC(2012, 4, 3) / 1000, hourCount: 17 * 24 + 5 })).toBe(
    'from 3 May 2012, 17 days',
  );
});
