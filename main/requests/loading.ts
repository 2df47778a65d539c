import { z } from 'zod';
import { loadingFaults } from '../../shared-calc/loading/loading-faults.ts';
import type { LoadingRecord } from '../../shared-calc/loading/records.ts';
import { listLoadings, readLoading, writeLoading } from '../store/loadings.ts';
import { readPerson } from '../store/people.ts';
import { readSetting, writeSetting } from '../store/settings.ts';
import { removedStations } from '../store/stations.ts';
import { isCalibrationOf } from '../store/calibrations.ts';
import { requireAircraft } from './aircraft.ts';
import { loadingChangeName } from './change-names.ts';
import { change, read, type Context } from './define.ts';
import { faultsRefused } from './faults-refused.ts';
import { loading, loadingFields } from './loading-schema.ts';
import { keptPerson } from './people.ts';
import { Refusal } from './problem.ts';
import { id, named } from './ranges.ts';

/** Each aeroplane remembers the loading that was looked at last. */
const currentKey = (aircraftId: string) => `current.loading.${aircraftId}`;

export const loadingRequests = {
  'loading.list': read({
    about: 'The loadings of an aeroplane, the one changed last first, and which one is current.',
    where: 'reader',
    input: z.strictObject({ aircraftId: id }),
    output: z.strictObject({
      loadings: z.array(z.strictObject({ id, name: z.string() })),
      currentId: id.nullable(),
    }),
    handle: ({ db }, input) => {
      requireAircraft(db, input.aircraftId);
      const loadings = listLoadings(db, input.aircraftId);
      const chosen = readSetting.one(db, currentKey(input.aircraftId));
      const current = loadings.find((each) => each.id === chosen) ?? loadings[0];
      return { loadings, currentId: current?.id ?? null };
    },
  }),
  'loading.get': read({
    about:
      'One loading, with the people and things it names (also those off the list) and the stations it names that the aeroplane no longer has.',
    where: 'reader',
    input: z.strictObject({ id }),
    output: z.strictObject({
      loading,
      people: z.array(keptPerson),
      removedStations: z.array(z.strictObject({ id, name: z.string() })),
    }),
    handle: ({ db }, input) => {
      const found = requireLoading(db, input.id);
      const people = [...new Set(found.items.map((item) => item.personId))].flatMap((personId) => {
        const person = personId === null ? null : readPerson(db, personId);
        return person === null ? [] : [{ ...person.record, removed: person.removed }];
      });
      const named = new Set(found.items.map((item) => item.stationId));
      return {
        loading: found,
        people,
        removedStations: removedStations(db, found.aircraftId).filter((station) => named.has(station.id)),
      };
    },
  }),
  'loading.put': change({
    about: 'Add a loading (without id) or change one: the whole loading as it is to be. Gives its id.',
    input: z.strictObject({ loading: loadingFields.extend({ id: id.optional() }), named }),
    output: z.strictObject({ id }),
    handle: (context, input) => {
      const after: LoadingRecord = { ...input.loading, id: input.loading.id ?? context.newId() };
      const before = readLoading(context.db, after.id);
      refuseFaults(context, after);
      requireCurves(context, after);
      writeLoading(context.db, { record: after, removed: false }, context.nowEpochS());
      const old = before === null || before.removed ? null : before.record;
      return {
        output: { id: after.id },
        named: input.named ?? (old === null ? `${after.name} added` : loadingChangeName(old, after)),
        screen: 'loading' as const,
        areas: ['loading' as const],
        inverse:
          old === null
            ? { request: 'loading.remove', input: { id: after.id } }
            : { request: 'loading.put', input: { loading: old, named: input.named } },
        forward: { request: 'loading.put', input: { loading: after, named: input.named } },
      };
    },
  }),
  'loading.remove': change({
    about: 'Remove a loading; undo brings it back.',
    input: z.strictObject({ id }),
    output: z.strictObject({}),
    handle: ({ db, nowEpochS }, input) => {
      const before = requireLoading(db, input.id);
      writeLoading(db, { record: before, removed: true }, nowEpochS());
      return {
        output: {},
        named: `${before.name} removed`,
        screen: 'loading' as const,
        areas: ['loading' as const],
        inverse: { request: 'loading.put', input: { loading: before } },
      };
    },
  }),
  'loading.choose': change({
    about: 'Make a loading the current one of its aeroplane. Not a step of undo.',
    input: z.strictObject({ id }),
    output: z.strictObject({}),
    handle: ({ db }, input) => {
      const found = requireLoading(db, input.id);
      writeSetting(db, currentKey(found.aircraftId), input.id);
      return {
        output: {},
        named: `${found.name} chosen`,
        screen: 'loading' as const,
        areas: ['loading' as const],
        inverse: null,
      };
    },
  }),
};

/** @throws Refusal when there is none, or it was removed */
export function requireLoading(db: Context['db'], loadingId: string): LoadingRecord {
  const found = readLoading(db, loadingId);
  if (found === null || found.removed)
    throw new Refusal(
      'not-found',
      `There is no loading '${loadingId}' in this library. Nothing was changed.`,
    );
  return found.record;
}

function refuseFaults({ db }: Context, after: LoadingRecord): void {
  const aircraft = requireAircraft(db, after.aircraftId);
  const gone = new Map(removedStations(db, after.aircraftId).map((station) => [station.id, station.name]));
  const strangers = after.items.flatMap((item, index) =>
    item.personId !== null && readPerson(db, item.personId) === null
      ? [
          {
            path: `items[${String(index)}].personId`,
            sentence: `there is no person or thing '${item.personId}'`,
          },
        ]
      : [],
  );
  const faults = [...loadingFaults(after, aircraft, gone), ...strangers];
  if (faults.length > 0) throw faultsRefused(faults, 'loading.');
}

/** A gauge reading names the adopted curve that made litres of it, one of the same tank. */
function requireCurves({ db }: Pick<Context, 'db'>, { fuel }: LoadingRecord): void {
  for (const { tankId, gauge } of fuel)
    if (gauge != null && !isCalibrationOf(db, gauge.calibrationId, tankId))
      throw new Refusal(
        'not-found',
        `There is no adopted curve '${gauge.calibrationId}' of the tank '${tankId}'. Nothing was changed.`,
      );
}
