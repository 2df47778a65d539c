import {
  emptyDistanceTable,
  emptyPerformance,
  type ClimbRow,
  type DistanceRow,
  type PerformanceRecord,
} from '../../shared-calc/performance/records.ts';

/** Small invented tables as a person would have typed them: take-off ragged and with a blank, landing without a temperature. */
export function examplePerformance(aircraftId: string): PerformanceRecord {
  return {
    ...emptyPerformance(aircraftId),
    takeOff: {
      ...emptyDistanceTable('takeOff'),
      words: 'figure 5-3',
      rows: [
        takeOff(500, 0, 0, 120, 250),
        takeOff(500, 0, 30, 140, 290),
        takeOff(600, 0, 0, 170, 350),
        takeOff(600, 0, 30, 200, 410),
        takeOff(600, 1219.2, 0, 230, 480),
        takeOff(600, 1219.2, 25, 275, 570),
        takeOff(600, 2438.4, 20, null, null),
      ],
      notes: [
        { counts: 'headwind', amount: 2.05, mostAmount: 6, changeRatio: -0.1, shareOf: 'each' },
        {
          counts: 'tailwind',
          amount: 1.025,
          mostAmount: null,
          changeRatio: 0.1,
          shareOf: 'each',
        },
        { counts: 'dryGrass', amount: null, mostAmount: null, changeRatio: 0.15, shareOf: 'groundRoll' },
      ],
      speedMs: 21,
      source: { from: 'manual', comparedOn: '2026-04-02' },
    },
    landing: {
      ...emptyDistanceTable('landing'),
      rows: [{ ...takeOff(600, 0, null, 160, 400) }, { ...takeOff(600, 1219.2, null, 180, 440) }],
      notes: [{ counts: 'aboveStandard', amount: 20, mostAmount: null, changeRatio: 0.05, shareOf: 'each' }],
    },
    climb: {
      words: 'figure 5-4',
      rows: [
        climb(600, 0, 0, 4.2),
        climb(600, 0, 30, 3.6),
        climb(600, 2438.4, 0, 2.6),
        climb(600, 2438.4, 30, 2),
      ],
      readingSdRatio: 0.05,
      source: { from: 'manual', comparedOn: null },
      enteredOn: null,
    },
    wind: {
      demonstratedCrosswindMs: 7,
      ownCrosswindMs: 5,
      ownTailwindMs: 2,
      source: { from: 'manual', comparedOn: '2026-04-02' },
    },
  };
}

function takeOff(
  massKg: number,
  pressureAltitudeM: number,
  temperatureC: number | null,
  groundRollM: number | null,
  overObstacleM: number | null,
): DistanceRow {
  return {
    massKg,
    pressureAltitudeM,
    temperatureC,
    headwindMs: null,
    groundRollM,
    overObstacleM,
    asPrinted: false,
  };
}

function climb(
  massKg: number,
  pressureAltitudeM: number,
  temperatureC: number,
  climbRateMs: number,
): ClimbRow {
  return {
    massKg,
    pressureAltitudeM,
    temperatureC,
    headwindMs: null,
    climbRateMs,
    speedMs: 31,
    asPrinted: false,
  };
}
