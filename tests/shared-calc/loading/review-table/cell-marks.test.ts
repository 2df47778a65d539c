import { expect, test } from 'vitest';
import { cellMarks } from '../../../../shared-calc/loading/review-table/cell-marks.ts';
import { rowOf, termsOf } from '../../../../shared-calc/loading/review-table/begin-table.ts';
import type { ReviewTableRecord } from '../../../../shared-calc/loading/review-table/table-record.ts';
import { exampleLoading } from '../../../main/example-aircraft.ts';

function table(alter: (copy: ReviewTableRecord) => void = () => undefined): ReviewTableRecord {
  const copy: ReviewTableRecord = {
    aircraftId: 'two-seater',
    terms: termsOf(exampleLoading()),
    split: 'even',
    fuelDoubtL: 1,
    rows: [
      { ...rowOf(exampleLoading(), () => 'one'), name: 'Two friends' },
      { id: 'two', name: 'Nobody', items: [] },
    ],
    columns: [
      { id: 'full', kind: 'full' },
      { id: 'some', kind: 'total', totalL: 40 },
    ],
  };
  alter(copy);
  return copy;
}

/** Which cells, by row and column, have another mark than in the table as it is. */
function marked(alter: (copy: ReviewTableRecord) => void): string[] {
  const [was, is] = [cellMarks(table()), cellMarks(table(alter))];
  return [0, 1].flatMap((row) =>
    [0, 1]
      .filter((column) => was(row, column) !== is(row, column))
      .map((column) => `${String(row)}${String(column)}`),
  );
}

test('a mark changes with the entries of its own row and column and of what all share, and with nothing else', () => {
  expect(marked(() => undefined)).toEqual([]);
  expect(marked((copy) => copy.rows.forEach((row) => (row.name = 'Älpler')))).toEqual([]);
  expect(marked((copy) => copy.rows[0]?.items.pop())).toEqual(['00', '01']);
  expect(marked((copy) => (copy.columns[1] = { id: 'some', kind: 'total', totalL: 41 }))).toEqual([
    '01',
    '11',
  ]);
  expect(marked((copy) => (copy.columns[0] = { id: 'another', kind: 'full' }))).toEqual([]);
  expect(marked((copy) => (copy.terms.flight.cruiseLPerH += 1))).toEqual(['00', '01', '10', '11']);
  expect(marked((copy) => (copy.fuelDoubtL = 2))).toEqual(['00', '01', '10', '11']);
});

test('a place that is not there has no mark', () => {
  expect(cellMarks(table())(2, 0)).toBe('');
  expect(cellMarks(table())(0, -1)).toBe('');
});
