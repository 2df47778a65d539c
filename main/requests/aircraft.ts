import { z } from 'zod';
import { aircraftFaults, type Fault } from '../../shared-calc/loading/aircraft-faults.ts';
import type { AircraftRecord } from '../../shared-calc/loading/records.ts';
import {
  listAircraft,
  markAircraftRemoved,
  ownerOfPart,
  readAircraft,
  writeAircraft,
} from '../store/aircraft.ts';
import { readSetting, writeSetting } from '../store/settings.ts';
import { readWeighings } from '../store/weighings.ts';
import { aircraft as aircraftSchema, aircraftFields, weighing } from './aircraft-schema.ts';
import { withHonestComparisons } from './comparisons.ts';
import { change, read, type Context } from './define.ts';
import { faultsRefused } from './faults-refused.ts';
import { Refusal } from './problem.ts';
import { id, named } from './ranges.ts';
import { aircraftChangeName } from './change-names.ts';

const currentKey = 'current.aircraft';

export const aircraftRequests = {
  'aircraft.list': read({
    about: 'Every aeroplane of the library, by name, and which one is current.',
    where: 'reader',
    input: z.strictObject({}),
    output: z.strictObject({
      aircraft: z.array(z.strictObject({ id, name: z.string(), identification: z.string() })),
      currentId: id.nullable(),
    }),
    handle: ({ db }) => {
      const aircraft = listAircraft(db);
      const chosen = readSetting.one(db, currentKey);
      // The chosen one may have been removed since: then the first of the list is current.
      const current = aircraft.find((each) => each.id === chosen) ?? aircraft[0];
      return { aircraft, currentId: current?.id ?? null };
    },
  }),
  'aircraft.get': read({
    about:
      'One aeroplane with everything that was entered, its weighings (latest first) and which of them counts.',
    where: 'reader',
    input: z.strictObject({ id }),
    output: z.strictObject({
      aircraft: aircraftSchema,
      weighings: z.array(weighing),
      currentWeighingId: id.nullable(),
    }),
    handle: ({ db }, input) => {
      const weighings = readWeighings(db, input.id);
      return {
        aircraft: requireAircraft(db, input.id),
        weighings,
        currentWeighingId: weighings.find((each) => !each.withdrawn)?.id ?? null,
      };
    },
  }),
  'aircraft.put': change({
    about: 'Add an aeroplane (without id) or change one: the whole aeroplane as it is to be. Gives its id.',
    input: z.strictObject({ aircraft: aircraftFields.extend({ id: id.optional() }), named }),
    output: z.strictObject({ id }),
    handle: (context, input) => {
      const { db } = context;
      const given: AircraftRecord = { ...input.aircraft, id: input.aircraft.id ?? context.newId() };
      const before = readAircraft(db, given.id);
      refuseFaults(context, given);
      const old = before === null || before.removed ? null : before.record;
      const after = old === null ? given : withHonestComparisons(old, given);
      writeAircraft(db, after);
      return {
        output: { id: after.id },
        named: input.named ?? (old === null ? `${after.name} added` : aircraftChangeName(old, after)),
        screen: 'aircraft' as const,
        areas: ['aircraft' as const, 'loading' as const, 'fuel' as const],
        inverse:
          old === null
            ? { request: 'aircraft.remove', input: { id: after.id } }
            : { request: 'aircraft.put', input: { aircraft: old, named: input.named } },
        forward: { request: 'aircraft.put', input: { aircraft: given, named: input.named } },
      };
    },
  }),
  'aircraft.remove': change({
    about: 'Take an aeroplane off the list, with its loadings; undo brings all of it back.',
    input: z.strictObject({ id }),
    output: z.strictObject({}),
    handle: ({ db }, input) => {
      const before = requireAircraft(db, input.id);
      markAircraftRemoved(db, input.id);
      return {
        output: {},
        named: `${before.name} removed`,
        screen: 'aircraft' as const,
        areas: ['aircraft' as const, 'loading' as const, 'fuel' as const],
        inverse: { request: 'aircraft.put', input: { aircraft: before } },
      };
    },
  }),
  'aircraft.choose': change({
    about: 'Make an aeroplane the current one, on every screen and at the next start. Not a step of undo.',
    input: z.strictObject({ id }),
    output: z.strictObject({}),
    handle: ({ db }, input) => {
      const { name } = requireAircraft(db, input.id);
      writeSetting(db, currentKey, input.id);
      return {
        output: {},
        named: `${name} chosen`,
        screen: 'aircraft' as const,
        areas: ['aircraft' as const, 'loading' as const, 'fuel' as const],
        inverse: null,
      };
    },
  }),
};

/** @throws Refusal when there is none, or it was removed */
export function requireAircraft(db: Context['db'], aircraftId: string): AircraftRecord {
  const found = readAircraft(db, aircraftId);
  if (found === null || found.removed)
    throw new Refusal(
      'not-found',
      `There is no aeroplane '${aircraftId}' in this library. Nothing was changed.`,
    );
  return found.record;
}

function refuseFaults({ db }: Context, aircraft: AircraftRecord): void {
  const { stations, tanks, groups, envelopes } = aircraft;
  const foreign: Fault[] = Object.entries({ stations, tanks, groups, envelopes }).flatMap(([list, parts]) =>
    parts.flatMap((part, index) => {
      const owner = ownerOfPart(db, part.id);
      return owner === null || owner === aircraft.id
        ? []
        : [
            {
              path: `${list}[${String(index)}].id`,
              sentence: `the identifier ${part.id} belongs to another aeroplane`,
            },
          ];
    }),
  );
  const faults = [...aircraftFaults(aircraft), ...foreign];
  if (faults.length > 0) throw faultsRefused(faults, 'aircraft.');
}
