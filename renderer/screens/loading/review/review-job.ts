import type {
  AircraftRecord,
  PersonRecord,
  WeighingRecord,
} from '../../../../shared-calc/loading/records.ts';
import type { ReviewTableRecord } from '../../../../shared-calc/loading/review-table/table-record.ts';
import type { UnitPreferences } from '../../../../shared-calc/units/preferences.ts';
import type { ReviewCell } from '../../../../shared-calc/wording/review-cell.ts';

/** A whole review table to be judged beside the window. `number` comes back with every reply. */
export interface ReviewJob {
  readonly number: number;
  readonly aircraft: AircraftRecord;
  readonly weighing: WeighingRecord | null;
  readonly people: readonly PersonRecord[];
  readonly table: ReviewTableRecord;
  readonly units: UnitPreferences;
}

/** How probable it is that a cell's whole flight stays inside: "994 times in 1 000". */
export interface SaidOdds {
  readonly row: number;
  readonly column: number;
  readonly text: string;
}

/** All margins at once, then odds by and by, the last with `isDone`. */
export type ReviewReply = { readonly number: number } & (
  | { readonly cells: readonly (readonly ReviewCell[])[] }
  | { readonly odds: readonly SaidOdds[]; readonly isDone: boolean }
);
