import { Worker } from 'node:worker_threads';
import type { Progress } from '../requests/define.ts';
import { Refusal } from '../requests/problem.ts';
import type { FromRescue, RescueWork } from './rescue.ts';
import { workerUrl } from './worker-url.ts';

/**
 * Run one rescue beside the host's own thread.
 * @throws Refusal with what stopped it
 */
export function runRescue(work: RescueWork, progress: (report: Progress) => void): Promise<unknown> {
  const worker = new Worker(workerUrl('rescue'), { workerData: work, name: `rescue ${work.type}` });
  return new Promise((resolve, reject) => {
    worker.on('message', (message: FromRescue) => {
      if (message.type === 'progress') progress(message.report);
      else if (message.type === 'done') resolve(message.output);
      else reject(new Refusal(message.problem.code, message.problem.sentence, message.problem.fields));
    });
    worker.once('error', reject);
    worker.once('exit', () => {
      reject(new Error('The thread that rescues a library ended without an answer.'));
    });
  });
}
