import { adviseTest } from '../../../shared-calc/fuel/fit/advise-test.ts';
import { calibrate } from '../../../shared-calc/fuel/fit/calibrate.ts';
import type { FitJob, FitReply } from './fit-job.ts';

// The fit takes longer than a frame, so it runs beside the window.
addEventListener('message', ({ data }: MessageEvent<FitJob>) => {
  postMessage(replyTo(data));
});

function replyTo({ test, containers, tank }: FitJob): FitReply {
  const found = calibrate([test], containers, tank);
  if (found.kind !== 'curve') return null;
  return { testId: test.id, curve: found.curve, nextPour: adviseTest(found.fit, [test], containers) };
}
