/**
 * A listener for statements that kills its own process, without any tidying, just before or just after the n-th
 * commit. SQLite tells of a statement before it runs, so "after" is the first statement behind the commit.
 */
export function dieAt(edge: string | undefined, commitNumber: number): (sql: unknown) => void {
  let commitsCount = 0;
  let diesNow = false;
  return (sql) => {
    if (diesNow) process.kill(process.pid, 'SIGKILL');
    if (typeof sql !== 'string' || !/^COMMIT/i.test(sql)) return;
    commitsCount++;
    if (commitsCount !== commitNumber) return;
    if (edge === 'before') process.kill(process.pid, 'SIGKILL');
    if (edge === 'after') diesNow = true;
  };
}
