import { requireRange } from '../problem.ts';
import type { LoadingModel } from './model.ts';
import { macPercent } from './mac.ts';
import { NODE_CLIMB_END, NODE_EXHAUSTED, NODE_LANDING, NODE_TAKE_OFF, type Path } from './path.ts';

export type Mark = 'ramp' | 'take-off' | 'climb end' | 'landing' | 'usable fuel exhausted';

/** The aeroplane at one instant of the flight. */
export interface FlightPoint {
  readonly burnedL: number;
  /** Seconds after take-off; 0 while taxiing. */
  readonly afterTakeOffS: number;
  readonly massKg: number;
  readonly momentKgM: number;
  readonly armM: number;
  /** null where the aeroplane's chord is not known. */
  readonly macPercent: number | null;
  /** Lateral arm of the CG, positive right; null where the manual gives no lateral arms. */
  readonly lateralArmM: number | null;
  /** Usable fuel left in all, and in each tank in the order of the aeroplane's tanks. */
  readonly usableL: number;
  readonly contentsL: readonly number[];
  /** What happens here; empty between the events of the flight. */
  readonly marks: readonly Mark[];
  /** The tank that has just become empty, the one changed to, the one that a return line has filled. */
  readonly emptiedTankId: string | null;
  readonly changedToTankId: string | null;
  readonly overfilledTankId: string | null;
}

/**
 * Read a path at so many litres after a node.
 * @param sinceL from 0 to the length of the piece that starts at the node; at its end, the next node is read
 */
export function pointAt(model: LoadingModel, path: Path, node: number, sinceL: number): FlightPoint {
  const startL = path.burnedL[node] ?? 0;
  const nextL = path.burnedL[node + 1];
  const last = node + 1 >= path.nodes;
  if (!last && nextL !== undefined && sinceL > 0 && startL + sinceL >= nextL - 1e-9) {
    return pointAt(model, path, node + 1, 0);
  }
  const u = sinceL;
  const massKg = (path.massKg[node] ?? 0) + u * (path.massPerL[node] ?? 0);
  const momentKgM =
    (path.momentKgM[node] ?? 0) + u * ((path.momentPerL[node] ?? 0) + u * (path.momentCurve[node] ?? 0));
  const count = model.tanks.length;
  const lengthL = last ? 0 : (nextL ?? startL) - startL;
  const share = lengthL > 0 ? u / lengthL : 0;
  const contentsL = model.tanks.map((_, i) => {
    const a = path.contentsL[node * count + i] ?? 0;
    const b = last ? a : (path.contentsL[(node + 1) * count + i] ?? a);
    return a + share * (b - a);
  });
  const startS = path.timeS[node] ?? 0;
  const endS = last ? startS : (path.timeS[node + 1] ?? startS);
  const at = (tank: number | undefined) =>
    u > 0 || tank === undefined || tank < 0 ? null : (model.aeroplane.tanks[tank]?.id ?? null);
  const armM = momentKgM / massKg;
  const fromKgM = path.lateralKgM[node] ?? 0;
  const toKgM = last ? fromKgM : (path.lateralKgM[node + 1] ?? fromKgM);
  return {
    burnedL: startL + u,
    afterTakeOffS: startS + share * (endS - startS),
    massKg,
    momentKgM,
    armM,
    macPercent: model.aeroplane.mac === null ? null : macPercent(armM, model.aeroplane.mac),
    lateralArmM: model.lateral === null ? null : (fromKgM + share * (toKgM - fromKgM)) / massKg,
    usableL: contentsL.reduce((sum, litres) => sum + litres, 0),
    contentsL,
    marks: u > 0 ? [] : marksOf(path, node),
    emptiedTankId: at(path.emptied[node]),
    changedToTankId: at(path.changedTo[node]),
    overfilledTankId: at(path.overfilled[node]),
  };
}

/**
 * Read a path after so many litres burned.
 * @param burnedL from 0 (the ramp) to what the path burns in all
 * @throws RangeProblem naming burnedL
 */
export function pointAfterL(model: LoadingModel, path: Path, burnedL: number): FlightPoint {
  requireRange('burnedL', burnedL, 0, path.burnedL[path.nodes - 1] ?? 0, 'L');
  let node = 0;
  while (node + 1 < path.nodes - 1 && burnedL >= (path.burnedL[node + 1] ?? Infinity)) node++;
  return pointAt(model, path, node, Math.max(0, burnedL - (path.burnedL[node] ?? 0)));
}

function marksOf(path: Path, node: number): Mark[] {
  const flags = path.marks[node] ?? 0;
  const marks: Mark[] = [];
  if (node === 0) marks.push('ramp');
  if ((flags & NODE_TAKE_OFF) !== 0) marks.push('take-off');
  if ((flags & NODE_CLIMB_END) !== 0) marks.push('climb end');
  if ((flags & NODE_LANDING) !== 0) marks.push('landing');
  if ((flags & NODE_EXHAUSTED) !== 0) marks.push('usable fuel exhausted');
  return marks;
}
