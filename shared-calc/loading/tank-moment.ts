import { InputProblem, requireRange } from '../problem.ts';
import type { Tank } from './aeroplane.ts';
import { requireArm } from './require-arm.ts';

/**
 * Moment of a tank's usable fuel over its usable litres v, as quadratics between knots:
 * moment(v) = c0 + c1 (v - at) + c2 (v - at)^2 for v from `at[k]` to `at[k + 1]`. The last knot is the usable capacity.
 */
export interface TankMoment {
  readonly densityKgPerL: number;
  readonly usableL: number;
  readonly at: Float64Array;
  readonly c0: Float64Array;
  readonly c1: Float64Array;
  readonly c2: Float64Array;
  /** Unusable fuel, for weighings that left it out. */
  readonly unusableKg: number;
  readonly unusableMomentKgM: number;
  /** Lateral moment of a litre, positive right; 0 where the manual gives no lateral arms. */
  readonly lateralKgMPerL: number;
}

/**
 * Moment of a tank over its contents, from a fixed arm or from the manual's table of arms or of moments.
 *
 * Arms are straight between an arm table's knots, so that the moment is quadratic there; moments are straight
 * between a moment table's. A table must reach from its lowest content in use to the capacity: nothing is
 * extrapolated. (A table of moments may leave out zero, where its moment is 0.) Where a table counts the
 * usable litres only, the unusable fuel is taken to lie at the arm of the lowest contents.
 * @param tank  arms within 100 m of the datum; capacity up to 5,000 L; density 0.6 to 1.1 kg/L
 * @throws RangeProblem, InputProblem naming the tank and the field
 */
export function tankMoment(tank: Tank): TankMoment {
  const field = `tanks.${tank.id}`;
  requireRange(`${field}.capacityL`, tank.capacityL, 1e-3, 5000, 'L');
  requireRange(`${field}.unusableL`, tank.unusableL, 0, tank.capacityL * (1 - 1e-9), 'L');
  requireDensity(`${field}.densityKgPerL`, tank.densityKgPerL);
  const usableL = tank.capacityL - tank.unusableL;
  const density = tank.densityKgPerL;
  const unusableKg = density * tank.unusableL;
  const lateralKgMPerL = density * lateralArmOf(tank.lateralArmM, `${field}.lateralArmM`);
  if (tank.arm.kind === 'fixed') {
    const { armM } = tank.arm;
    requireArm(`${field}.armM`, armM);
    const only = segments([0, usableL], [0], [density * armM], [0]);
    return {
      densityKgPerL: density,
      usableL,
      ...only,
      unusableKg,
      unusableMomentKgM: unusableKg * armM,
      lateralKgMPerL,
    };
  }
  const table = printedSegments(tank, field);
  // Litres that the table counts when the usable contents are zero.
  const zeroL = tank.arm.counts === 'total' ? tank.unusableL : 0;
  const lastL = zeroL + usableL;
  const first = table[0];
  const end = table.at(-1);
  if (first === undefined || end === undefined || first.fromL > zeroL || end.toL < lastL - 1e-9 * lastL) {
    throw new InputProblem(
      `${field}.arm`,
      `the table covers ${String(first?.fromL)} to ${String(end?.toL)} L; it has to cover ${String(zeroL)} to ${String(lastL)} L`,
    );
  }
  const zeroMoment = momentAt(table, zeroL);
  const used = table.filter((s) => s.toL > zeroL && s.fromL < lastL);
  const at: number[] = [];
  const c0: number[] = [];
  const c1: number[] = [];
  const c2: number[] = [];
  for (const s of used) {
    const fromL = Math.max(s.fromL, zeroL);
    const shift = fromL - s.fromL;
    at.push(fromL - zeroL);
    c0.push(s.c0 + s.c1 * shift + s.c2 * shift * shift - zeroMoment);
    c1.push(s.c1 + 2 * s.c2 * shift);
    c2.push(s.c2);
  }
  at.push(usableL);
  const lowestArmM = (c1[0] ?? 0) / density;
  const unusableMomentKgM = tank.arm.counts === 'total' ? zeroMoment : unusableKg * lowestArmM;
  const moments = { unusableKg, unusableMomentKgM, lateralKgMPerL };
  return { densityKgPerL: density, usableL, ...segments(at, c0, c1, c2), ...moments };
}

function lateralArmOf(armM: number | null | undefined, field: string): number {
  if (armM === null || armM === undefined) return 0;
  requireArm(field, armM);
  return armM;
}

/** The same tank with a fuel that is denser by a factor. What is counted as empty weight stays as it was. */
export function withDensityTimes(tank: TankMoment, factor: number): TankMoment {
  if (factor === 1) return tank;
  return {
    ...tank,
    densityKgPerL: factor * tank.densityKgPerL,
    lateralKgMPerL: factor * tank.lateralKgMPerL,
    c0: tank.c0.map((c) => factor * c),
    c1: tank.c1.map((c) => factor * c),
    c2: tank.c2.map((c) => factor * c),
  };
}

function segments(
  at: readonly number[],
  c0: readonly number[],
  c1: readonly number[],
  c2: readonly number[],
): Pick<TankMoment, 'at' | 'c0' | 'c1' | 'c2'> {
  return {
    at: Float64Array.from(at),
    c0: Float64Array.from(c0),
    c1: Float64Array.from(c1),
    c2: Float64Array.from(c2),
  };
}

/**
 * Refuse a density that no fuel of a piston engine or small turbine has, kg/L.
 * @throws RangeProblem
 */
export function requireDensity(field: string, densityKgPerL: number): void {
  const hint = densityKgPerL > 5 && densityKgPerL < 9 ? 'was lb per gallon meant?' : undefined;
  requireRange(field, densityKgPerL, 0.6, 1.1, 'kg/L', hint);
}

interface Segment {
  fromL: number;
  toL: number;
  c0: number;
  c1: number;
  c2: number;
}

/** The table as printed, over the litres that it counts, with the moment at this tank's density. */
function printedSegments(tank: Tank, field: string): Segment[] {
  const { arm, densityKgPerL: density } = tank;
  if (arm.kind === 'fixed') return [];
  const knots =
    arm.kind === 'armTable'
      ? arm.knots.map((k) => ({ volumeL: k.volumeL, value: k.armM }))
      : withEmpty(arm.knots.map((k) => ({ volumeL: k.volumeL, value: k.momentKgM })));
  requireRising(
    `${field}.arm.knots`,
    knots.map((k) => k.volumeL),
    'volumeL',
  );
  let scale = 1;
  if (arm.kind === 'momentTable') {
    requireDensity(`${field}.arm.tableDensityKgPerL`, arm.tableDensityKgPerL);
    scale = density / arm.tableDensityKgPerL;
  }
  const segments: Segment[] = [];
  knots.forEach((knot, i) => {
    const next = knots[i + 1];
    if (arm.kind === 'armTable') requireArm(`${field}.arm.knots[${String(i)}].armM`, knot.value);
    else requireRange(`${field}.arm.knots[${String(i)}].momentKgM`, knot.value, -5e5, 5e5, 'kg m');
    if (next === undefined) return;
    const slope = (next.value - knot.value) / (next.volumeL - knot.volumeL);
    const span = { fromL: knot.volumeL, toL: next.volumeL };
    if (arm.kind === 'momentTable')
      segments.push({ ...span, c0: scale * knot.value, c1: scale * slope, c2: 0 });
    else {
      const c0 = density * knot.volumeL * knot.value;
      segments.push({ ...span, c0, c1: density * (knot.value + knot.volumeL * slope), c2: density * slope });
    }
  });
  return segments;
}

function withEmpty(knots: { volumeL: number; value: number }[]): { volumeL: number; value: number }[] {
  const first = knots[0];
  return first !== undefined && first.volumeL > 0 ? [{ volumeL: 0, value: 0 }, ...knots] : knots;
}

/**
 * Refuse knots of a table that do not rise, or fewer than two of them.
 * @throws InputProblem naming the two knots
 */
export function requireRising(field: string, values: readonly number[], name: string): void {
  if (values.length < 2) throw new InputProblem(field, 'a table needs at least two knots');
  values.forEach((value, i) => {
    requireRange(`${field}[${String(i)}].${name}`, value, 0, 1e5, name.endsWith('Kg') ? 'kg' : 'L');
    const before = values[i - 1];
    if (before !== undefined && value <= before) {
      throw new InputProblem(
        field,
        `knot ${String(i + 1)} (${String(value)}) must lie above knot ${String(i)} (${String(before)})`,
      );
    }
  });
}

function momentAt(table: readonly Segment[], volumeL: number): number {
  const s = table.find((t) => volumeL >= t.fromL && volumeL <= t.toL);
  if (s === undefined) return 0;
  const u = volumeL - s.fromL;
  return s.c0 + s.c1 * u + s.c2 * u * u;
}

/** Moment of so many usable litres, kg m; contents within the tank are the caller's promise. */
export function momentOfUsableKgM(tank: TankMoment, usableL: number): number {
  return momentInSegmentKgM(tank, segmentOf(tank, usableL), usableL);
}

/** Moment of so many usable litres that lie in segment k, kg m. */
export function momentInSegmentKgM(tank: TankMoment, k: number, usableL: number): number {
  const u = usableL - (tank.at[k] ?? 0);
  return (tank.c0[k] ?? 0) + u * ((tank.c1[k] ?? 0) + u * (tank.c2[k] ?? 0));
}

/** Index of the segment in which so many litres lie; at a knot, the segment below it. */
export function segmentOf(tank: TankMoment, usableL: number): number {
  let k = tank.c0.length - 1;
  while (k > 0 && usableL <= (tank.at[k] ?? 0)) k--;
  return k;
}
