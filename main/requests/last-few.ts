import type Database from 'better-sqlite3';

/** What was made last on each connection, found again by its key: asking the same again makes nothing anew. */
export type LastFew<T> = (db: Database.Database, key: string, make: () => T) => T;

/**
 * Keep the last few of something costly for each connection, the one used last longest.
 * @param mostCount how many
 * @param sizeOf    what each takes, and how much all may take together; the newest is always kept
 */
export function lastFew<T>(
  mostCount: number,
  { sizeOf, mostSize }: { sizeOf: (value: T) => number; mostSize: number } = {
    sizeOf: () => 0,
    mostSize: 0,
  },
): LastFew<T> {
  const kept = new WeakMap<Database.Database, { key: string; value: T }[]>();
  return (db, key, make) => {
    const list = kept.get(db) ?? [];
    const found = list.find((each) => each.key === key) ?? { key, value: make() };
    let size = sizeOf(found.value);
    const others = list.filter((each) => each !== found).slice(0, mostCount - 1);
    const rest = others.filter(({ value }) => (size += sizeOf(value)) <= mostSize);
    kept.set(db, [found, ...rest]);
    return found.value;
  };
}
