import type { LoadingItemRecord, LoadingRecord } from '../records.ts';

/** Who sits where and what lies where: a row of the review table. */
export interface ReviewRowRecord {
  id: string;
  name: string;
  items: LoadingItemRecord[];
}

/** The fuel of a column: as much as fits, so much in all, so much in each tank, or what a flight of so long needs. */
export type ReviewColumnRecord = { id: string } & (
  | { kind: 'full' }
  | { kind: 'total'; totalL: number }
  | { kind: 'tanks'; fuel: { tankId: string; litresL: number }[] }
  | { kind: 'flight'; flightS: number }
);

/**
 * How a total is shared by the tanks. even: equal parts, what one cannot hold goes into the others. capacity: each in
 * proportion to what it holds. order: one after the other is filled, in the order in which they are burned.
 */
export type FuelSplit = 'even' | 'capacity' | 'order';

/** What every cell has in common: as a loading has it, but without a planned landing. */
export interface ReviewTerms {
  category: string;
  burn: LoadingRecord['burn'];
  flight: Omit<LoadingRecord['flight'], 'landingAfterS'>;
}

/** The review table of one aeroplane as the library keeps it. */
export interface ReviewTableRecord {
  aircraftId: string;
  terms: ReviewTerms;
  split: FuelSplit;
  /** By how much the contents of each tank may be off, nine times in ten. */
  fuelDoubtL: number;
  rows: ReviewRowRecord[];
  columns: ReviewColumnRecord[];
}
