import type { FillData, MeasuredRow, MeasuredRun } from '../../../../shared-calc/fuel/fit/fill-data.ts';
import { seededNormals, type NormalDraws } from '../../../../shared-calc/numeric/seeded-normals.ts';

// Invented tanks with known truth, to see how often the band holds it. Simulations, not measurements of any
// aeroplane: they show that the method recovers what was put in under the stated errors, nothing about real gauges.

export const gaugeKinds = ['linear', 's-shaped', 'dead zone', 'dihedral'] as const;
export type GaugeKind = (typeof gaugeKinds)[number];

export interface SimulatedTank {
  kind: GaugeKind;
  data: FillData;
  /** Usable litres for a needle at a position, 0 to 1: the curve between filling and draining. */
  truthL(position: number): number;
  /** Where the needle comes to rest for a usable volume, without sticking, lag or rounding. */
  truePosition(volumeL: number): number;
}

const GRID = 512;

/** Slope of volume over position, before scaling: the shape is what differs between kinds. */
function slopeShape(kind: GaugeKind, draws: NormalDraws): (x: number) => number {
  if (kind === 'linear') return () => 1;
  if (kind === 's-shaped') {
    const depth = 0.3 + 0.55 * draws.uniform();
    const sign = draws.uniform() < 0.5 ? 1 : -1;
    const phase = 0.4 * (draws.uniform() - 0.5);
    return (x) => Math.exp(sign * depth * Math.cos(2 * Math.PI * (x + phase)) + 0.3 * depth * (x - 0.5));
  }
  if (kind === 'dead zone') {
    const centre = draws.uniform() < 0.5 ? 0.25 + 0.5 * draws.uniform() : 0.92;
    const width = 0.02 + 0.04 * draws.uniform();
    const height = 4 + 8 * draws.uniform();
    return (x) => 1 + height * Math.exp(-0.5 * ((x - centre) / width) ** 2);
  }
  const steep = 0.5 + draws.uniform();
  return (x) => Math.exp(steep * (x - 0.5));
}

/** One tank of a kind, with a fill test of its own; the same seed gives the same tank. */
export function simulateTank(
  kind: GaugeKind,
  seed: number,
  options: { resolutionRatio: number; pourCount: number },
): SimulatedTank {
  const draws = seededNormals(seed);
  const capacityL = 30 + 80 * draws.uniform();
  const shape = slopeShape(kind, draws);
  const bottomL = (kind === 'dihedral' ? 0.06 * draws.uniform() : 0.1 * draws.uniform()) * capacityL;
  const topL =
    (kind === 'dihedral' ? 0.7 + 0.2 * draws.uniform() : 0.88 + 0.12 * draws.uniform()) * capacityL;
  const volumes = new Float64Array(GRID + 1);
  for (let i = 0; i < GRID; i++) volumes[i + 1] = (volumes[i] as number) + shape((i + 0.5) / GRID);
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
    let low = 0;
    let high = 1;
    if (volumeL <= truthL(0)) return 0;
    if (volumeL >= truthL(1)) return 1;
    for (let step = 0; step < 40; step++) {
      const middle = (low + high) / 2;
      if (truthL(middle) < volumeL) low = middle;
      else high = middle;
    }
    return (low + high) / 2;
  };
  const gauge = {
    resolutionRatio: options.resolutionRatio,
    stickingRatio: 0.002 + 0.006 * draws.uniform(),
    lagRatio: Math.abs(0.005 * draws.normal()),
  };
  const data = simulateTest(capacityL, truePosition, gauge, options.pourCount, draws);
  return { kind, data, truthL, truePosition };
}

function simulateTest(
  capacityL: number,
  truePosition: (volumeL: number) => number,
  gauge: { resolutionRatio: number; stickingRatio: number; lagRatio: number },
  pourCount: number,
  draws: NormalDraws,
): FillData {
  const containers = Array.from({ length: draws.uniform() < 0.5 ? 1 : 2 }, () => ({
    scaleSdRatio: 0.003 + 0.017 * draws.uniform(),
    pourSdRatio: 0.005 + 0.025 * draws.uniform(),
  }));
  const scaleErrors = containers.map((container) => container.scaleSdRatio * draws.normal());
  const which = draws.uniform();
  const directions: MeasuredRun['direction'][] =
    which < 0.45 ? ['filling'] : which < 0.6 ? ['draining'] : ['filling', 'draining'];
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
    const read = (volumeL: number, container: number | null) => {
      const needle = truePosition(trueL) - sign * gauge.lagRatio + gauge.stickingRatio * draws.normal();
      const rounded = Math.round(needle / gauge.resolutionRatio) * gauge.resolutionRatio;
      const reading: MeasuredRow['reading'] =
        rounded <= 0
          ? { at: 'emptyStop' }
          : rounded >= 1 - 1e-9
            ? { at: 'fullStop' }
            : { at: 'scale', positionRatio: rounded };
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
  return {
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
}
