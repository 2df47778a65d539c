import type Database from 'better-sqlite3';
import { tableNames, rowsStatement } from '../../../../main/store/export/read-tables.ts';
import type { Value } from '../../../../main/store/export/csv.ts';

/** Where undo is not meant to reach: its own list, what was told, when a loading was last touched. */
const beyondUndo = {
  tables: ['change_record', 'notice'],
  columns: ['loading.changed_epoch_s'],
  /** Which row a screen looked at last. */
  settings: /^current\./,
};

interface Table {
  name: string;
  columns: string[];
  /** Columns that bind a row to another one; a mere mention (a column that may be null) does not. */
  links: { toTable: string; from: number; to: number }[];
  read: Database.Statement<[], Value[]>;
}

/**
 * Every table as a person finds it, as text to be compared byte by byte: what was removed or withdrawn is kept in
 * the file for undo and for what refers to it, so rows so marked, and rows that belong to them, are left out.
 */
export function visibleData(db: Database.Database): () => string {
  const tables = tableNames(db)
    .filter(({ name, type }) => type === 'table' && !beyondUndo.tables.includes(name))
    .map(({ name }) => name);
  const columnsOf = (table: string) =>
    db.prepare<[string], { name: string; notnull: number }>('SELECT * FROM pragma_table_info(?)').all(table);
  const described = tables.map((name): Table => {
    const columns = columnsOf(name);
    return {
      name,
      columns: columns.map((column) => column.name),
      links: db
        .prepare<[string], { table: string; from: string; to: string }>(
          'SELECT * FROM pragma_foreign_key_list(?)',
        )
        .all(name)
        .map(({ table, from, to }) => ({
          toTable: table,
          from: columns.findIndex((column) => column.name === from && column.notnull === 1),
          to: columnsOf(table).findIndex((column) => column.name === to),
        }))
        .filter(({ from }) => from >= 0),
      read: rowsStatement(db, name),
    };
  });
  return () => textOf(described);
}

function textOf(tables: readonly Table[]): string {
  const shown = new Map(tables.map((table) => [table.name, table.read.all().filter(isShown(table))]));
  while (tables.some((table) => dropsOrphans(table, shown)));
  return tables
    .map(({ name, columns }) => {
      const isCompared = columns.map((column) => !beyondUndo.columns.includes(`${name}.${column}`));
      const rows = shown.get(name) ?? [];
      return `${name}\n${rows.map((row) => JSON.stringify(row.filter((_, index) => isCompared[index]))).join('\n')}`;
    })
    .join('\n');
}

function isShown({ name, columns }: Table): (row: Value[]) => boolean {
  const marks = ['removed', 'withdrawn'].map((mark) => columns.indexOf(mark)).filter((index) => index >= 0);
  const key = columns.indexOf('key');
  return (row) =>
    marks.every((mark) => row[mark] !== 1) &&
    !(name === 'setting' && beyondUndo.settings.test(String(row[key])));
}

/** True where rows had to go because what they belong to is not shown; then others may have to go with them. */
function dropsOrphans({ name, links }: Table, shown: Map<string, Value[][]>): boolean {
  const before = shown.get(name) ?? [];
  const kept = links.reduce((rows, { toTable, from, to }) => {
    const there = new Set(shown.get(toTable)?.map((row) => row[to]));
    return rows.filter((row) => there.has(row[from] ?? null));
  }, before);
  shown.set(name, kept);
  return kept.length < before.length;
}
