import { parentPort, workerData } from 'node:worker_threads';
import type { Progress } from '../requests/define.ts';
import type { Problem } from '../requests/problem.ts';
import { problemOf } from '../requests/run.ts';
import { salvageLibrary } from '../store/export/write.ts';
import { replaceLibrary } from '../store/restore.ts';

// A thread for a library that cannot be opened: puts a backup in its place, or writes out what can be read.
// The host holds the library meanwhile.

export type RescueWork =
  | { type: 'restore'; libraryPath: string; backupPath: string }
  | { type: 'salvage'; libraryPath: string; into: string };

export type FromRescue =
  | { type: 'done'; output: unknown }
  | { type: 'failed'; problem: Problem }
  | { type: 'progress'; report: Progress };

const say = (message: FromRescue) => parentPort?.postMessage(message);

try {
  say({ type: 'done', output: await rescue(workerData as RescueWork) });
} catch (error) {
  say({ type: 'failed', problem: problemOf('host.rescue', error) });
}

async function rescue(work: RescueWork): Promise<unknown> {
  const nowEpochS = Date.now() / 1000;
  if (work.type === 'restore') return replaceLibrary(work.libraryPath, work.backupPath, nowEpochS);
  const { folder, files } = await salvageLibrary(work.libraryPath, work.into, {
    nowEpochS,
    progress: (table, rowsCount) => {
      say({
        type: 'progress',
        report: { doing: `Writing ${table}.csv`, doneCount: rowsCount, totalCount: null, unit: 'rows' },
      });
    },
  });
  return { folder, files: files.map(({ file, rowsCount, stoppedBy }) => ({ file, rowsCount, stoppedBy })) };
}
