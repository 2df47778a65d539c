/**
 * A flight from ramp until usable fuel is exhausted, as pieces over the litres burned.
 *
 * Node k starts piece k; the last node ends the last piece. With u litres burned since node k, mass is
 * massKg[k] + massPerL[k] u and moment momentKgM[k] + momentPerL[k] u + momentCurve[k] u^2, exactly. A node stands
 * wherever a rate changes: a tank is empty or changed, a knot of its table, take-off, end of climb, landing.
 * Arrays may be longer than `nodes`: a path is filled again and again without new memory.
 */
export interface Path {
  nodes: number;
  /** Index of the node of take-off; -1 where the fuel ends before it. */
  takeOff: number;
  /** Index of the node of the planned landing; -1 where none is planned or the fuel ends before it. */
  landing: number;
  readonly burnedL: number[];
  /** After take-off; 0 until then. */
  readonly timeS: number[];
  readonly massKg: number[];
  readonly momentKgM: number[];
  readonly massPerL: number[];
  readonly momentPerL: number[];
  readonly momentCurve: number[];
  /** Usable litres in tank i at node k: `contentsL[k * tanks + i]`. */
  readonly contentsL: number[];
  /** Sum of NODE_ flags. */
  readonly marks: number[];
  /** Tank that was emptied, overfilled or changed to at this node; -1 for none. */
  readonly emptied: number[];
  readonly overfilled: number[];
  readonly changedTo: number[];
}

export const NODE_TAKE_OFF = 1;
export const NODE_CLIMB_END = 2;
export const NODE_LANDING = 4;
export const NODE_EXHAUSTED = 8;

/** An empty path, to be filled by `walk`. */
export function newPath(): Path {
  return {
    nodes: 0,
    takeOff: -1,
    landing: -1,
    burnedL: [],
    timeS: [],
    massKg: [],
    momentKgM: [],
    massPerL: [],
    momentPerL: [],
    momentCurve: [],
    contentsL: [],
    marks: [],
    emptied: [],
    overfilled: [],
    changedTo: [],
  };
}
