import type { OutputOf } from '../../../main/requests/table.ts';
import type { AircraftRecord } from '../../../shared-calc/loading/records.ts';
import type { App } from '../../app/app.svelte.ts';
import type { Query } from '../../app/query.svelte.ts';
import { RecordEdits } from './recordEdits.svelte.ts';

/** The aeroplane on the sheet and the way to change it. */
export class AircraftEdits extends RecordEdits<OutputOf<'aircraft.get'>, AircraftRecord> {
  constructor(app: App, kept: Query<OutputOf<'aircraft.get'>>) {
    super(kept, {
      of: ({ aircraft }) => aircraft,
      ask: () => {
        const id = this.record?.id;
        return id === undefined
          ? null
          : app.client.ask('aircraft.get', { id }).then(({ aircraft }) => aircraft);
      },
      put: (aircraft, named) => app.client.ask('aircraft.put', { aircraft, named }),
    });
  }

  get aircraft(): AircraftRecord | null {
    return this.record;
  }
}

/** The row of that id, to be altered in a copy. */
export function rowOf<R extends { id: string }>(rows: readonly R[], id: string): R {
  const row = rows.find((each) => each.id === id);
  if (row === undefined) throw new Error(`The row ${id} was removed meanwhile. Nothing was changed.`);
  return row;
}
