import { expect, test } from 'vitest';
import type { PendingFile, Preview } from '../../../../renderer/screens/weather/pendingFile.ts';
import { groupByStation } from '../../../../renderer/screens/weather/pendingSummary.ts';

const preview: Preview = {
  fileName: 'a.gz',
  sizeBytes: 1,
  kind: 'isd-fixed',
  kindInWords: 'fixed-width file',
  nature: 'observed',
  remarks: [],
  lineCount: 10,
  observationCount: 10,
  usableCount: 9,
  unusable: [{ reason: 'no pressure', count: 1 }],
  pressureFrom: { stationCount: 9, altimeterSettingCount: 0, seaLevelCount: 0 },
  firstEpochS: 1000,
  lastEpochS: 2000,
  stationsInFile: [],
  stationRead: null,
  placeInFile: null,
  skipped: [{ reason: 'cut short', count: 2, examples: [{ line: 3, text: 'x' }] }],
  stationGuess: null,
  stationProposal: null,
  stationRemarks: ['The list is taken.'],
  guessedFrom: null,
  sameImport: null,
};

function file(fileName: string, station: PendingFile['station'], change: Partial<Preview> = {}): PendingFile {
  return {
    key: fileName,
    fileName,
    path: `/${fileName}`,
    entry: null,
    choices: {},
    preview: { ...preview, ...change },
    known: null,
    problem: null,
    station,
    stationWords: 'Denver',
  };
}

test('files of one station are one line, also where the elevation in their records moved', () => {
  const groups = groupByStation([
    file('b.gz', null),
    file('2008.gz', { listKey: '725650-03017', elevationM: 1655 }),
    file('2009.gz', { listKey: '725650-03017', elevationM: 1656 }, { firstEpochS: 500, lastEpochS: 3000 }),
  ]);
  expect(groups.map(({ files }) => files.map(({ fileName }) => fileName))).toEqual([
    ['2008.gz', '2009.gz'],
    ['b.gz'],
  ]);
  expect(groups[0]).toMatchObject({
    firstEpochS: 500,
    lastEpochS: 3000,
    observationCount: 20,
    unusable: [{ reason: 'no pressure', count: 2 }],
    remarks: ['The list is taken.'],
  });
});

test('what is left out is counted over all files, with the first three examples by file and line', () => {
  const example = (line: number) => ({ line, text: String(line) });
  const [group] = groupByStation([
    file('a', null, { skipped: [{ reason: 'cut short', count: 5, examples: [1, 2].map(example) }] }),
    file('b', null, {
      skipped: [
        { reason: 'spike', count: 9, examples: [7].map(example) },
        { reason: 'cut short', count: 1, examples: [4, 5, 6].map(example) },
      ],
    }),
  ]);
  expect(group?.skipped).toEqual([
    { reason: 'spike', count: 9, examples: [{ fileName: 'b', line: 7, text: '7' }] },
    {
      reason: 'cut short',
      count: 6,
      examples: [
        { fileName: 'a', line: 1, text: '1' },
        { fileName: 'a', line: 2, text: '2' },
        { fileName: 'b', line: 4, text: '4' },
      ],
    },
  ]);
});
