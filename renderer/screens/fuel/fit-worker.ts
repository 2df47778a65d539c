import { adviseTest } from '../../../shared-calc/fuel/fit/advise-test.ts';
import { calibrate, fillDataOf } from '../../../shared-calc/fuel/fit/calibrate.ts';
import { modesToFollow } from '../../../shared-calc/fuel/fit/quick-curve.ts';
import { smoothnessShares } from '../../../shared-calc/fuel/fit/smoothness-shares.ts';
import type { FitJob, FitReply, FittedTest, NumberedJob } from './fit-job.ts';

// The fit takes longer than a frame, so it runs beside the window.
addEventListener('message', ({ data }: MessageEvent<NumberedJob>) => {
  const reply: FitReply = { number: data.number, fitted: fittedOf(data.job) };
  postMessage(reply);
});

function fittedOf({ tests, containers, tank }: FitJob): FittedTest | null {
  const found = calibrate(tests, containers, tank);
  if (found.kind !== 'curve') return null;
  const [test] = tests;
  return {
    testId: test.id,
    curve: found.curve,
    refits: found.refits,
    modes: modesToFollow(found.fit.modes),
    nextPour: adviseTest(found.fit, tests, containers),
    smoothnessShares: smoothnessShares(
      fillDataOf(tests, containers, tank),
      test.smoothness === null ? found.fit.modes : undefined,
    ),
  };
}
