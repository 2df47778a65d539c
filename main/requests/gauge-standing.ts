import { z } from 'zod';
import { judgeLog, termsOfLog } from '../../shared-calc/fuel/checks/judge-log.ts';
import { readRefits } from '../store/calibration-refits.ts';
import { readCalibrations, readStanding } from '../store/calibrations.ts';
import { readContainers } from '../store/containers.ts';
import { readFillTests } from '../store/fill-tests.ts';
import { readFuelChecks } from '../store/fuel-checks.ts';
import { read, type Context } from './define.ts';
import { day, id } from './ranges.ts';

const checked = z.strictObject({
  verdict: z.enum(['agrees', 'outside', 'drifting', 'oneOutside', 'scattered']),
  judgedCount: z.int().min(1),
  /** From which check on the verdict speaks: the drift's first, or the one outside. */
  sinceOn: day,
  lastOn: day,
});

export const gaugeStandingRequests = {
  'calibration.standing': read({
    about:
      'For each tank of an aeroplane the day of the curve that counts (null where there is none) and whether the checks ' +
      'logged since still agree with it (null where none can be judged).',
    where: 'reader',
    input: z.strictObject({ aircraftId: id }),
    output: z.array(
      z.strictObject({
        tankId: id,
        name: z.string(),
        adoptedOn: day.nullable(),
        checks: checked.nullable(),
      }),
    ),
    handle: (context, { aircraftId }) =>
      readStanding(context.db, aircraftId).map((tank) => ({
        ...tank,
        checks: tank.adoptedOn === null ? null : checksOf(context, tank.tankId),
      })),
  }),
};

function checksOf({ db }: Context, tankId: string): z.input<typeof checked> | null {
  const log = readFuelChecks(db, tankId);
  if (!log.some(({ kind, withdrawn }) => kind === 'refill' && !withdrawn)) return null;
  const counting = readCalibrations(db, tankId).find(({ withdrawn }) => !withdrawn);
  const kept = counting === undefined ? null : readRefits(db, counting.id);
  if (counting === undefined || kept === null) return null;
  const containers = readContainers(db, true).map(({ record }) => record);
  const terms = termsOfLog(counting, readFillTests(db, tankId), log);
  const { set, judgement } = judgeLog(log, counting, kept, containers, terms);
  const { verdict } = judgement;
  const last = set.checks.at(-1);
  if (verdict.kind === 'none' || last === undefined) return null;
  const since = 'fromIndex' in verdict ? set.checks[verdict.fromIndex] : set.checks[0];
  return {
    verdict: verdict.kind,
    judgedCount: set.checks.length,
    sinceOn: (since ?? last).checkedOn,
    lastOn: last.checkedOn,
  };
}
