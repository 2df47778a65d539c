import { InputProblem, requireRange } from '../problem.ts';
import type { LateralLimits, LoadingAeroplane } from './aeroplane.ts';
import type { TankFuel } from './case.ts';
import type { Side } from './envelope.ts';
import type { SolidItem } from './model.ts';
import type { Path } from './path.ts';
import { requireArm } from './require-arm.ts';

/** Lateral moment of everything but the usable fuel, and the limits of the lateral CG. */
export interface LateralModel {
  readonly solidKgM: number;
  /** null where the manual gives none on that side. */
  readonly left: Side | null;
  readonly right: Side | null;
  /** From the left limit to the right one as an arm, m: the measure of a share and of "met exactly". */
  readonly widthM: number;
}

/** Where one side alone is limited, and at the middle itself, a width has to be taken from somewhere, m. */
const LEAST_WIDTH_M = 0.02;

/**
 * The lateral arms and limits of an aeroplane with a loading; null where the manual gives none.
 *
 * Nothing is taken to lie in the middle for want of a figure: the empty aeroplane, every loaded station, every tank that
 * holds something and oil that is added need their lateral arm.
 * @param solids with lateral arms of 0 where none was given
 * @throws InputProblem naming what has no lateral arm, or limits in the wrong order; RangeProblem for arms beyond 100 m
 *         and moments beyond 500,000 kg m
 */
export function lateralModel(
  aeroplane: LoadingAeroplane,
  solids: readonly SolidItem[],
  fuel: readonly TankFuel[],
): LateralModel | null {
  const { lateral } = aeroplane;
  if (lateral === null || lateral === undefined) return null;
  checkArms(aeroplane, solids, fuel);
  const { left, right, across } = lateral;
  checkLimits(lateral);
  const massKg = solids.reduce((sum, item) => sum + item.massKg, 0);
  const asArmM = (limit: number) => (across === 'arm' ? limit : limit / massKg);
  const ends = [left, right].flatMap((limit) => (limit === null ? [] : [asArmM(limit)]));
  const [first = 0, last = -first] = ends;
  const side = (limit: number | null): Side | null =>
    limit === null ? null : across === 'arm' ? { l0: 0, l1: limit, l2: 0 } : { l0: limit, l1: 0, l2: 0 };
  return {
    solidKgM: solids.reduce((sum, item) => sum + item.massKg * item.lateralArmM, 0),
    left: side(left),
    right: side(right),
    widthM: Math.max(Math.abs(last - first), LEAST_WIDTH_M),
  };
}

function checkLimits({ across, left, right }: LateralLimits): void {
  for (const [name, limit] of Object.entries({ left, right })) {
    if (limit === null) continue;
    if (across === 'arm') requireArm(`lateral.${name}`, limit);
    else requireRange(`lateral.${name}`, limit, -5e5, 5e5, 'kg m');
  }
  if (left !== null && right !== null && left >= right)
    throw new InputProblem('lateral.left', 'the left limit has to lie to the left of the right one');
}

function checkArms(
  { empty, oil, stations, tanks }: LoadingAeroplane,
  solids: readonly SolidItem[],
  fuel: readonly TankFuel[],
): void {
  requireLateral('empty', 'the empty weight', empty.lateralArmM);
  requireRange('empty.lateralArmSdM', empty.lateralArmSdM ?? 0, 0, 1, 'm');
  if (!empty.oilIncluded && oil !== null) requireLateral('oil', 'the oil', oil.lateralArmM);
  for (const { id, lateralArmM } of stations) {
    if (solids.some(({ stationId, massKg }) => stationId === id && massKg > 0))
      requireLateral(`stations.${id}`, id, lateralArmM);
  }
  tanks.forEach(({ id, lateralArmM, unusableL }, i) => {
    const isWet = (fuel[i]?.highL ?? 0) > 0 || (!empty.unusableFuelIncluded && unusableL > 0);
    if (isWet) requireLateral(`tanks.${id}`, id, lateralArmM);
  });
}

function requireLateral(field: string, name: string, armM: number | null | undefined): void {
  if (armM === null || armM === undefined)
    throw new InputProblem(`${field}.lateralArmM`, `${name} needs its lateral arm`);
  requireArm(`${field}.lateralArmM`, armM);
}

/**
 * Left and right limit as arms at a mass, m; null where the manual gives none on that side.
 * @param massKg above 0, of a flight that was followed
 */
export function lateralArmLimits(
  { left, right }: LateralModel,
  massKg: number,
): { leftM: number | null; rightM: number | null } {
  const armM = (side: Side | null) => (side === null ? null : side.l0 / massKg + side.l1);
  return { leftM: armM(left), rightM: armM(right) };
}

/** Fixed lateral moments that may be added to a path and still keep it between its limits, kg m. */
export interface LateralRoom {
  leastKgM: number;
  mostKgM: number;
}

/**
 * The lateral moments that may be added to a path from one node to another. Its lateral moment and its mass are straight
 * between nodes and so are the limiting moments, so that the nodes decide.
 * @param shiftKg added to every mass of the path
 */
export function lateralRoom(
  path: Path,
  from: number,
  to: number,
  { left, right }: LateralModel,
  shiftKg: number,
  room: LateralRoom,
): void {
  room.leastKgM = -Infinity;
  room.mostKgM = Infinity;
  for (let node = from; node <= to; node++) {
    const massKg = (path.massKg[node] ?? 0) + shiftKg;
    const lateralKgM = path.lateralKgM[node] ?? 0;
    if (left !== null) room.leastKgM = Math.max(room.leastKgM, left.l0 + left.l1 * massKg - lateralKgM);
    if (right !== null) room.mostKgM = Math.min(room.mostKgM, right.l0 + right.l1 * massKg - lateralKgM);
  }
}
