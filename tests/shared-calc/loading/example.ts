import type { LoadingAeroplane } from '../../../shared-calc/loading/aeroplane.ts';
import type { LoadingCase, StationLoad, TankFuel } from '../../../shared-calc/loading/case.ts';

/** The invented two-seater of the design's look: two tanks far apart, so that the CG runs aft and forward again. */
export const twoSeater: LoadingAeroplane = {
  empty: {
    massKg: 318,
    armM: 1.776,
    massSdKg: 1.5,
    armSdM: 0.004,
    unusableFuelIncluded: true,
    oilIncluded: true,
  },
  oil: null,
  mac: { leadingEdgeArmM: 1.518, lengthM: 1.24 },
  stations: [
    { id: 'left', name: 'Left seat', arm: { kind: 'fixed', armM: 1.965 }, leastKg: null, mostKg: 110 },
    { id: 'right', name: 'Right seat', arm: { kind: 'fixed', armM: 1.965 }, leastKg: null, mostKg: 110 },
    { id: 'bag', name: 'Baggage', arm: { kind: 'fixed', armM: 2.56 }, leastKg: null, mostKg: 20 },
  ],
  tanks: [
    {
      id: 'rear',
      name: 'Rear tank',
      capacityL: 45,
      unusableL: 0,
      densityKgPerL: 0.72,
      arm: { kind: 'fixed', armM: 2.25 },
      side: 'centre',
    },
    {
      id: 'front',
      name: 'Front tank',
      capacityL: 50,
      unusableL: 0,
      densityKgPerL: 0.72,
      arm: { kind: 'fixed', armM: 1.46 },
      side: 'centre',
    },
  ],
  envelopes: [
    {
      id: 'main',
      name: 'normal',
      phase: 'flight',
      category: '',
      across: 'arm',
      vertices: [
        { across: 1.766, massKg: 390 },
        { across: 1.766, massKg: 480 },
        { across: 1.802, massKg: 600 },
        { across: 1.89, massKg: 600 },
        { across: 1.89, massKg: 390 },
      ],
    },
  ],
  maxMasses: { rampKg: null, takeOffKg: 600, landingKg: 570, zeroFuelKg: null },
  groups: [],
  leftRightMostKg: null,
};

export function load(stationId: string, name: string, massKg: number, massSdKg = 0, armSdM = 0): StationLoad {
  return { stationId, name, massKg, biasKg: 0, massSdKg, armM: null, armSdM };
}

export function exactly(tankId: string, litres: number): TankFuel {
  return { tankId, lowL: litres, bestL: litres, highL: litres };
}

/** Two friends, full fuel less a little: inside all the way, closest to the aft limit when the front tank is empty. */
export const twoFriends: LoadingCase = {
  category: '',
  loads: [
    load('left', 'Mara', 68, 1, 0.014),
    load('right', 'Jonas', 86, 6, 0.014),
    load('bag', 'Bag, tool roll', 15, 0.5, 0.06),
  ],
  fuel: [exactly('rear', 34.3), exactly('front', 48)],
  burn: { kind: 'sequence', tankIds: ['front', 'rear'], everyMin: null, returnLine: null },
  flight: { taxiL: 1.5, climbL: 0, climbMin: 0, cruiseLPerH: 18, landingAfterS: 11_400 },
};

/** A heavier passenger, more baggage and a full rear tank: outside in the middle of the flight only. */
export const outsideInBetween: LoadingCase = {
  ...twoFriends,
  loads: [
    load('left', 'Mara', 68, 1, 0.014),
    load('right', 'Ansel', 104, 6, 0.014),
    load('bag', 'Bag, tool roll', 20, 0.5, 0.06),
  ],
  fuel: [exactly('rear', 45), exactly('front', 48)],
};
