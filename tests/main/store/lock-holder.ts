import { holdLibrary } from '../../../main/store/lock.ts';

// A process of its own that holds a library until it is killed (lock.test.ts).
const path = process.argv[2] ?? '';
const hold = holdLibrary(path, {
  pid: process.pid,
  host: 'loopback',
  address: 'http://127.0.0.1:4711/',
  sinceEpochS: 1_790_000_000,
});
process.stdout.write(hold.held ? 'held\n' : 'not held\n');
setInterval(() => undefined, 1000);
