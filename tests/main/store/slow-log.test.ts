import Database from 'better-sqlite3';
import { expect, test } from 'vitest';
import { logSlowStatements } from '../../../main/store/slow-log.ts';

// Counts to two million: some 100 ms on any machine of today.
const slow = `WITH RECURSIVE n(i) AS (SELECT 1 UNION ALL SELECT i + 1 FROM n WHERE i < 2000000)
              SELECT count(*) AS count FROM n`;

test('only statements slower than asked are logged, with their answers unchanged', () => {
  const lines: string[] = [];
  const db = new Database(':memory:');
  logSlowStatements(db, '20', (line) => lines.push(line));
  expect(db.prepare('SELECT 1 AS one').all()).toEqual([{ one: 1 }]);
  expect(lines).toEqual([]);
  expect(db.prepare(slow).get()).toEqual({ count: 2_000_000 });
  expect(lines).toHaveLength(1);
  expect(lines[0]).toMatch(/^slow statement, \d+\.\d ms: WITH RECURSIVE n\(i\) AS \(SELECT 1/);
  expect(db.prepare('SELECT 1 AS one').pluck().get()).toBe(1);
});

test('without the variable nothing is wrapped', () => {
  const db = new Database(':memory:');
  const { prepare } = db;
  logSlowStatements(db, undefined);
  logSlowStatements(db, 'not a number');
  expect(db.prepare).toBe(prepare);
});
