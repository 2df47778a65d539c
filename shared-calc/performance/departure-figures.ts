import { requireRange } from '../problem.ts';
import { AIR_TEMPERATURE, airReader } from './air-reader.ts';
import { climbNumbers, climbReader, type ClimbNumbers } from './climb-reader.ts';
import type { PerformanceBook } from './departure-book.ts';
import { distanceNumbers, distanceReader, type DistanceNumbers, type RunwayCase } from './distance-reader.ts';
import type { DistanceRule } from './distance-rules.ts';
import { AXIS_RANGES, readTable } from './performance-table.ts';
import type { TableAnswer } from './performance-table.ts';
import type { RunwayPhase } from './published-factors.ts';
import type { DistanceStep } from './runway-distances.ts';
import { creditedHeadwindMs, DEFAULT_WIND_CREDIT, FULL_WIND_CREDIT } from './wind.ts';

/** One take-off or landing in one state of the air. */
export interface DepartureQuestion {
  /** 50 to 5000 kg. */
  readonly massKg: number;
  /** −1500 to 7000 m. */
  readonly pressureAltitudeM: number;
  /** −60 to 60 degC. */
  readonly temperatureC: number;
  /** At most the temperature; null where not known: the air counts as dry. */
  readonly dewPointC: number | null;
  /** −60 to 60 m/s as it blows, before any credit; negative is a tailwind. */
  readonly headwindMs: number;
  /** Length 0 to 10000 m, slope −0.2 to 0.2. */
  readonly runway: RunwayCase;
}

/** A change of the distances with how much of what it counts. */
export interface CountedStep extends DistanceStep {
  readonly counts: DistanceRule['counts'];
  /** m/s, degree C, metres or a ratio; 1 for a surface. */
  readonly amount: number;
}

/** The numbers of a distance with all that they rest on. */
export interface DistanceFigures extends Readonly<DistanceNumbers> {
  readonly phase: RunwayPhase;
  readonly runway: RunwayCase;
  readonly against: 'overObstacle' | 'groundRoll';
  readonly safety: { readonly factorRatio: number; readonly source: string };
  /** The reading of the column that has to fit: cells, shares and edges; null for an estimate from one figure. */
  readonly reading: TableAnswer | null;
  /** The air's own. */
  readonly temperatureC: number;
  /** What the table was entered at: more where the air's humidity counts. */
  readonly tableTemperatureC: number;
  readonly creditedHeadwindMs: number;
  readonly isHumidityKnown: boolean;
  /** In order; the safety factor is not among them. */
  readonly steps: readonly CountedStep[];
  readonly readingSdRatio: number;
}

export interface DepartureFigures {
  readonly takeOff: DistanceFigures;
  readonly climb: Readonly<ClimbNumbers>;
}

/**
 * Take-off and climb from the manual's figures, with every step.
 * Refusals of the table are answers (`kind`); only a question that cannot be is thrown back.
 * @param book from `performanceBook`
 * @throws RangeProblem naming the part of the question that lies outside its range
 * @source Pilot's Handbook of Aeronautical Knowledge, FAA-H-8083-25C, ch. 11; steps as `distanceReader` orders them
 */
export function departureFigures(book: PerformanceBook, question: DepartureQuestion): DepartureFigures {
  const takeOff = distanceFigures(book, 'takeOff', question);
  const { massKg, pressureAltitudeM, temperatureC, dewPointC, headwindMs } = question;
  const climb = climbReader(book).read(
    climbNumbers(),
    massKg,
    pressureAltitudeM,
    temperatureC,
    dewPointC ?? NaN,
    headwindMs,
  );
  return { takeOff, climb };
}

/** One distance, of a take-off or a landing; throws as `departureFigures`. */
export function distanceFigures(
  book: PerformanceBook,
  phase: RunwayPhase,
  question: DepartureQuestion,
): DistanceFigures {
  const { massKg, pressureAltitudeM, temperatureC, headwindMs, runway } = question;
  requireQuestion(question);
  const dewPointC = question.dewPointC ?? NaN;
  const reader = distanceReader(book, phase, runway);
  const steps: CountedStep[] = [];
  const numbers = reader.read(
    distanceNumbers(),
    massKg,
    pressureAltitudeM,
    temperatureC,
    dewPointC,
    headwindMs,
    ({ kind, name, source, counts }, amount, factorRatio, addM, groundRollM, overObstacleM) => {
      steps.push({
        kind,
        name,
        source,
        counts,
        amount,
        factorRatio,
        addM,
        distances: { groundRollM, overObstacleM },
      });
    },
  );
  const prepared = phase === 'takeOff' ? book.takeOff : book.landing;
  const credit = prepared?.record.windMargin === 'included' ? FULL_WIND_CREDIT : DEFAULT_WIND_CREDIT;
  const air = airReader();
  air.set(massKg, pressureAltitudeM, temperatureC, dewPointC, headwindMs, credit);
  const { temperatureC: tableTemperatureC } = air.conditions;
  const column = reader.against === 'overObstacle' ? prepared?.overObstacle : prepared?.groundRoll;
  const credited = creditedHeadwindMs(headwindMs, credit);
  return {
    ...numbers,
    phase,
    runway,
    against: reader.against,
    safety: reader.safety,
    reading:
      column == null
        ? null
        : readTable(column.table, {
            massKg,
            pressureAltitudeM,
            // Far outside any table, where the virtual temperature passes the range of an axis, it is beyond the table as well.
            temperatureC: Math.min(tableTemperatureC, AXIS_RANGES.temperatureC.max),
            headwindMs: Math.max(credited, AXIS_RANGES.headwindMs.min),
          }),
    temperatureC,
    tableTemperatureC,
    creditedHeadwindMs: credited,
    isHumidityKnown: question.dewPointC !== null,
    steps,
    readingSdRatio: reader.readingSdRatio,
  };
}

/**
 * The part of a runway that counts: all of it for the take-off, for a landing what lies beyond the displaced threshold.
 * @param lengthM 0 to 10000 m
 * @param displacedThresholdM of the end from which it is used, 0 to the length
 * @throws RangeProblem naming either
 * @source Aeronautical Information Manual 2-3-3 h: a displaced threshold's runway is there for take-off, not for landing
 */
export function availableLengthM(phase: RunwayPhase, lengthM: number, displacedThresholdM: number): number {
  requireRange('lengthM', lengthM, 0, LONGEST_M, 'm');
  requireRange('displacedThresholdM', displacedThresholdM, 0, lengthM, 'm');
  return phase === 'takeOff' ? lengthM : lengthM - displacedThresholdM;
}

const LONGEST_M = 10_000;

function requireQuestion(question: DepartureQuestion): void {
  for (const axis of ['massKg', 'pressureAltitudeM', 'headwindMs'] as const) {
    const { min, max, unit } = AXIS_RANGES[axis];
    requireRange(axis, question[axis], min, max, unit);
  }
  const { temperatureC, dewPointC, runway } = question;
  requireRange('temperatureC', temperatureC, AIR_TEMPERATURE.min, AIR_TEMPERATURE.max, 'degC');
  if (dewPointC !== null) requireRange('dewPointC', dewPointC, -100, temperatureC, 'degC');
  requireRange('runway.availableM', runway.availableM, 0, LONGEST_M, 'm');
  requireRange('runway.slopeRatio', runway.slopeRatio, -0.2, 0.2, '');
}
