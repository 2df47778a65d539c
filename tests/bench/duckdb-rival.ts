import { rmSync } from 'node:fs';

/** DuckDB's own way to the same rows: a table with a key, filled from a CSV. */
export interface DuckdbRival {
  /**
   * @param databasePath where the table is made, removed afterwards
   * @param columns name and type of each column that is read
   * @param key the columns that tell a row
   * @returns milliseconds from an empty file to all rows in it
   */
  importMs(
    databasePath: string,
    csvPath: string,
    columns: Readonly<Record<string, string>>,
    key: readonly string[],
  ): Promise<number>;
}

/** null, said in one line, where its binding does not load on this system. */
export async function duckdbRival(): Promise<DuckdbRival | null> {
  const client = await import('@duckdb/node-api').catch((error: unknown) => {
    console.log(
      `DuckDB is not at hand, the comparison with it is skipped: ${String(error).split('\n')[0] ?? ''}`,
    );
    return null;
  });
  if (client === null) return null;
  return {
    async importMs(databasePath, csvPath, columns, key) {
      const begun = performance.now();
      const instance = await client.DuckDBInstance.create(databasePath);
      const connection = await instance.connect();
      const names = Object.keys(columns);
      await connection.run(
        `CREATE TABLE observation (${names.map((name) => `${name} ${columns[name] ?? ''}`).join(', ')}, PRIMARY KEY (${key.join(', ')}))`,
      );
      await connection.run(
        `INSERT OR IGNORE INTO observation SELECT ${names.map((name) => `TRY_CAST(${name} AS ${columns[name] ?? ''})`).join(', ')}
         FROM read_csv('${csvPath}', header = true, all_varchar = true)`,
      );
      connection.closeSync();
      instance.closeSync();
      const ms = performance.now() - begun;
      rmSync(databasePath, { force: true });
      rmSync(`${databasePath}.wal`, { force: true });
      return ms;
    },
  };
}
