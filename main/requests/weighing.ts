import { z } from 'zod';
import { appendWeighing, setWithdrawn } from '../store/weighings.ts';
import { requireAircraft } from './aircraft.ts';
import { weighingFields } from './aircraft-schema.ts';
import { change, type Context } from './define.ts';
import { Refusal } from './problem.ts';
import { id } from './ranges.ts';

const areas: ('aircraft' | 'loading')[] = ['aircraft', 'loading'];

export const weighingRequests = {
  'weighing.add': change({
    about: 'Append a weighing of an aeroplane; the latest by its day counts. Undo withdraws it.',
    input: weighingFields,
    output: z.strictObject({ id }),
    handle: (context, input) => {
      const { name } = requireAircraft(context.db, input.aircraftId);
      const weighing = { ...input, id: context.newId() };
      appendWeighing(context.db, weighing, context.nowEpochS());
      return {
        output: { id: weighing.id },
        named: `weighing of ${name}`,
        screen: 'aircraft' as const,
        areas,
        inverse: { request: 'weighing.withdraw', input: { id: weighing.id } },
        // A weighing is never added twice: done again, the withdrawn one counts once more.
        forward: { request: 'weighing.reinstate', input: { id: weighing.id } },
      };
    },
  }),
  'weighing.withdraw': change({
    about: 'Withdraw a weighing that is wrong; it stays readable and no longer counts.',
    input: z.strictObject({ id }),
    output: z.strictObject({}),
    handle: (context, input) => withdrawn(context, input.id, true),
  }),
  'weighing.reinstate': change({
    about: 'Let a withdrawn weighing count again.',
    input: z.strictObject({ id }),
    output: z.strictObject({}),
    handle: (context, input) => withdrawn(context, input.id, false),
  }),
};

function withdrawn({ db }: Context, weighingId: string, to: boolean) {
  const found = setWithdrawn(db, weighingId, to);
  if (found === null)
    throw new Refusal(
      'not-found',
      `There is no weighing '${weighingId}' in this library. Nothing was changed.`,
    );
  return {
    output: {},
    named: `weighing of ${found.weighedOn} ${to ? 'withdrawn' : 'reinstated'}`,
    screen: 'aircraft' as const,
    areas,
    inverse:
      found.before === to
        ? null
        : { request: to ? 'weighing.reinstate' : 'weighing.withdraw', input: { id: weighingId } },
  };
}
