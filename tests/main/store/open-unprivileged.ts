import Database from 'better-sqlite3';
import { Refusal } from '../../../main/requests/problem.ts';
import { openLibrary } from '../../../main/store/open.ts';

// Opens a library as a user without rights of its own and prints the refusal (open.test.ts).
// Everything is loaded first, SQLite's binary too: 'nobody' may not be allowed to read the project's folder.
new Database(':memory:').close();
if (process.getuid?.() === 0) process.setuid?.(65_534);
try {
  (await openLibrary(process.argv[2] ?? '')).close();
  process.stdout.write('{"code": "opened"}');
} catch (error) {
  if (!(error instanceof Refusal)) throw error;
  process.stdout.write(JSON.stringify(error.problem));
}
