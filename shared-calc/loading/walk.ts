import { InputProblem } from '../problem.ts';
import type { BurnPlan } from './burn.ts';
import {
  makeRoom,
  NODE_CLIMB_END,
  NODE_EXHAUSTED,
  NODE_LANDING,
  NODE_TAKE_OFF,
  type Path,
  type Scratch,
} from './path.ts';
import { momentInSegmentKgM, segmentOf, type TankMoment } from './tank-moment.ts';

/** Contents closer to a knot, to full or to empty than this are there, L: a millionth of a drop. */
const SAME_L = 1e-9;
/** Where a return line gives back part of each tankful, the last litre comes in ever smaller helpings: here it ends, L. */
const EXHAUSTED_L = 1e-6;
const SAME_S = 1e-6;
const MOST_NODES = 5000;

/** What changes while a flight is followed. */
interface Walk extends Scratch {
  readonly path: Path;
  readonly plan: BurnPlan;
  readonly tanks: readonly TankMoment[];
  node: number;
  burnedL: number;
  timeS: number;
  /** Usable litres left in all. */
  totalL: number;
  airborne: boolean;
  climbLeftL: number;
  /** Place in the order of burning; no matter where all feed together. */
  turn: number;
  nextChangeS: number;
}

/**
 * Follow the fuel from ramp until it is exhausted and write the pieces of the flight into `path`.
 *
 * Each tank changes at a constant rate per litre burned between nodes, so that mass is linear there and moment at
 * most quadratic. While taxiing no time passes (take-off is time zero) and a return line works at the cruise flow.
 * Fuel returned into a full tank is lost overboard: from there on, mass falls faster than the engine burns.
 * @param solidKg, solidKgM  mass and moment of all but the usable fuel
 * @param contentsL          usable litres in each tank at the ramp, within its capacity (the caller's promise)
 * @param solidLateralKgM    lateral moment of all but the usable fuel; 0 where the manual gives no lateral arms
 * @throws InputProblem where tanks would be changed more than some thousand times
 */
export function walk(
  path: Path,
  plan: BurnPlan,
  tanks: readonly TankMoment[],
  contentsL: readonly number[],
  solidKg: number,
  solidKgM: number,
  solidLateralKgM = 0,
): void {
  const w: Walk = {
    ...path.scratch,
    path,
    plan,
    tanks,
    node: 0,
    burnedL: 0,
    timeS: 0,
    totalL: 0,
    airborne: false,
    climbLeftL: plan.climbL,
    turn: 0,
    nextChangeS: plan.everyS,
  };
  path.takeOff = -1;
  path.landing = -1;
  for (let i = 0; i < tanks.length; i++) fill(w, i, contentsL[i] ?? 0);
  w.turn = firstWithFuel(w, 0);
  startNode(w);
  for (;;) {
    const exhausted = w.totalL <= EXHAUSTED_L;
    markPhases(w, exhausted);
    const flow = w.airborne && w.climbLeftL > 0 ? plan.climbLPerS : plan.cruiseLPerS;
    if (!exhausted) setRates(w, flow);
    const untilKnotL = writePiece(w, solidKg, solidKgM, solidLateralKgM, exhausted);
    if (exhausted) return;
    if (w.node >= MOST_NODES) throw new InputProblem('burn', 'tanks would be changed more than 5,000 times');
    const stepL = Math.min(untilKnotL, untilEventL(w, flow));
    w.burnedL += stepL;
    if (w.airborne) w.timeS += stepL / flow;
    w.node++;
    startNode(w);
    burn(w, stepL);
    if (!plan.together && w.totalL > EXHAUSTED_L) changeTank(w);
  }
}

/** Set the contents of a tank; the segment is kept while they lie in it. */
function fill({ nowL, nowKgM, segment, tanks }: Walk, i: number, litres: number): void {
  const tank = tanks[i];
  if (tank === undefined) return;
  const k = segmentOf(tank, litres);
  segment[i] = k;
  nowL[i] = litres;
  nowKgM[i] = momentInSegmentKgM(tank, k, litres);
}

/** A node without anything to tell yet. */
function startNode(w: Walk): void {
  const { path, node, tanks } = w;
  if (node >= path.burnedL.length) makeRoom(path, tanks.length);
  path.marks[node] = 0;
  path.emptied[node] = -1;
  path.overfilled[node] = -1;
  path.changedTo[node] = -1;
  path.nodes = node + 1;
  if (node > 0) return;
  w.totalL = 0;
  for (let i = 0; i < tanks.length; i++) w.totalL += w.nowL[i] ?? 0;
}

function markPhases(w: Walk, exhausted: boolean): void {
  const { path, plan, node } = w;
  let marks = path.marks[node] ?? 0;
  if (!w.airborne && w.burnedL >= plan.taxiL - SAME_L) {
    w.airborne = true;
    path.takeOff = node;
    marks |= NODE_TAKE_OFF;
  }
  if (w.airborne && path.landing < 0 && w.timeS >= plan.landingS - SAME_S) {
    path.landing = node;
    marks |= NODE_LANDING;
  }
  path.marks[node] = exhausted ? marks | NODE_EXHAUSTED : marks;
}

/** Write mass and moment of the piece that starts here; returns the litres until a tank reaches a knot, or its end. */
function writePiece(
  w: Walk,
  solidKg: number,
  solidKgM: number,
  solidLateralKgM: number,
  exhausted: boolean,
): number {
  const { path, node, tanks } = w;
  const count = tanks.length;
  let massKg = solidKg;
  let momentKgM = solidKgM;
  let lateralKgM = solidLateralKgM;
  let massPerL = 0;
  let momentPerL = 0;
  let momentCurve = 0;
  let untilL = Infinity;
  for (let i = 0; i < count; i++) {
    const tank = tanks[i];
    const litres = w.nowL[i] ?? 0;
    path.contentsL[node * count + i] = litres;
    if (tank === undefined) continue;
    massKg += tank.densityKgPerL * litres;
    momentKgM += w.nowKgM[i] ?? 0;
    lateralKgM += tank.lateralKgMPerL * litres;
    const r = exhausted ? 0 : (w.rate[i] ?? 0);
    if (r === 0) continue;
    let k = w.segment[i] ?? 0;
    // Filling starts in the segment above a knot, draining in the one below.
    if (r > 0 && k + 1 < tank.c0.length && litres >= (tank.at[k + 1] ?? Infinity) - SAME_L) k++;
    w.segment[i] = k;
    const above = litres - (tank.at[k] ?? 0);
    const c2 = tank.c2[k] ?? 0;
    massPerL += tank.densityKgPerL * r;
    momentPerL += r * ((tank.c1[k] ?? 0) + 2 * c2 * above);
    momentCurve += c2 * r * r;
    const knotL = r < 0 ? above / -r : ((tank.at[k + 1] ?? litres) - litres) / r;
    if (knotL < untilL) untilL = knotL;
  }
  path.burnedL[node] = w.burnedL;
  path.timeS[node] = w.timeS;
  path.massKg[node] = massKg;
  path.momentKgM[node] = momentKgM;
  path.lateralKgM[node] = lateralKgM;
  path.massPerL[node] = massPerL;
  path.momentPerL[node] = momentPerL;
  path.momentCurve[node] = momentCurve;
  return untilL;
}

/** Litres until take-off, the end of the climb, the landing or a change of tank by the clock, whichever is first. */
function untilEventL(w: Walk, flow: number): number {
  const { plan, path } = w;
  if (!w.airborne) return plan.taxiL - w.burnedL;
  let untilL = w.climbLeftL > 0 ? w.climbLeftL : Infinity;
  if (path.landing < 0) untilL = Math.min(untilL, (plan.landingS - w.timeS) * flow);
  if (w.nextChangeS < Infinity) untilL = Math.min(untilL, (w.nextChangeS - w.timeS) * flow);
  return untilL;
}

/** Take what is burned, and what goes round through a return line, from and into the tanks. */
function burn(w: Walk, stepL: number): void {
  const { path, node, tanks } = w;
  if (w.airborne && w.climbLeftL > 0) {
    w.climbLeftL -= stepL;
    if (w.climbLeftL <= SAME_L) {
      w.climbLeftL = 0;
      path.marks[node] = NODE_CLIMB_END;
    }
  }
  let totalL = 0;
  for (let i = 0; i < tanks.length; i++) {
    const r = w.rate[i] ?? 0;
    if (r !== 0) {
      const tank = tanks[i];
      const k = w.segment[i] ?? 0;
      const moved = (w.nowL[i] ?? 0) + r * stepL;
      const knot = tank?.at[r < 0 ? k : k + 1] ?? 0;
      const litres = Math.abs(moved - knot) < SAME_L ? knot : moved;
      fill(w, i, litres);
      if (litres === 0) path.emptied[node] = i;
      if (r > 0 && litres === tank?.usableL) path.overfilled[node] = i;
    }
    totalL += w.nowL[i] ?? 0;
  }
  w.totalL = totalL;
}

/** Go to the next tank when it is time or the one in use is empty. */
function changeTank(w: Walk): void {
  const { plan, path, nowL } = w;
  const due = w.airborne && w.timeS >= w.nextChangeS - SAME_S;
  if (due) w.nextChangeS += plan.everyS;
  const empty = (nowL[plan.order[w.turn] ?? -1] ?? 0) === 0;
  if (!due && !empty) return;
  const next = firstWithFuel(w, w.turn + 1);
  if (next !== w.turn) path.changedTo[w.node] = plan.order[next] ?? -1;
  w.turn = next;
}

/** Litres by which each tank changes for one litre burned. */
function setRates({ plan, rate, nowL, tanks, turn }: Walk, flow: number): void {
  for (let i = 0; i < tanks.length; i++) rate[i] = 0;
  const drawnPerL = plan.returnInto < 0 ? 1 : plan.pumpLPerS / flow;
  if (plan.together) {
    let feeding = 0;
    for (const i of plan.order) if ((nowL[i] ?? 0) > 0) feeding++;
    for (const i of plan.order) if ((nowL[i] ?? 0) > 0) rate[i] = -drawnPerL / feeding;
  } else rate[plan.order[turn] ?? 0] = -drawnPerL;
  const into = plan.returnInto;
  if (into < 0) return;
  const net = (rate[into] ?? 0) + drawnPerL - 1;
  const full = (nowL[into] ?? 0) >= (tanks[into]?.usableL ?? 0) - SAME_L;
  rate[into] = (net > 0 && full) || Math.abs(net) < 1e-12 ? 0 : net;
}

/** Place in the order, from `start` on and round, of the first tank with fuel; `start` itself where none has any. */
function firstWithFuel({ plan: { order }, nowL }: Walk, start: number): number {
  for (let step = 0; step < order.length; step++) {
    const at = (start + step) % order.length;
    if ((nowL[order[at] ?? -1] ?? 0) > 0) return at;
  }
  return order.length === 0 ? 0 : start % order.length;
}
