import type { AircraftRecord, LoadingRecord, PersonRecord } from '../../shared-calc/loading/records.ts';

const manual = { from: 'manual', comparedOn: '2026-04-02' } as const;

/** An invented two-seater with two tanks, as a person would have typed it. */
export function exampleAircraft(): AircraftRecord {
  return {
    id: 'two-seater',
    name: 'Heron two-seater',
    identification: 'X-TWO',
    datumWords: 'face of the propeller flange',
    printed: { mass: 'kg', arm: 'mm', volume: 'L' },
    mac: { leadingEdgeArmM: 1.518, lengthM: 1.24 },
    gear: { kind: 'nose wheel', noseOrTailArmM: 0.69, mainArmM: 1.985 },
    tailEndArmM: 6.28,
    maxMasses: { rampKg: null, takeOffKg: 600, landingKg: 570, zeroFuelKg: null },
    leftRightMostKg: null,
    oil: { massKg: 2.7, armM: 0.6 },
    stations: [
      station('left-seat', 'Left seat', 'seat', 1.965, 110),
      station('right-seat', 'Right seat', 'seat', 1.965, 110),
      station('baggage', 'Baggage', 'baggage', 2.56, 20),
    ],
    groups: [
      {
        id: 'cabin',
        name: 'Both seats',
        stationIds: ['left-seat', 'right-seat'],
        emptyPartKg: 0,
        mostKg: 200,
      },
    ],
    tanks: [
      {
        id: 'front',
        name: 'Front tank',
        side: 'centre',
        capacityL: 50,
        unusableL: 1.5,
        arm: { kind: 'fixed', armM: 1.46 },
        fuelKind: 'unleaded 95',
        densityKgPerL: 0.72,
        source: manual,
      },
      {
        id: 'rear',
        name: 'Rear tank',
        side: 'centre',
        capacityL: 45,
        unusableL: 1,
        arm: {
          kind: 'armTable',
          counts: 'total',
          knots: [
            { volumeL: 0, armM: 2.25 },
            { volumeL: 45, armM: 2.27 },
          ],
        },
        fuelKind: 'unleaded 95',
        densityKgPerL: 0.72,
        source: { from: 'manual', comparedOn: null },
      },
    ],
    envelopes: [
      {
        id: 'take-off',
        name: 'Take-off',
        category: '',
        phase: 'flight',
        across: 'arm',
        vertices: [
          { across: 1.766, massKg: 390 },
          { across: 1.766, massKg: 480 },
          { across: 1.802, massKg: 600 },
          { across: 1.89, massKg: 600 },
          { across: 1.89, massKg: 390 },
        ],
        source: manual,
      },
    ],
    performance: {
      bestGlideMs: 28,
      bestGlideRatio: 9,
      fuelFlowLPerH: 18,
      taxiFuelL: 1.5,
      legalReserveMin: 30,
      ownReserveMin: 15,
    },
    limitsSource: manual,
    performanceSource: manual,
  };

  function station(
    id: string,
    name: string,
    kind: 'seat' | 'baggage',
    armM: number,
    mostKg: number,
  ): AircraftRecord['stations'][number] {
    return { id, name, kind, arm: { kind: 'fixed', armM }, leastKg: null, mostKg, source: manual };
  }
}

export function examplePerson(id: string, name: string, massKg: number): PersonRecord {
  return {
    id,
    name,
    kind: 'person',
    massKg,
    known: 'weighed',
    knownOn: '2026-10-03',
    sdKg: 0.6,
    biasKg: 0,
    note: '',
  };
}

/** Mara and a bag, full tanks, the front tank first. Needs the example aeroplane and the person 'mara'. */
export function exampleLoading(): LoadingRecord {
  return {
    id: 'two-friends',
    aircraftId: 'two-seater',
    name: 'Two friends',
    category: '',
    items: [
      { id: 'item-1', stationId: 'left-seat', seatArmM: null, personId: 'mara', typed: null },
      {
        id: 'item-2',
        stationId: 'baggage',
        seatArmM: null,
        personId: null,
        typed: { name: 'Bag', massKg: 15, known: 'weighed', sdKg: 0.3, biasKg: 0 },
      },
    ],
    fuel: [
      { tankId: 'front', lowL: 47, bestL: 48, highL: 48.5 },
      { tankId: 'rear', lowL: 33.5, bestL: 34.3, highL: 35 },
    ],
    burn: { kind: 'sequence', tankIds: ['front', 'rear'], everyMin: null, returnLine: null },
    flight: { taxiL: 1.5, climbL: 0, climbMin: 0, cruiseLPerH: 18, landingAfterS: 11_400, reserveMin: 45 },
  };
}
