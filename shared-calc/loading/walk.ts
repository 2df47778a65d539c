import { InputProblem } from '../problem.ts';
import type { BurnPlan } from './burn.ts';
import { NODE_CLIMB_END, NODE_EXHAUSTED, NODE_LANDING, NODE_TAKE_OFF, type Path } from './path.ts';
import { momentOfUsableKgM, segmentOf, type TankMoment } from './tank-moment.ts';

/** Contents closer to a knot, to full or to empty than this are there, L: a millionth of a drop. */
const SAME_L = 1e-9;
/** Where a return line gives back part of each tankful, the last litre comes in ever smaller helpings: here it ends, L. */
const EXHAUSTED_L = 1e-6;
const MOST_NODES = 5000;

/**
 * Follow the fuel from ramp until it is exhausted and write the pieces of the flight into `path`.
 *
 * Each tank changes at a constant rate per litre burned between nodes, so that mass is linear there and moment at
 * most quadratic. While taxiing no time passes (take-off is time zero) and a return line works at the cruise flow.
 * Fuel returned into a full tank is lost overboard: from there on, mass falls faster than the engine burns.
 * @param solidKg, solidKgM  mass and moment of all but the usable fuel
 * @param contentsL          usable litres in each tank at the ramp, within its capacity (the caller's promise)
 * @throws InputProblem where tanks would be changed more than some thousand times
 */
export function walk(
  path: Path,
  plan: BurnPlan,
  tanks: readonly TankMoment[],
  contentsL: readonly number[],
  solidKg: number,
  solidKgM: number,
): void {
  const count = tanks.length;
  const now = contentsL.slice();
  const rate = new Array<number>(count).fill(0);
  const segment = new Array<number>(count).fill(0);
  // Moment of each tank's contents: looked up again only where fuel has moved.
  const fuelKgM = new Array<number>(count).fill(0);
  let total = 0;
  for (let i = 0; i < count; i++) {
    total += now[i] ?? 0;
    const tank = tanks[i];
    if (tank !== undefined) fuelKgM[i] = momentOfUsableKgM(tank, now[i] ?? 0);
  }
  let turn = firstWithFuel(plan.order, now, 0);
  let burnedL = 0;
  let timeS = 0;
  let nextChangeS = plan.everyS;
  let airborne = false;
  let climbing = false;
  let climbLeftL = plan.climbL;
  let node = 0;
  let marks = 0;
  let emptied = -1;
  let overfilled = -1;
  let changedTo = -1;
  path.takeOff = -1;
  path.landing = -1;

  for (;;) {
    if (node > MOST_NODES) throw new InputProblem('burn', 'tanks would be changed more than 5,000 times');
    if (!airborne && burnedL >= plan.taxiL - SAME_L) {
      airborne = true;
      climbing = climbLeftL > 0;
      path.takeOff = node;
      marks |= NODE_TAKE_OFF;
    }
    if (airborne && path.landing < 0 && timeS >= plan.landingS - 1e-6) {
      path.landing = node;
      marks |= NODE_LANDING;
    }
    if (total <= EXHAUSTED_L) marks |= NODE_EXHAUSTED;
    const flow = climbing ? plan.climbLPerS : plan.cruiseLPerS;
    const exhausted = total <= EXHAUSTED_L;
    rate.fill(0);
    if (!exhausted) setRates(rate, plan, tanks, now, turn, flow);

    let massKg = solidKg;
    let momentKgM = solidKgM;
    let massPerL = 0;
    let momentPerL = 0;
    let momentCurve = 0;
    let stepL = exhausted ? 0 : Infinity;
    for (let i = 0; i < count; i++) {
      const tank = tanks[i];
      const litres = now[i] ?? 0;
      const r = rate[i] ?? 0;
      path.contentsL[node * count + i] = litres;
      if (tank === undefined) continue;
      massKg += tank.densityKgPerL * litres;
      momentKgM += fuelKgM[i] ?? 0;
      if (r === 0) continue;
      let k = segmentOf(tank, litres);
      // Filling starts in the segment above a knot, draining in the one below.
      if (r > 0 && k + 1 < tank.c0.length && litres >= (tank.at[k + 1] ?? Infinity) - SAME_L) k++;
      segment[i] = k;
      const above = litres - (tank.at[k] ?? 0);
      const c1 = tank.c1[k] ?? 0;
      const c2 = tank.c2[k] ?? 0;
      massPerL += tank.densityKgPerL * r;
      momentPerL += r * (c1 + 2 * c2 * above);
      momentCurve += c2 * r * r;
      const untilL = r < 0 ? above / -r : ((tank.at[k + 1] ?? litres) - litres) / r;
      if (untilL < stepL) stepL = untilL;
    }
    path.burnedL[node] = burnedL;
    path.timeS[node] = timeS;
    path.massKg[node] = massKg;
    path.momentKgM[node] = momentKgM;
    path.massPerL[node] = massPerL;
    path.momentPerL[node] = momentPerL;
    path.momentCurve[node] = momentCurve;
    path.marks[node] = marks;
    path.emptied[node] = emptied;
    path.overfilled[node] = overfilled;
    path.changedTo[node] = changedTo;
    path.nodes = node + 1;
    if (exhausted) return;

    const secondsPerL = airborne ? 1 / flow : 0;
    if (!airborne) stepL = Math.min(stepL, plan.taxiL - burnedL);
    else {
      if (climbing) stepL = Math.min(stepL, climbLeftL);
      if (path.landing < 0) stepL = Math.min(stepL, (plan.landingS - timeS) * flow);
      if (nextChangeS < Infinity) stepL = Math.min(stepL, (nextChangeS - timeS) * flow);
    }
    burnedL += stepL;
    timeS += stepL * secondsPerL;
    node++;
    marks = 0;
    emptied = -1;
    overfilled = -1;
    changedTo = -1;
    if (climbing) {
      climbLeftL -= stepL;
      if (climbLeftL <= SAME_L) {
        climbing = false;
        marks |= NODE_CLIMB_END;
      }
    }
    total = 0;
    for (let i = 0; i < count; i++) {
      const r = rate[i] ?? 0;
      if (r !== 0) {
        const tank = tanks[i];
        const k = segment[i] ?? 0;
        const moved = (now[i] ?? 0) + r * stepL;
        const knot = tank?.at[r < 0 ? k : k + 1] ?? 0;
        now[i] = Math.abs(moved - knot) < SAME_L ? knot : moved;
        if (tank !== undefined) fuelKgM[i] = momentOfUsableKgM(tank, now[i] ?? 0);
        if (now[i] === 0) emptied = i;
        if (r > 0 && now[i] === tank?.usableL) overfilled = i;
      }
      total += now[i] ?? 0;
    }
    if (plan.together || total <= EXHAUSTED_L) continue;
    const due = airborne && timeS >= nextChangeS - 1e-6;
    if (due) nextChangeS += plan.everyS;
    if (due || (now[plan.order[turn] ?? -1] ?? 0) === 0) {
      const next = firstWithFuel(plan.order, now, turn + 1);
      if (next !== turn) changedTo = plan.order[next] ?? -1;
      turn = next;
    }
  }
}

/** Litres by which each tank changes for one litre burned. */
function setRates(
  rate: number[],
  plan: BurnPlan,
  tanks: readonly TankMoment[],
  now: readonly number[],
  turn: number,
  flow: number,
): void {
  const drawnPerL = plan.returnInto < 0 ? 1 : plan.pumpLPerS / flow;
  if (plan.together) {
    let feeding = 0;
    for (const i of plan.order) if ((now[i] ?? 0) > 0) feeding++;
    for (const i of plan.order) if ((now[i] ?? 0) > 0) rate[i] = -drawnPerL / feeding;
  } else {
    const from = plan.order[turn] ?? 0;
    rate[from] = -drawnPerL;
  }
  const into = plan.returnInto;
  if (into < 0) return;
  const net = (rate[into] ?? 0) + drawnPerL - 1;
  const full = (now[into] ?? 0) >= (tanks[into]?.usableL ?? 0) - SAME_L;
  rate[into] = net > 0 && full ? 0 : Math.abs(net) < 1e-12 ? 0 : net;
}

/** Position in the order, from `start` on and round, of the first tank with fuel; `start` itself where none has any. */
function firstWithFuel(order: readonly number[], now: readonly number[], start: number): number {
  for (let step = 0; step < order.length; step++) {
    const at = (start + step) % order.length;
    if ((now[order[at] ?? -1] ?? 0) > 0) return at;
  }
  return order.length === 0 ? 0 : start % order.length;
}
