import { z } from 'zod';
import type { PersonRecord } from '../../shared-calc/loading/records.ts';
import { readPeople, readPerson, writePerson } from '../store/people.ts';
import { change, read } from './define.ts';
import { Refusal } from './problem.ts';
import { day, id, name, named, words } from './ranges.ts';

export const personFields = z.strictObject({
  name,
  kind: z.enum(['person', 'thing']),
  massKg: z.number().min(0).max(1_000),
  known: z.enum(['weighed', 'stated', 'standard']),
  knownOn: day.nullable(),
  sdKg: z.number().min(0).max(100),
  biasKg: z.number().min(-50).max(50),
  note: words,
});
export const person = personFields.extend({ id }) satisfies z.ZodType<PersonRecord>;
export const keptPerson = person.extend({ removed: z.boolean() });

const areas: ('people' | 'loading')[] = ['people', 'loading'];

export const peopleRequests = {
  'people.list': read({
    about: 'The people and things that fly along, with mass, how it is known, spread and bias.',
    where: 'reader',
    input: z.strictObject({ withRemoved: z.boolean().default(false) }),
    output: z.array(keptPerson),
    handle: ({ db }, input) =>
      readPeople(db, input.withRemoved).map(({ record, removed }) => ({ ...record, removed })),
  }),
  'people.put': change({
    about: 'Add a person or thing (without id) or change one. Gives the id.',
    input: z.strictObject({ person: personFields.extend({ id: id.optional() }), named }),
    output: z.strictObject({ id }),
    handle: (context, input) => {
      const after: PersonRecord = { ...input.person, id: input.person.id ?? context.newId() };
      const before = readPerson(context.db, after.id);
      writePerson(context.db, { record: after, removed: false });
      const old = before === null || before.removed ? null : before.record;
      return {
        output: { id: after.id },
        named: input.named ?? (old === null ? `${after.name} added` : `figures of ${after.name}`),
        screen: 'loading' as const,
        areas,
        inverse:
          old === null
            ? { request: 'people.remove', input: { id: after.id } }
            : { request: 'people.put', input: { person: old, named: input.named } },
        forward: { request: 'people.put', input: { person: after, named: input.named } },
      };
    },
  }),
  'people.remove': change({
    about: 'Take a person or thing off the list; loadings that name it keep its figures.',
    input: z.strictObject({ id }),
    output: z.strictObject({}),
    handle: ({ db }, input) => {
      const before = readPerson(db, input.id);
      if (before === null || before.removed)
        throw new Refusal('not-found', `There is no person or thing '${input.id}'. Nothing was changed.`);
      writePerson(db, { ...before, removed: true });
      return {
        output: {},
        named: `${before.record.name} removed`,
        screen: 'loading' as const,
        areas,
        inverse: { request: 'people.put', input: { person: before.record } },
      };
    },
  }),
};
