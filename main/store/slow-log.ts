import type Database from 'better-sqlite3';

/**
 * For people who develop: write each statement that takes longer than so many milliseconds to the log, with its
 * time. Off where the variable is not set; then nothing is wrapped and nothing is paid.
 * @param slowMs the environment's text, as '20'
 */
export function logSlowStatements(
  db: Database.Database,
  slowMs: string | undefined,
  log: (line: string) => void = (line) => {
    console.error(line);
  },
): void {
  const thresholdMs = Number(slowMs);
  if (slowMs === undefined || !(thresholdMs >= 0)) return;
  const prepare = db.prepare.bind(db);
  db.prepare = ((sql: string) => {
    const statement = prepare(sql);
    for (const way of ['run', 'get', 'all'] as const) {
      const plain = statement[way].bind(statement) as (...args: unknown[]) => unknown;
      Object.defineProperty(statement, way, {
        value: (...args: unknown[]) => {
          const beganMs = performance.now();
          try {
            return plain(...args);
          } finally {
            const tookMs = performance.now() - beganMs;
            if (tookMs > thresholdMs) log(`slow statement, ${tookMs.toFixed(1)} ms: ${oneLine(sql)}`);
          }
        },
      });
    }
    return statement;
  }) as typeof db.prepare;
}

function oneLine(sql: string): string {
  return sql.replaceAll(/\s+/g, ' ').trim().slice(0, 300);
}
