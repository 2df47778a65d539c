/** A record as the library keeps it: what was removed stays, for undo and for what refers to it. */
export interface Kept<R> {
  record: R;
  removed: boolean;
}
