import Database from 'better-sqlite3';
import { expect, test } from 'vitest';
import { lastFew } from '../../../main/requests/last-few.ts';

test('what was made last is found again, and what was used longest ago is made anew', () => {
  const db = new Database(':memory:');
  const made: string[] = [];
  const few = lastFew<string>(2);
  const ask = (key: string) =>
    few(db, key, () => {
      made.push(key);
      return key;
    });
  // Two by turns are each made once; a third drops the one that was used longest ago.
  for (const key of ['a', 'b', 'a', 'b', 'c', 'b', 'a']) expect(ask(key)).toBe(key);
  expect(made).toEqual(['a', 'b', 'c', 'a']);
});

test('together they take no more than is allowed, but for the newest, and connections share nothing', () => {
  const made: string[] = [];
  const few = lastFew<string>(5, { sizeOf: ({ length }) => length, mostSize: 4 });
  const [one, other] = [new Database(':memory:'), new Database(':memory:')];
  const ask = (db: Database.Database, key: string) =>
    few(db, key, () => {
      made.push(key);
      return key;
    });
  for (const key of ['aa', 'bb', 'aa', 'ccc', 'ccc', 'aa']) ask(one, key);
  expect(made).toEqual(['aa', 'bb', 'ccc', 'aa']);
  ask(other, 'aa');
  expect(made).toHaveLength(5);
});
