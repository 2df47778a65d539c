import { judgeTable } from './judgeTable.ts';
import type { ReviewJob, ReviewReply } from './review-job.ts';

// A table of 320 cells takes many frames, so it is judged beside the window; a newer question stops an older one.
let newest = 0;

addEventListener('message', ({ data }: MessageEvent<ReviewJob>) => {
  newest = data.number;
  void run(data);
});

async function run(job: ReviewJob): Promise<void> {
  const tell = (reply: ReviewReply) => {
    postMessage(reply);
  };
  await judgeTable(job, tell, { isWanted: () => newest === job.number, turn });
}

const channel = new MessageChannel();
const waiting: (() => void)[] = [];
channel.port1.onmessage = () => waiting.shift()?.();

/** Lets a newer question in. A timer would wait four milliseconds each time. */
function turn(): Promise<void> {
  return new Promise((resolve) => {
    waiting.push(resolve);
    channel.port2.postMessage(null);
  });
}
