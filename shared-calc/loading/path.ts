import type { Phase } from './aeroplane.ts';

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

/** First and last node of the part of a flight in which a limit of this phase holds. */
export function partOf(path: Path, phase: Phase): [number, number] {
  const end = path.nodes - 1;
  // Where the fuel ends before take-off, what there is of a flight is its end.
  const takeOff = path.takeOff < 0 ? end : path.takeOff;
  switch (phase) {
    case 'ramp':
      return [0, takeOff];
    case 'take-off':
      return [takeOff, takeOff];
    case 'flight':
      return [takeOff, end];
    case 'landing':
      // Without a planned landing the last possible one is compared.
      return path.landing < 0 ? [end, end] : [path.landing, path.landing];
    case 'zero-fuel':
      return [end, end];
  }
}
