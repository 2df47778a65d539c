import type { LoadingRecord } from '../records.ts';
import type { InsideOdds } from '../odds.ts';
import type { NumberRange } from '../../numeric/ranges-not-negative.ts';

/** A question asked backwards, with the figures of its answer: kg, L, s. Names are the library's own. */
export type Found =
  /** The heaviest person at a seat, or the largest load at another place; `nowKg` null where nobody or nothing is there. */
  | {
      readonly kind: 'largest load';
      readonly place: string;
      readonly who: string | null;
      readonly nowKg: number | null;
    }
  /** A load that has to be heavier: a crew of one that is too light. */
  | { readonly kind: 'least load'; readonly place: string; readonly who: string; readonly nowKg: number }
  /** Fuel quantities; `tank` null where all tanks are filled together. */
  | {
      readonly kind: 'fuel';
      readonly tank: string | null;
      readonly ranges: readonly NumberRange[];
      readonly nowL: number;
    }
  | {
      readonly kind: 'longest flight';
      readonly tank: string | null;
      readonly landByS: number;
      readonly nowL: number;
    }
  | {
      readonly kind: 'leave behind';
      readonly names: readonly string[];
      readonly massKg: number;
      readonly hasPerson: boolean;
    }
  /** All of a thing (or as much as it takes) goes to another place. */
  | {
      readonly kind: 'move';
      readonly name: string;
      readonly from: string;
      readonly to: string;
      readonly isWhole: boolean;
    }
  | { readonly kind: 'ballast'; readonly place: string; readonly mostKg: number }
  /** Whoever sits on the one goes to the other; `hasPilot` where that changes from which seat it is flown. */
  | { readonly kind: 'swap seats'; readonly seats: readonly [string, string]; readonly hasPilot: boolean }
  | { readonly kind: 'tank order'; readonly words: string }
  /** Both together; a value is the second one's. */
  | {
      readonly kind: 'two changes';
      readonly first: SingleFound;
      readonly second: SingleFound;
    }
  | { readonly kind: 'landing'; readonly fromS: number; readonly toS: number };

/** What a single change answers. */
export type SingleFound = Exclude<Found, { kind: 'two changes' }>;

/** One value to take: the loading as it would be, and how it would stand. */
export interface Way {
  /** kg, L or s by the question; null where there is nothing to say but yes. */
  readonly value: number | null;
  /** Whether this is the value with which the flight stays inside nine times in ten. */
  readonly isSure: boolean;
  readonly after: LoadingRecord;
  readonly odds: InsideOdds | null;
}

/** An answer: the last value that is inside, and beside it the one that is inside nine times in ten where they differ. */
export interface Answer<F extends Found = Found> {
  readonly found: F;
  readonly ways: readonly Way[];
}
