import type { PerformanceRecord } from '../../../shared-calc/performance/records.ts';
import type { App } from '../../app/app.svelte.ts';
import type { Query } from '../../app/query.svelte.ts';
import { RecordEdits } from './recordEdits.svelte.ts';

/** The aeroplane's performance tables on the sheet and the way to change them. */
export class PerformanceEdits extends RecordEdits<PerformanceRecord, PerformanceRecord> {
  constructor(app: App, kept: Query<PerformanceRecord>) {
    super(kept, {
      of: (performance) => performance,
      ask: () => {
        const aircraftId = this.record?.aircraftId;
        return aircraftId === undefined ? null : app.client.ask('performance.get', { aircraftId });
      },
      put: (performance, named) => app.client.ask('performance.put', { performance, named }),
    });
  }
}
