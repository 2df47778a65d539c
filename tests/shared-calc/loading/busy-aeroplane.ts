import type { LoadingAeroplane, Vertex } from '../../../shared-calc/loading/aeroplane.ts';
import type { LoadingCase } from '../../../shared-calc/loading/case.ts';
import { load } from './example.ts';

/** Eight edges round the likely CG, a little wider each time. */
function outline(widerM: number): Vertex[] {
  return [
    [1.77, 380],
    [1.762, 430],
    [1.768, 520],
    [1.8, 640],
    [1.86, 650],
    [1.93, 640],
    [1.935, 500],
    [1.93, 380],
  ].map(([across = 0, massKg = 0]) => ({ across: across + (across < 1.85 ? -widerM : widerM), massKg }));
}

/** The size that speed is promised for: twelve stations, four tanks with tables, four envelopes of eight edges. */
export const busyAeroplane: LoadingAeroplane = {
  empty: {
    massKg: 330,
    armM: 1.8,
    massSdKg: 1,
    armSdM: 0.003,
    unusableFuelIncluded: true,
    oilIncluded: true,
  },
  oil: null,
  mac: null,
  stations: Array.from({ length: 12 }, (_, i) => ({
    id: `s${String(i)}`,
    name: `station ${String(i)}`,
    arm: { kind: 'fixed', armM: 1.5 + 0.07 * i },
    leastKg: null,
    mostKg: 100,
  })),
  tanks: Array.from({ length: 4 }, (_, i) => ({
    id: `t${String(i)}`,
    name: `tank ${String(i)}`,
    capacityL: 30,
    unusableL: 1,
    densityKgPerL: 0.72,
    side: i % 2 === 0 ? 'left' : 'right',
    arm: {
      kind: 'armTable',
      counts: 'usable',
      knots: [0, 6, 12, 18, 24, 29].map((volumeL, k) => ({
        volumeL,
        armM: ([1.6, 1.95, 2.05, 1.75][i] ?? 0) + 0.004 * k * (i - 1.5),
      })),
    },
  })),
  envelopes: [0, 0.004, 0.008, 0.012].map((widerM, i) => ({
    id: `e${String(i)}`,
    name: `envelope ${String(i)}`,
    phase: 'flight',
    category: '',
    across: 'arm',
    vertices: outline(widerM),
  })),
  maxMasses: { rampKg: 652, takeOffKg: 650, landingKg: 640, zeroFuelKg: 600 },
  groups: [],
  leftRightMostKg: null,
};

export const busyLoading: LoadingCase = {
  category: '',
  loads: busyAeroplane.stations.map(({ id }, i) => load(id, id, 8 + 2 * (i % 4), 1, 0.01)),
  fuel: busyAeroplane.tanks.map(({ id }) => ({ tankId: id, lowL: 26, bestL: 27, highL: 28 })),
  burn: { kind: 'sequence', tankIds: ['t1', 't0', 't2', 't3'], everyMin: null, returnLine: null },
  flight: { taxiL: 1, climbL: 4, climbMin: 10, cruiseLPerH: 20, landingAfterS: 12_000 },
};

/** The same with every tank's contents known, so that one path is followed. */
export const busyCertain: LoadingCase = {
  ...busyLoading,
  fuel: busyLoading.fuel.map((f) => ({ ...f, lowL: f.bestL, highL: f.bestL })),
};
