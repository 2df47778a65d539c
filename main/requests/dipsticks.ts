import { z } from 'zod';
import type { DipstickRecord } from '../../shared-calc/fuel/dipstick/dipstick-record.ts';
import { readDipstick, readDipstickOfTank, writeDipstick } from '../store/dipsticks.ts';
import { requireTankOfAircraft } from '../store/tank-of.ts';
import { change, read } from './define.ts';
import { dipstick, dipstickFields } from './fuel-schema.ts';
import { Refusal } from './problem.ts';
import { id, named } from './ranges.ts';

export const dipstickRequests = {
  'dipstick.get': read({
    about: 'The dipstick or sight tube of a tank; null where there is none.',
    where: 'reader',
    input: z.strictObject({ tankId: id }),
    output: dipstick.nullable(),
    handle: ({ db }, { tankId }) => readDipstickOfTank(db, tankId),
  }),
  'dipstick.put': change({
    about: 'Add a dipstick or sight tube to a tank (without id) or change it. Gives its id.',
    input: z.strictObject({ dipstick: dipstickFields.extend({ id: id.optional() }), named }),
    output: z.strictObject({ id }),
    handle: (context, input) => {
      const after: DipstickRecord = { ...input.dipstick, id: input.dipstick.id ?? context.newId() };
      const tank = requireTankOfAircraft(context.db, after.tankId);
      const before = readDipstick(context.db, after.id);
      writeDipstick(context.db, { record: after, removed: false });
      const old = before === null || before.removed ? null : before.record;
      return {
        output: { id: after.id },
        named: input.named ?? `${after.kind} of ${tank.name}`,
        screen: 'fuel',
        areas: ['fuel'],
        inverse:
          old === null
            ? { request: 'dipstick.remove', input: { id: after.id } }
            : { request: 'dipstick.put', input: { dipstick: old, named: input.named } },
        forward: { request: 'dipstick.put', input: { dipstick: after, named: input.named } },
      };
    },
  }),
  'dipstick.remove': change({
    about: 'Take a dipstick or sight tube off its tank; readings beside pours stay.',
    input: z.strictObject({ id }),
    output: z.strictObject({}),
    handle: ({ db }, input) => {
      const before = readDipstick(db, input.id);
      if (before === null || before.removed)
        throw new Refusal('not-found', `There is no dipstick '${input.id}'. Nothing was changed.`);
      writeDipstick(db, { ...before, removed: true });
      return {
        output: {},
        named: `${before.record.kind} removed`,
        screen: 'fuel',
        areas: ['fuel'],
        inverse: { request: 'dipstick.put', input: { dipstick: before.record } },
      };
    },
  }),
};
