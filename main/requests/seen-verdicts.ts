import { z } from 'zod';
import type { SeenVerdict } from '../../shared-calc/wording/verdict-changes.ts';
import { readSeenVerdicts, writeSeenVerdicts } from '../store/seen-verdicts.ts';
import { requireAircraft } from './aircraft.ts';
import { change, read } from './define.ts';
import { id, named } from './ranges.ts';

const about = z.enum(['loadings', 'scenarios']);

const verdict = z.strictObject({
  /** Of a loading; of a scenario, those of its row and its column with a space between. */
  id: z.string().min(1).max(200),
  verdict: z.enum(['inside', 'outside', 'not checked', 'does not fit']),
  inShort: z.string().max(200),
  /** The same for as long as its own entries are the same. */
  entriesMark: z.string().max(100),
}) satisfies z.ZodType<SeenVerdict>;

/** As many as a review table of 400 rows and 40 columns has. */
const verdicts = z.array(verdict).max(16_000);

export const seenVerdictRequests = {
  'verdicts.seen': read({
    about:
      'How the saved loadings of an aeroplane, or the scenarios of its review table, stood when somebody looked at them last.',
    where: 'reader',
    input: z.strictObject({ aircraftId: id, about }),
    output: z.strictObject({ verdicts }),
    handle: ({ db }, input) => {
      requireAircraft(db, input.aircraftId);
      return { verdicts: readSeenVerdicts(db, input.aircraftId, input.about) };
    },
  }),
  'verdicts.see': change({
    about:
      'Keep how they stand as looked at, so that a later change can be told. A step of undo where it is given a name.',
    input: z.strictObject({ aircraftId: id, about, verdicts, named }),
    output: z.strictObject({}),
    handle: ({ db }, input) => {
      requireAircraft(db, input.aircraftId);
      const before = readSeenVerdicts(db, input.aircraftId, input.about);
      writeSeenVerdicts(db, input.aircraftId, input.about, input.verdicts);
      return {
        output: {},
        named: input.named ?? 'verdicts looked at',
        screen: 'loading' as const,
        areas: ['verdicts' as const],
        inverse:
          input.named === undefined
            ? null
            : { request: 'verdicts.see', input: { ...input, verdicts: before } },
      };
    },
  }),
};
