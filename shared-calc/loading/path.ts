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
  burnedL: Float64Array;
  /** After take-off; 0 until then. */
  timeS: Float64Array;
  massKg: Float64Array;
  momentKgM: Float64Array;
  massPerL: Float64Array;
  momentPerL: Float64Array;
  momentCurve: Float64Array;
  /** Lateral moment at the node, kg m, positive right: straight to the next one. */
  lateralKgM: Float64Array;
  /** Usable litres in tank i at node k: `contentsL[k * tanks + i]`. */
  contentsL: Float64Array;
  /** Sum of NODE_ flags. */
  marks: Int32Array;
  /** Tank that was emptied, overfilled or changed to at this node; -1 for none. */
  emptied: Int32Array;
  overfilled: Int32Array;
  changedTo: Int32Array;
  /** What `walk` keeps of each tank while it writes. */
  readonly scratch: Scratch;
}

/** Contents and moment of each tank now, its segment, and the litres by which it changes for one litre burned. */
export interface Scratch {
  readonly nowL: Float64Array;
  readonly nowKgM: Float64Array;
  readonly segment: Int32Array;
  readonly rate: Float64Array;
}

export const NODE_TAKE_OFF = 1;
export const NODE_CLIMB_END = 2;
export const NODE_LANDING = 4;
export const NODE_EXHAUSTED = 8;

/** An empty path with room for so many nodes, to be filled by `walk`, which makes more room where it is needed. */
export function newPath(tankCount: number, room = 64): Path {
  return {
    nodes: 0,
    takeOff: -1,
    landing: -1,
    burnedL: new Float64Array(room),
    timeS: new Float64Array(room),
    massKg: new Float64Array(room),
    momentKgM: new Float64Array(room),
    massPerL: new Float64Array(room),
    momentPerL: new Float64Array(room),
    momentCurve: new Float64Array(room),
    lateralKgM: new Float64Array(room),
    contentsL: new Float64Array(room * tankCount),
    marks: new Int32Array(room),
    emptied: new Int32Array(room),
    overfilled: new Int32Array(room),
    changedTo: new Int32Array(room),
    scratch: {
      nowL: new Float64Array(tankCount),
      nowKgM: new Float64Array(tankCount),
      segment: new Int32Array(tankCount),
      rate: new Float64Array(tankCount),
    },
  };
}

/** Twice the room, with what was written so far. */
export function makeRoom(path: Path, tankCount: number): void {
  const wider = newPath(tankCount, 2 * path.burnedL.length);
  wider.burnedL.set(path.burnedL);
  wider.timeS.set(path.timeS);
  wider.massKg.set(path.massKg);
  wider.momentKgM.set(path.momentKgM);
  wider.massPerL.set(path.massPerL);
  wider.momentPerL.set(path.momentPerL);
  wider.momentCurve.set(path.momentCurve);
  wider.lateralKgM.set(path.lateralKgM);
  wider.contentsL.set(path.contentsL);
  wider.marks.set(path.marks);
  wider.emptied.set(path.emptied);
  wider.overfilled.set(path.overfilled);
  wider.changedTo.set(path.changedTo);
  const { nodes, takeOff, landing, scratch } = path;
  Object.assign(path, wider, { nodes, takeOff, landing, scratch });
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
