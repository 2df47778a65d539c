import { columnEndings, describedTables } from './tables.ts';

export interface WrittenTable {
  file: string;
  table: string;
  columns: string[];
  rowsCount: number;
  /** Why reading stopped before the end of the table; null where it did not. */
  stoppedBy: string | null;
}

/** The README.txt of an export, for somebody who has only these files. */
export function exportReadme(
  libraryPath: string,
  schemaVersion: number,
  atEpochS: number,
  written: readonly WrittenTable[],
): string {
  const broken = written.filter((table) => table.stoppedBy !== null);
  const leftOut = Object.entries(describedTables).flatMap(([name, described]) =>
    'leftOut' in described ? [`  ${name}: ${described.leftOut}.`] : [],
  );
  return [
    'Everything in a Tarewing library, as plain files.',
    '',
    `Library: ${libraryPath}`,
    `Format: ${String(schemaVersion)}`,
    `Written: ${new Date(Math.floor(atEpochS) * 1000).toISOString().replace('.000', '')}`,
    '',
    ...(broken.length === 0
      ? []
      : [
          'NOT COMPLETE. The library could not be read to its end:',
          ...broken.map(
            (table) =>
              `  ${table.file}: stopped after ${String(table.rowsCount)} rows (${String(table.stoppedBy)}).`,
          ),
          '',
        ]),
    'The figures are as they were entered or imported. They advise; the approved flight manual decides.',
    '',
    'Each .csv file is one table: UTF-8, commas, one heading line, fields in quotes where needed (RFC 4180).',
    'A missing value is nothing between two commas; an empty text is "".',
    'library.json has the same rows once more, except those of views, with numbers and texts told apart and nulls as null.',
    '',
    'Files:',
    ...written.map((table) => {
      const described = describedTables[table.table];
      const about =
        described !== undefined && 'about' in described ? described.about : 'A table of another version.';
      return `  ${table.file} (${String(table.rowsCount)} rows): ${about}\n    ${table.columns.join(', ')}`;
    }),
    '',
    'Columns: the end of a name is the unit.',
    ...columnEndings.map(([ending, meaning]) => `  ${ending}: ${meaning}`),
    '',
    'Left out:',
    ...leftOut,
    '',
  ].join('\n');
}
