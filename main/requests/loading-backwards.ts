import { z } from 'zod';
import { keptBy } from '../../shared-calc/loading/backwards/kept.ts';
import { remediesFor } from '../../shared-calc/loading/backwards/remedies.ts';
import { roomLeft } from '../../shared-calc/loading/backwards/room-left.ts';
import { subjectOf } from '../../shared-calc/loading/backwards/subject.ts';
import { normalDraws } from '../../shared-calc/loading/odds.ts';
import { UNIT_PRESETS } from '../../shared-calc/units/preferences.ts';
import { backwardsHeading, sayAnswer } from '../../shared-calc/wording/backwards.ts';
import { read } from './define.ts';
import { loadingInputs } from './loading-review.ts';
import { loading } from './loading-schema.ts';
import { id } from './ranges.ts';

/** Always the same flights: asked twice, the answer is the same. */
const seed = 1;

export const loadingBackwardsRequests = {
  'loading.backwards': read({
    about:
      'What brings a loading inside, or what it still has room for, in sentences; each way with the loading that takes it, to be put by loading.put. null where something has to be entered first.',
    where: 'reader',
    input: z.strictObject({ loadingId: id, units: z.enum(['metric', 'US']).default('metric') }),
    output: z
      .strictObject({
        inside: z.boolean(),
        heading: z.string(),
        answers: z.array(
          z.strictObject({
            sentence: z.string(),
            ways: z.array(z.strictObject({ named: z.string(), leaves: z.string(), loading })),
          }),
        ),
      })
      .nullable(),
    handle: ({ db }, input) => {
      const inputs = loadingInputs(db, input.loadingId);
      const units = UNIT_PRESETS[input.units];
      const subject = subjectOf(inputs, units, (dimensions, count) => normalDraws(dimensions, count, seed));
      if (subject === null) return null;
      const { all, result } = keptBy(subject.asked);
      if (result.unchecked.length > 0) return null;
      const answers = all ? roomLeft(subject) : remediesFor(subject);
      return {
        inside: all,
        heading: backwardsHeading(all, answers),
        answers: answers.map((answer) => {
          const { sentence, ways } = sayAnswer(answer, inputs, units);
          return {
            sentence,
            ways: ways.map(({ named, leaves, after }) => ({ named, leaves, loading: after })),
          };
        }),
      };
    },
  }),
};
