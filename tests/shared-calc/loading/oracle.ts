import type { Envelope, LoadingAeroplane, Tank } from '../../../shared-calc/loading/aeroplane.ts';
import type { LoadingCase } from '../../../shared-calc/loading/case.ts';

/**
 * The plainest way to the same answers, for comparing: fuel followed tank by tank from the ramp for each sample anew,
 * tables read by linear search, envelopes cut by a level line in the manual's own coordinates. Slow; shares no code
 * with what it checks. Knows fixed arms and tables, no return line, no climb, and convex envelopes.
 */
export function contentsAfter(aeroplane: LoadingAeroplane, loading: LoadingCase, burnedL: number): number[] {
  const { burn, flight } = loading;
  const left = aeroplane.tanks.map((t) => loading.fuel.find((f) => f.tankId === t.id)?.bestL ?? 0);
  const order = burn.tankIds.map((id) => aeroplane.tanks.findIndex((t) => t.id === id));
  let toBurn = burnedL;
  const draw = (tank: number, litres: number) => {
    const drawn = Math.min(left[tank] ?? 0, litres);
    left[tank] = (left[tank] ?? 0) - drawn;
    toBurn -= drawn;
    return drawn;
  };
  if (burn.kind === 'sequence') for (const tank of order) draw(tank, toBurn);
  else if (burn.kind === 'together') {
    while (toBurn > 1e-12) {
      const feeding = order.filter((tank) => (left[tank] ?? 0) > 1e-12);
      if (feeding.length === 0) break;
      const least = Math.min(...feeding.map((tank) => left[tank] ?? 0), toBurn / feeding.length);
      for (const tank of feeding) draw(tank, least);
    }
  } else {
    let turn = order.findIndex((tank) => (left[tank] ?? 0) > 0);
    const next = () => {
      for (let step = 1; step <= order.length; step++) {
        const at = (turn + step) % order.length;
        if ((left[order[at] ?? 0] ?? 0) > 0) {
          turn = at;
          return;
        }
      }
    };
    let slotL = flight.taxiL + ((burn.everyMin ?? 0) / 60) * flight.cruiseLPerH;
    for (let guard = 0; toBurn > 1e-12 && guard < 1e5; guard++) {
      const drawn = draw(order[turn] ?? 0, Math.min(toBurn, slotL));
      slotL -= drawn;
      if (left.every((litres) => litres <= 1e-12)) break;
      if (slotL <= 1e-12) {
        slotL = ((burn.everyMin ?? 0) / 60) * flight.cruiseLPerH;
        next();
      } else if (toBurn > 1e-12) next();
    }
  }
  return left;
}

function tankMomentKgM(tank: Tank, litres: number): number {
  const { arm, densityKgPerL } = tank;
  if (arm.kind === 'fixed') return densityKgPerL * litres * arm.armM;
  const xs = arm.knots.map((k) => k.volumeL);
  const ys = arm.kind === 'armTable' ? arm.knots.map((k) => k.armM) : arm.knots.map((k) => k.momentKgM);
  if (arm.kind === 'momentTable' && xs[0] !== 0) {
    xs.unshift(0);
    ys.unshift(0);
  }
  const i = Math.max(
    1,
    xs.findIndex((x) => x >= litres - 1e-9),
  );
  const [x0 = 0, x1 = 1, y0 = 0, y1 = 0] = [xs[i - 1], xs[i], ys[i - 1], ys[i]];
  const y = y0 + ((y1 - y0) * (litres - x0)) / (x1 - x0);
  return arm.kind === 'armTable' ? densityKgPerL * litres * y : (y * densityKgPerL) / arm.tableDensityKgPerL;
}

export interface Sample {
  massKg: number;
  momentKgM: number;
}

export function sampleAfter(aeroplane: LoadingAeroplane, loading: LoadingCase, burnedL: number): Sample {
  let massKg = aeroplane.empty.massKg;
  let momentKgM = massKg * aeroplane.empty.armM;
  for (const one of loading.loads) {
    const arm = aeroplane.stations.find((s) => s.id === one.stationId)?.arm;
    if (arm?.kind !== 'fixed') throw new Error('the oracle knows fixed stations only');
    massKg += one.massKg + one.biasKg;
    momentKgM += (one.massKg + one.biasKg) * arm.armM;
  }
  contentsAfter(aeroplane, loading, burnedL).forEach((litres, i) => {
    const tank = aeroplane.tanks[i];
    if (tank === undefined) return;
    massKg += tank.densityKgPerL * litres;
    momentKgM += tankMomentKgM(tank, litres);
  });
  return { massKg, momentKgM };
}

/** Distances from the forward and to the aft limit, m of arm, by a level cut through a convex envelope at this mass. */
export function marginsBySlice(
  envelope: Envelope,
  aeroplane: LoadingAeroplane,
  at: Sample,
): { forwardM: number; aftM: number } {
  const masses = envelope.vertices.map((v) => v.massKg);
  const level = Math.min(Math.max(at.massKg, Math.min(...masses)), Math.max(...masses));
  const xs: number[] = [];
  envelope.vertices.forEach((a, i) => {
    const b = envelope.vertices[(i + 1) % envelope.vertices.length] ?? a;
    if ((a.massKg - level) * (b.massKg - level) > 0) return;
    if (a.massKg === b.massKg) xs.push(a.across, b.across);
    else xs.push(a.across + ((b.across - a.across) * (level - a.massKg)) / (b.massKg - a.massKg));
  });
  const toArm = (x: number) => {
    if (envelope.across === 'moment') return x / level;
    const { leadingEdgeArmM = 0, lengthM = 1 } = aeroplane.mac ?? {};
    return envelope.across === 'mac' ? leadingEdgeArmM + (x * lengthM) / 100 : x;
  };
  const armM = at.momentKgM / at.massKg;
  return { forwardM: armM - toArm(Math.min(...xs)), aftM: toArm(Math.max(...xs)) - armM };
}
