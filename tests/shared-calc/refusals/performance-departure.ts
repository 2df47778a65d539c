import { airReader } from '../../../shared-calc/performance/air-reader.ts';
import { climbNumbers, climbReader } from '../../../shared-calc/performance/climb-reader.ts';
import { performanceBook } from '../../../shared-calc/performance/departure-book.ts';
import {
  availableLengthM,
  departureFigures,
  distanceFigures,
} from '../../../shared-calc/performance/departure-figures.ts';
import type { DepartureQuestion } from '../../../shared-calc/performance/departure-figures.ts';
import { distanceNumbers, distanceReader } from '../../../shared-calc/performance/distance-reader.ts';
import { distanceRules } from '../../../shared-calc/performance/distance-rules.ts';
import { beyondKind, isAnswered, ruleRefusal } from '../../../shared-calc/performance/figure-kind.ts';
import { flattened, readFlat, tableReading } from '../../../shared-calc/performance/flat-table.ts';
import { humidAir, humidAirInto } from '../../../shared-calc/performance/humidity-step.ts';
import { overObstacle } from '../../../shared-calc/performance/obstacle.ts';
import { performanceFaults } from '../../../shared-calc/performance/performance-faults.ts';
import { publishedFactorRatio } from '../../../shared-calc/performance/published-factors.ts';
import {
  axesOf,
  emptyClimbTable,
  emptyDistanceTable,
  emptyPerformance,
} from '../../../shared-calc/performance/records.ts';
import type { PerformanceRecord } from '../../../shared-calc/performance/records.ts';
import { surfaceFactorRatio, surfaceKindOf } from '../../../shared-calc/performance/surface.ts';
import { climbSuspicions, distanceSuspicions } from '../../../shared-calc/performance/table-suspicions.ts';
import { examplePerformance } from '../../main/example-performance.ts';
import type { Exported, FunctionRefusals, RangeRow, RoomRefusals } from './table.ts';

const GLIDE = { bestGlideMs: 28, bestGlideRatio: 9 };
const record = examplePerformance('two-seater');
const book = performanceBook(record, GLIDE);
const QUESTION: DepartureQuestion = {
  massKg: 600,
  pressureAltitudeM: 600,
  temperatureC: 20,
  dewPointC: null,
  headwindMs: 0,
  runway: { availableM: 1000, surface: 'paved', slopeRatio: 0 },
};

const AHEAD = { fromStartM: 1000, heightM: 20, clearanceM: 10 };

function question(of: Exported, ask: (question: DepartureQuestion) => unknown): FunctionRefusals {
  const row = (
    field: string,
    min: number,
    max: number,
    parts: (v: number) => Partial<DepartureQuestion>,
  ) => ({
    field,
    min,
    max,
    call: (v: number) => ask({ ...QUESTION, ...parts(v) }),
  });
  const rows: RangeRow[] = [
    row('massKg', 50, 5000, (massKg) => ({ massKg })),
    row('pressureAltitudeM', -1500, 7000, (pressureAltitudeM) => ({ pressureAltitudeM })),
    row('temperatureC', -60, 60, (temperatureC) => ({ temperatureC })),
    row('dewPointC', -100, 20, (dewPointC) => ({ dewPointC })),
    row('headwindMs', -60, 60, (headwindMs) => ({ headwindMs })),
    row('runway.availableM', 0, 10000, (v) => ({ runway: { ...QUESTION.runway, availableM: v } })),
    row('runway.slopeRatio', -0.2, 0.2, (v) => ({ runway: { ...QUESTION.runway, slopeRatio: v } })),
  ];
  return { of, ranges: rows };
}

const withRoll = (massKg: number): PerformanceRecord => ({
  ...record,
  takeOff: {
    ...emptyDistanceTable('takeOff'),
    rows: [
      {
        massKg,
        pressureAltitudeM: null,
        temperatureC: null,
        headwindMs: null,
        groundRollM: 1,
        overObstacleM: 2,
        asPrinted: false,
      },
    ],
  },
});

export const refusals: RoomRefusals = {
  functions: [
    question(departureFigures, (asked) => departureFigures(book, asked)),
    question(distanceFigures, (asked) => distanceFigures(book, 'landing', asked)),
    {
      of: availableLengthM,
      ranges: [
        { field: 'lengthM', min: 0, max: 10000, call: (v) => availableLengthM('takeOff', v, 0) },
        {
          field: 'displacedThresholdM',
          min: 0,
          max: 1000,
          call: (v) => availableLengthM('landing', 1000, v),
        },
      ],
    },
    {
      of: performanceBook,
      ranges: [
        { field: 'cells[0].massKg', min: 50, max: 5000, call: (v) => performanceBook(withRoll(v), GLIDE) },
      ],
    },
    {
      of: overObstacle,
      ranges: (
        [
          ['fromStartM', 20_000],
          ['heightM', 1000],
          ['clearanceM', 300],
        ] as const
      ).map(([field, max]) => ({
        field,
        min: 0,
        max,
        call: (v: number) => {
          const { takeOff, climb } = departureFigures(book, QUESTION);
          return overObstacle(takeOff, climb, { ...AHEAD, [field]: v });
        },
      })),
    },
    {
      of: publishedFactorRatio,
      ranges: [
        { field: 'amount', min: 0, max: 0.1, call: (v) => publishedFactorRatio('slope', 'landing', v) },
        { field: 'amount', min: 1, max: 1, call: (v) => publishedFactorRatio('safety', 'takeOff', v) },
      ],
    },
  ],
  takeNoNumber: [
    [airReader, 'says whether an observation is air at all, instead of refusing it'],
    [distanceReader, 'answers missingAir for an observation that is none; checks nothing twice'],
    [climbReader, 'answers missingAir for an observation that is none'],
    [distanceNumbers, 'gives an empty answer'],
    [climbNumbers, 'gives an empty answer'],
    [distanceRules, 'turns a record that performanceFaults passed into rules'],
    [isAnswered, 'takes the name of a kind'],
    [beyondKind, 'takes the name of an axis'],
    [ruleRefusal, 'takes the name of what a rule counts'],
    [flattened, 'takes a table that performanceTable has let through'],
    [tableReading, 'gives an empty reading'],
    [
      readFlat,
      'reads places that its callers have held against the ranges; beyond the table it answers nothing',
    ],
    [humidAir, 'gives empty figures'],
    [humidAirInto, 'checks nothing by promise: humidityStep and airReader have checked'],
    [performanceFaults, 'names what contradicts itself; ranges of single figures are the schema’s'],
    [distanceSuspicions, 'asks about a table that performanceFaults passed'],
    [climbSuspicions, 'asks about a table that performanceFaults passed'],
    [axesOf, 'looks which axes the rows have'],
    [emptyPerformance, 'takes an identifier'],
    [emptyDistanceTable, 'takes the name of a phase'],
    [emptyClimbTable, 'takes nothing'],
    [surfaceKindOf, 'takes words'],
    [surfaceFactorRatio, 'takes names of surfaces'],
  ],
};
