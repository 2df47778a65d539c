import type { OutputOf } from '../../../main/requests/table.ts';

export type Imported = OutputOf<'weather.imports'>[number];

/** The files that were imported by one act. */
export interface ImportAct {
  key: string;
  /** In the order in which they were read. */
  files: readonly Imported[];
}

/** Imports, newest first, as the acts that made them. */
export function actsOf(imports: readonly Imported[]): ImportAct[] {
  const byBatch = Map.groupBy(imports, ({ batchId, importId }) => batchId ?? `alone ${String(importId)}`);
  return [...byBatch].map(([key, files]) => ({ key, files: files.toReversed() }));
}

/** Observations of some files, all of them or those that were new. */
export function sumOf(files: readonly Imported[], count: 'observationCount' | 'newCount'): number {
  return files.reduce((sum, each) => sum + each[count], 0);
}
