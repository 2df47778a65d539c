import { InputProblem, requireRange } from '../problem.ts';
import type { LoadingAeroplane, Station } from './aeroplane.ts';
import { burnPlan, type BurnPlan } from './burn.ts';
import type { LoadingCase, StationLoad, TankFuel } from './case.ts';
import { envelopeBands, type EnvelopeBands } from './envelope.ts';
import { ARM_MOST_M, requireArm, requireMass } from './require-arm.ts';
import { lateralModel, type LateralModel } from './lateral.ts';
import { tankMoment, type TankMoment } from './tank-moment.ts';

/** An aeroplane with one loading, checked and ready to be followed. Make it with `loadingModel`. */
export interface LoadingModel {
  readonly aeroplane: LoadingAeroplane;
  readonly loading: LoadingCase;
  /** Everything but the usable fuel, each with its uncertainty; the empty aeroplane first. */
  readonly solids: readonly SolidItem[];
  readonly solidKg: number;
  readonly solidKgM: number;
  readonly tanks: readonly TankMoment[];
  /** Lateral arms and limits; null where the manual gives none. */
  readonly lateral: LateralModel | null;
  /** In the order of the tanks. */
  readonly fuel: readonly TankFuel[];
  readonly plan: BurnPlan;
  /** Those of the category flown. */
  readonly envelopes: readonly EnvelopeBands[];
}

/** A mass with its arm, and how well both are known (standard uncertainties). */
export interface SolidItem {
  /** null for what is always aboard: the empty aeroplane, oil, unusable fuel. */
  readonly stationId: string | null;
  readonly name: string;
  readonly massKg: number;
  readonly armM: number;
  readonly massSdKg: number;
  readonly armSdM: number;
  /** Positive right; 0 where the manual gives no lateral arms. */
  readonly lateralArmM: number;
  readonly lateralArmSdM: number;
}

/**
 * Check an aeroplane and a loading of it, and make both ready for following the flight.
 *
 * Oil and unusable fuel are added where, and only where, the weighing left them out. A stated mass counts with its
 * bias. Two seats, four tanks or forty stations are all the same.
 * @throws RangeProblem for a number outside its range, InputProblem for anything else: an unknown station or tank,
 *         a tank over its capacity, figures of fuel out of order, an envelope that crosses itself, an empty mass
 *         above the maximum, a category that no envelope has
 */
export function loadingModel(aeroplane: LoadingAeroplane, loading: LoadingCase): LoadingModel {
  checkEmpty(aeroplane);
  const tanks = aeroplane.tanks.map((tank) => tankMoment(tank));
  const fuel = aeroplane.tanks.map((tank, i) => {
    const given = loading.fuel.filter((f) => f.tankId === tank.id);
    const one = given[0];
    if (one === undefined || given.length > 1) {
      throw new InputProblem(
        `fuel.${tank.id}`,
        one === undefined ? 'its contents are missing' : 'its contents are given twice',
      );
    }
    checkFuel(one, tanks[i]?.usableL ?? 0);
    return one;
  });
  for (const { tankId } of loading.fuel) {
    if (!aeroplane.tanks.some((tank) => tank.id === tankId))
      throw new InputProblem('fuel', `there is no tank ${tankId}`);
  }
  const plan = burnPlan(
    loading.burn,
    loading.flight,
    aeroplane.tanks.map((tank) => tank.id),
    fuel.filter((f) => f.highL > 0).map((f) => f.tankId),
  );
  const leastL = fuel.reduce((sum, f) => sum + f.lowL, 0);
  if (leastL < plan.taxiL) {
    throw new InputProblem(
      'flight.taxiL',
      `taxi takes ${String(plan.taxiL)} L; the tanks may hold only ${String(leastL)} L`,
    );
  }
  const solids = solidItems(aeroplane, loading, tanks);
  return {
    aeroplane,
    loading,
    solids,
    solidKg: solids.reduce((sum, item) => sum + item.massKg, 0),
    solidKgM: solids.reduce((sum, item) => sum + item.massKg * item.armM, 0),
    tanks,
    lateral: lateralModel(aeroplane, solids, fuel),
    fuel,
    plan,
    envelopes: envelopesOf(aeroplane, loading.category),
  };
}

function checkEmpty({
  empty,
  oil,
  maxMasses,
  groups,
  stations,
  tanks,
  leftRightMostKg,
}: LoadingAeroplane): void {
  requireRange('empty.massKg', empty.massKg, 1, 50_000, 'kg');
  requireArm('empty.armM', empty.armM);
  requireRange('empty.massSdKg', empty.massSdKg, 0, empty.massKg / 2, 'kg');
  requireRange('empty.armSdM', empty.armSdM, 0, 1, 'm');
  if (!empty.oilIncluded) {
    if (oil === null)
      throw new InputProblem('oil', 'the weighing left the oil out: its mass and arm are needed');
    requireMass('oil.massKg', oil.massKg);
    requireArm('oil.armM', oil.armM);
  }
  for (const [name, massKg] of Object.entries(maxMasses)) {
    if (massKg === null) continue;
    const hint = massKg < empty.massKg ? 'the empty mass alone is above it' : undefined;
    requireRange(`maxMasses.${name}`, massKg, empty.massKg, 50_000, 'kg', hint);
  }
  for (const station of stations) checkStation(station);
  requireDistinct('stations', stations);
  requireDistinct('tanks', tanks);
  for (const group of groups) {
    requireMass(`groups.${group.id}.mostKg`, group.mostKg);
    requireRange(`groups.${group.id}.emptyPartKg`, group.emptyPartKg, 0, empty.massKg, 'kg');
    const unknown = group.stationIds.find((id) => !stations.some((s) => s.id === id));
    if (unknown !== undefined) throw new InputProblem(`groups.${group.id}`, `there is no station ${unknown}`);
  }
  if (leftRightMostKg !== null) requireMass('leftRightMostKg', leftRightMostKg);
}

function requireDistinct(field: string, items: readonly { id: string }[]): void {
  const twice = items.find((item, i) => items.findIndex((other) => other.id === item.id) !== i);
  if (twice !== undefined) throw new InputProblem(field, `${twice.id} is there twice`);
}

function checkStation({ id, arm, leastKg, mostKg }: Station): void {
  const field = `stations.${id}`;
  if (mostKg !== null) requireMass(`${field}.mostKg`, mostKg);
  if (leastKg !== null) requireRange(`${field}.leastKg`, leastKg, 0, mostKg ?? 50_000, 'kg');
  if (arm.kind === 'fixed') requireArm(`${field}.armM`, arm.armM);
  else if (arm.kind === 'adjustable') {
    requireArm(`${field}.foremostM`, arm.foremostM);
    requireRange(`${field}.aftmostM`, arm.aftmostM, arm.foremostM, ARM_MOST_M, 'm');
  } else {
    arm.knots.forEach((knot, i) => {
      const before = arm.knots[i - 1];
      const lowest = before === undefined ? 0 : before.massKg;
      requireRange(`${field}.arm.knots[${String(i)}].massKg`, knot.massKg, lowest, 50_000, 'kg');
      requireArm(`${field}.arm.knots[${String(i)}].armM`, knot.armM);
      if (before?.massKg === knot.massKg)
        throw new InputProblem(`${field}.arm`, `${String(knot.massKg)} kg is there twice`);
    });
  }
}

function checkFuel({ tankId, lowL, bestL, highL }: TankFuel, usableL: number): void {
  const field = `fuel.${tankId}`;
  // Full by the placard is full: capacity less unusable may differ from the typed figure in the last place.
  const fullL = usableL * (1 + 1e-9);
  requireRange(`${field}.lowL`, lowL, 0, fullL, 'L');
  requireRange(`${field}.bestL`, bestL, lowL, fullL, 'L');
  requireRange(`${field}.highL`, highL, bestL, fullL, 'L');
}

function solidItems(
  aeroplane: LoadingAeroplane,
  loading: LoadingCase,
  tanks: readonly TankMoment[],
): SolidItem[] {
  const { empty, oil } = aeroplane;
  const items: SolidItem[] = [{ stationId: null, name: 'empty aeroplane', ...sized(empty) }];
  if (!empty.oilIncluded && oil !== null)
    items.push({ stationId: null, name: 'oil', ...sized({ ...oil, massSdKg: 0, armSdM: 0 }) });
  if (!empty.unusableFuelIncluded) {
    tanks.forEach((tank, i) => {
      const name = aeroplane.tanks[i]?.name ?? '';
      if (tank.unusableKg === 0) return;
      const armM = tank.unusableMomentKgM / tank.unusableKg;
      items.push({
        stationId: null,
        name: `unusable fuel, ${name}`,
        massKg: tank.unusableKg,
        armM,
        massSdKg: 0,
        armSdM: 0,
        lateralArmM: aeroplane.tanks[i]?.lateralArmM ?? 0,
        lateralArmSdM: 0,
      });
    });
  }
  const totals = new Map<string, number>();
  loading.loads.forEach((load, i) => {
    const at = `loads[${String(i)}]`;
    requireMass(`${at}.massKg`, load.massKg);
    requireRange(`${at}.biasKg`, load.biasKg, -load.massKg, 100, 'kg');
    requireRange(`${at}.massSdKg`, load.massSdKg, 0, 1000, 'kg');
    requireRange(`${at}.armSdM`, load.armSdM, 0, 5, 'm');
    totals.set(load.stationId, (totals.get(load.stationId) ?? 0) + load.massKg + load.biasKg);
  });
  loading.loads.forEach((load, i) => {
    const station = aeroplane.stations.find((s) => s.id === load.stationId);
    if (station === undefined)
      throw new InputProblem(`loads[${String(i)}].stationId`, `there is no station ${load.stationId}`);
    const armM = armOfLoadM(station, load, `loads[${String(i)}]`, totals.get(station.id) ?? 0);
    const massKg = load.massKg + load.biasKg;
    items.push({
      stationId: station.id,
      name: load.name,
      massKg,
      armM,
      massSdKg: load.massSdKg,
      armSdM: load.armSdM,
      lateralArmM: station.lateralArmM ?? 0,
      lateralArmSdM: 0,
    });
  });
  return items;
}

function sized(x: {
  massKg: number;
  armM: number;
  massSdKg: number;
  armSdM: number;
  lateralArmM?: number | null | undefined;
  lateralArmSdM?: number | undefined;
}): Omit<SolidItem, 'stationId' | 'name'> {
  const { massKg, armM, massSdKg, armSdM } = x;
  const lateral = { lateralArmM: x.lateralArmM ?? 0, lateralArmSdM: x.lateralArmSdM ?? 0 };
  return { massKg, armM, massSdKg, armSdM, ...lateral };
}

/** Arm of a load: the station's own, the seat's as it stands, or the table's for all that the station holds. */
function armOfLoadM({ id, arm }: Station, load: StationLoad, field: string, stationKg: number): number {
  if (arm.kind === 'adjustable') {
    if (load.armM === null) throw new InputProblem(`${field}.armM`, `say where ${id} stands`);
    requireRange(`${field}.armM`, load.armM, arm.foremostM, arm.aftmostM, 'm');
    return load.armM;
  }
  if (load.armM !== null)
    throw new InputProblem(`${field}.armM`, `${id} cannot be moved; its arm is the station's`);
  if (arm.kind === 'fixed') return arm.armM;
  if (stationKg === 0) return arm.knots[0]?.armM ?? 0;
  for (let k = 0; k + 1 < arm.knots.length; k++) {
    const a = arm.knots[k];
    const b = arm.knots[k + 1];
    if (a !== undefined && b !== undefined && stationKg >= a.massKg && stationKg <= b.massKg) {
      return a.armM + ((b.armM - a.armM) * (stationKg - a.massKg)) / (b.massKg - a.massKg);
    }
  }
  const ends = `${String(arm.knots[0]?.massKg)} to ${String(arm.knots.at(-1)?.massKg)} kg`;
  throw new InputProblem(
    `${field}.massKg`,
    `the table of arms of ${id} covers ${ends}, not ${String(stationKg)} kg`,
  );
}

function envelopesOf(aeroplane: LoadingAeroplane, category: string): EnvelopeBands[] {
  requireDistinct('envelopes', aeroplane.envelopes);
  const all = aeroplane.envelopes.map((envelope) => envelopeBands(envelope, aeroplane.mac));
  const flown = all.filter((envelope) => envelope.category === '' || envelope.category === category);
  if (all.length > 0 && flown.length === 0) {
    throw new InputProblem('category', `no envelope is for the category "${category}"`);
  }
  return flown;
}
