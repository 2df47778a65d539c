import type { FillData, MeasuredRow, MeasuredRun } from '../../../../shared-calc/fuel/fit/fill-data.ts';
import { seededNormals, type NormalDraws } from '../../../../shared-calc/numeric/seeded-normals.ts';

// Invented tanks with known truth, to see how often the band holds it. Simulations, not measurements of any
// aeroplane: they show that the method recovers what was put in under the stated errors, nothing about real gauges.

/** The kinds of the mix over which the shares are stated, an equal number of each. */
export const gaugeKinds = ['linear', 's-shaped', 'dead zone', 'dihedral'] as const;
/** Harsher than the mix, shown apart: a large jump inside the sweep, a jump just below the full stop. */
export const harshKinds = ['large dead zone', 'jump below the stop'] as const;
export type GaugeKind = (typeof gaugeKinds)[number] | (typeof harshKinds)[number];

export interface SimulatedTank {
  kind: GaugeKind;
  data: FillData;
  /** What really was in the tank at each row of each run. */
  trueVolumesL: number[][];
  /** Usable litres for a needle at a position, 0 to 1: the curve between filling and draining. */
  truthL(position: number): number;
  /** Where the float stands for a usable volume, without sticking, lag or rounding; beyond 0 or 1 at a stop. */
  truePosition(volumeL: number): number;
}

const GRID = 512;

/** A gauge before it is scaled to its tank. */
interface Shape {
  /** Slope of volume over position: the shape is what differs between kinds. */
  slope(x: number): number;
  /** What the tank holds when the needle leaves the empty stop and reaches the full one, shares of the capacity. */
  readonly bottomRatio: number;
  readonly topRatio: number;
}

function shapeOf(kind: GaugeKind, draws: NormalDraws): Shape {
  const ends = { bottomRatio: 0.1 * draws.uniform(), topRatio: 0.88 + 0.12 * draws.uniform() };
  switch (kind) {
    case 'linear':
      return { ...ends, slope: () => 1 };
    case 's-shaped': {
      const depth = 0.3 + 0.55 * draws.uniform();
      const sign = draws.uniform() < 0.5 ? 1 : -1;
      const phase = 0.4 * (draws.uniform() - 0.5);
      return {
        ...ends,
        slope: (x) => Math.exp(sign * depth * Math.cos(2 * Math.PI * (x + phase)) + 0.3 * depth * (x - 0.5)),
      };
    }
    case 'dead zone': {
      // At the top: the float is at its stop while a good part of the tank is still to be filled.
      const bend = -0.4 * draws.uniform();
      const gentle = (x: number) => Math.exp(bend * (x - 0.5));
      if (draws.uniform() < 0.5)
        return { bottomRatio: ends.bottomRatio, topRatio: 0.7 + 0.18 * draws.uniform(), slope: gentle };
      // Inside: a jump that holds 5 to 13 % as much as all the rest, within 1.5 to 4 % of the sweep.
      return {
        ...ends,
        slope: jump(gentle, 0.2 + 0.6 * draws.uniform(), 0.05 + 0.08 * draws.uniform(), draws),
      };
    }
    case 'jump below the stop':
      return { ...ends, slope: jump(() => 1, 0.92, 0.05 + 0.08 * draws.uniform(), draws) };
    case 'large dead zone': {
      const centre = 0.25 + 0.5 * draws.uniform();
      const width = 0.02 + 0.04 * draws.uniform();
      const height = 4 + 8 * draws.uniform();
      return { ...ends, slope: (x) => 1 + height * Math.exp(-0.5 * ((x - centre) / width) ** 2) };
    }
    case 'dihedral': {
      const steep = 0.5 + draws.uniform();
      return {
        bottomRatio: 0.06 * draws.uniform(),
        topRatio: 0.7 + 0.2 * draws.uniform(),
        slope: (x) => Math.exp(steep * (x - 0.5)),
      };
    }
  }
}

/** A slope with a box upon it that holds a share of what the rest holds. */
function jump(
  slope: (x: number) => number,
  centre: number,
  share: number,
  draws: NormalDraws,
): (x: number) => number {
  const half = 0.0075 + 0.0125 * draws.uniform();
  return (x) => slope(x) + (Math.abs(x - centre) < half ? share / (2 * half) : 0);
}

export interface TestOptions {
  resolutionRatio: number;
  pourCount: number;
}

/** One tank of a kind, with a fill test of its own; the same seed gives the same tank. */
export function simulateTank(kind: GaugeKind, seed: number, options: TestOptions): SimulatedTank {
  const draws = seededNormals(seed);
  const capacityL = 30 + 80 * draws.uniform();
  const needle = needleOf(shapeOf(kind, draws), capacityL);
  return {
    kind,
    ...needle,
    ...simulateTest(capacityL, needle, behaviour(options, draws), options, draws),
  };
}

/** One and the same gauge in every test: an S, at its full stop while a quarter of the tank is still to be filled. */
export function simulateDeadTopQuarter(seed: number, options: TestOptions): SimulatedTank {
  const draws = seededNormals(seed);
  const capacityL = 60;
  const needle = needleOf(
    {
      bottomRatio: 0.05,
      topRatio: 0.75,
      slope: (x) => Math.exp(0.6 * Math.cos(2 * Math.PI * x) + 0.2 * (x - 0.5)),
    },
    capacityL,
  );
  const gauge = { resolutionRatio: options.resolutionRatio, stickingRatio: 0.005, lagRatio: 0.004 };
  return { kind: 's-shaped', ...needle, ...simulateTest(capacityL, needle, gauge, options, draws) };
}

/** How a needle sticks and lags, drawn for one tank. */
function behaviour({ resolutionRatio }: TestOptions, draws: NormalDraws): Behaviour {
  return {
    resolutionRatio,
    stickingRatio: 0.002 + 0.006 * draws.uniform(),
    lagRatio: Math.abs(0.005 * draws.normal()),
  };
}

interface Behaviour {
  resolutionRatio: number;
  stickingRatio: number;
  lagRatio: number;
}

type Needle = Pick<SimulatedTank, 'truthL' | 'truePosition'>;

function needleOf(shape: Shape, capacityL: number): Needle {
  const bottomL = shape.bottomRatio * capacityL;
  const topL = shape.topRatio * capacityL;
  const volumes = new Float64Array(GRID + 1);
  for (let i = 0; i < GRID; i++) volumes[i + 1] = (volumes[i] as number) + shape.slope((i + 0.5) / GRID);
  const span = volumes[GRID] as number;
  for (let i = 0; i <= GRID; i++) volumes[i] = bottomL + ((topL - bottomL) * (volumes[i] as number)) / span;
  const truthL = (position: number) => {
    const scaled = Math.min(1, Math.max(0, position)) * GRID;
    const cell = Math.min(GRID - 1, Math.floor(scaled));
    return (
      (volumes[cell] as number) +
      (scaled - cell) * ((volumes[cell + 1] as number) - (volumes[cell] as number))
    );
  };
  const truePosition = (volumeL: number) => {
    // Past its ends the float pushes on: a needle well against its stop neither lags nor sticks off it again.
    const cellL = (cell: number) => (volumes[cell + 1] as number) - (volumes[cell] as number);
    if (volumeL <= truthL(0)) return (volumeL - truthL(0)) / (cellL(0) * GRID);
    if (volumeL >= truthL(1)) return 1 + (volumeL - truthL(1)) / (cellL(GRID - 1) * GRID);
    let low = 0;
    let high = 1;
    for (let step = 0; step < 40; step++) {
      const middle = (low + high) / 2;
      if (truthL(middle) < volumeL) low = middle;
      else high = middle;
    }
    return (low + high) / 2;
  };
  return { truthL, truePosition };
}

function simulateTest(
  capacityL: number,
  { truePosition }: Needle,
  gauge: Behaviour,
  { pourCount }: TestOptions,
  draws: NormalDraws,
): Pick<SimulatedTank, 'data' | 'trueVolumesL'> {
  const containers = Array.from({ length: draws.uniform() < 0.5 ? 1 : 2 }, () => ({
    scaleSdRatio: 0.003 + 0.017 * draws.uniform(),
    pourSdRatio: 0.005 + 0.025 * draws.uniform(),
  }));
  const scaleErrors = containers.map((container) => container.scaleSdRatio * draws.normal());
  const which = draws.uniform();
  const directions: MeasuredRun['direction'][] =
    which < 0.45 ? ['filling'] : which < 0.6 ? ['draining'] : ['filling', 'draining'];
  const trueVolumesL: number[][] = [];
  const runs = directions.map((direction, index): MeasuredRun => {
    const count =
      directions.length === 1
        ? pourCount
        : index === 0
          ? Math.ceil(pourCount / 2)
          : Math.floor(pourCount / 2);
    const sign = direction === 'filling' ? 1 : -1;
    const startUsableL = direction === 'filling' ? 0 : capacityL;
    const startSdL = 0.2 + 0.5 * draws.uniform();
    const nominalL = capacityL / (count + 0.3);
    let trueL = startUsableL + startSdL * draws.normal();
    const rows: MeasuredRow[] = [];
    const truth: number[] = [];
    trueVolumesL.push(truth);
    const read = (volumeL: number, container: number | null) => {
      const needle = truePosition(trueL) - sign * gauge.lagRatio + gauge.stickingRatio * draws.normal();
      const rounded = Math.round(needle / gauge.resolutionRatio) * gauge.resolutionRatio;
      const reading: MeasuredRow['reading'] =
        rounded <= 0
          ? { at: 'emptyStop' }
          : rounded >= 1 - 1e-9
            ? { at: 'fullStop' }
            : { at: 'scale', positionRatio: rounded };
      truth.push(trueL);
      rows.push({ volumeL, container, reading, setAside: false });
    };
    read(0, null);
    for (let pour = 0; pour < count; pour++) {
      const container = Math.floor(draws.uniform() * containers.length);
      const sd = containers[container]?.pourSdRatio ?? 0;
      trueL += sign * nominalL * (1 + (scaleErrors[container] ?? 0) + sd * draws.normal());
      read(nominalL, container);
    }
    return { direction, startUsableL, startSdL, rows };
  });
  const data: FillData = {
    capacityL,
    gauge: {
      resolutionRatio: gauge.resolutionRatio,
      stickingSdRatio: 0.005,
      lagRatio: 0.004,
      lagSdRatio: 0.003,
    },
    containers,
    runs,
  };
  return { data, trueVolumesL };
}
