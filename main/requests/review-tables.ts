import { z } from 'zod';
import type { LoadingRecord } from '../../shared-calc/loading/records.ts';
import type { ReviewTableRecord } from '../../shared-calc/loading/review-table/table-record.ts';
import { listLoadings, readLoading } from '../store/loadings.ts';
import { readPerson } from '../store/people.ts';
import { readReviewTable, writeReviewTable } from '../store/review-tables.ts';
import { requireAircraft } from './aircraft.ts';
import { change, read, type Context } from './define.ts';
import { faultsRefused } from './faults-refused.ts';
import { loading, loadingFields } from './loading-schema.ts';
import { id, name, named, volumeL } from './ranges.ts';

const column = z.discriminatedUnion('kind', [
  z.strictObject({ id, kind: z.literal('full') }),
  z.strictObject({ id, kind: z.literal('total'), totalL: volumeL }),
  z.strictObject({
    id,
    kind: z.literal('tanks'),
    fuel: z.array(z.strictObject({ tankId: id, litresL: volumeL })).max(8),
  }),
  z.strictObject({ id, kind: z.literal('flight'), flightS: z.number().min(0).max(172_800) }),
]);

const table = z.strictObject({
  aircraftId: id,
  terms: z.strictObject({
    category: loadingFields.shape.category,
    burn: loadingFields.shape.burn,
    flight: loadingFields.shape.flight.omit({ landingAfterS: true }),
  }),
  split: z.enum(['even', 'capacity', 'order']),
  fuelDoubtL: z.number().min(0).max(100),
  rows: z.array(z.strictObject({ id, name, items: loadingFields.shape.items })).max(400),
  columns: z.array(column).max(40),
}) satisfies z.ZodType<ReviewTableRecord>;

export const reviewTableRequests = {
  'loading.records': read({
    about: 'Every loading of an aeroplane as it is kept, the one changed last first.',
    where: 'reader',
    input: z.strictObject({ aircraftId: id }),
    output: z.array(loading),
    handle: ({ db }, { aircraftId }) => {
      requireAircraft(db, aircraftId);
      return listLoadings(db, aircraftId).flatMap((each): LoadingRecord[] => {
        const kept = readLoading(db, each.id);
        return kept === null ? [] : [kept.record];
      });
    },
  }),
  'reviewTable.get': read({
    about:
      'The review table of an aeroplane: rows of people and things, columns of fuel; null where none was begun.',
    where: 'reader',
    input: z.strictObject({ aircraftId: id }),
    output: z.strictObject({ table: table.nullable() }),
    handle: ({ db }, { aircraftId }) => ({ table: readReviewTable(db, aircraftId) }),
  }),
  'reviewTable.put': change({
    about: 'Keep the review table of an aeroplane: the whole table as it is to be, or null for none.',
    input: z.strictObject({ aircraftId: id, table: table.nullable(), named }),
    output: z.strictObject({}),
    handle: (context, input) => {
      const { db } = context;
      const aircraft = requireAircraft(db, input.aircraftId);
      const before = readReviewTable(db, input.aircraftId);
      if (input.table !== null) refuseFaults(context, { ...input.table, aircraftId: input.aircraftId });
      writeReviewTable(db, input.aircraftId, input.table);
      return {
        output: {},
        named: input.named ?? `scenarios of ${aircraft.name}`,
        screen: 'loading' as const,
        areas: ['loading' as const],
        inverse: {
          request: 'reviewTable.put',
          input: { aircraftId: input.aircraftId, table: before, named: input.named },
        },
      };
    },
  }),
};

/** What no later change of an aeroplane can bring about: strangers and rows that are told apart by nothing. */
function refuseFaults({ db }: Context, { rows, columns }: ReviewTableRecord): void {
  const strangers = rows.flatMap(({ items }, row) =>
    items.flatMap((item, index) =>
      item.personId !== null && readPerson(db, item.personId) === null
        ? [
            {
              path: `rows[${String(row)}].items[${String(index)}].personId`,
              sentence: `there is no person or thing '${item.personId}'`,
            },
          ]
        : [],
    ),
  );
  const empty = rows.flatMap(({ items }, row) =>
    items.flatMap((item, index) =>
      item.personId === null && item.typed === null
        ? [
            {
              path: `rows[${String(row)}].items[${String(index)}]`,
              sentence: 'a load is somebody of the list or has a mass of its own',
            },
          ]
        : [],
    ),
  );
  const repeated = Object.entries({ rows, columns }).flatMap(([list, all]) =>
    all.flatMap((each, index) =>
      all.findIndex((other) => other.id === each.id) < index
        ? [{ path: `${list}[${String(index)}].id`, sentence: `the identifier ${each.id} is used twice` }]
        : [],
    ),
  );
  const faults = [...strangers, ...empty, ...repeated];
  if (faults.length > 0) throw faultsRefused(faults, 'table.');
}
