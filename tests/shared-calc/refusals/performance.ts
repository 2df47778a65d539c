import { climbAngleRad, climbGradientRatio } from '../../../shared-calc/performance/climb.ts';
import {
  magneticDirection,
  magneticFromTrue,
  trueDirection,
  trueFromMagnetic,
} from '../../../shared-calc/performance/direction.ts';
import { enduranceOf } from '../../../shared-calc/performance/endurance.ts';
import type { EnduranceQuestion } from '../../../shared-calc/performance/endurance.ts';
import { humidityStep } from '../../../shared-calc/performance/humidity-step.ts';
import {
  isSamePlace,
  performanceTable,
  readTable,
  tableOddities,
} from '../../../shared-calc/performance/performance-table.ts';
import type { TableAxis } from '../../../shared-calc/performance/performance-table.ts';
import { gaggFerrarPowerRatio, speedRatioForMass } from '../../../shared-calc/performance/power.ts';
import { factorChange } from '../../../shared-calc/performance/published-factors.ts';
import {
  aboveStandardC,
  distanceSteps,
  noteChange,
} from '../../../shared-calc/performance/runway-distances.ts';
import type { DistanceChange, ManualNote } from '../../../shared-calc/performance/runway-distances.ts';
import { estimateTakeOff } from '../../../shared-calc/performance/sea-level-estimate.ts';
import { readTableInto } from '../../../shared-calc/performance/table-column.ts';
import {
  creditedHeadwindMs,
  groundRollWindRatio,
  widestAngleForCrosswindDeg,
  windComponents,
  windForCrosswindMs,
  windForHeadwindMs,
} from '../../../shared-calc/performance/wind.ts';
import { byPosition } from './table.ts';
import type { RangeRow, RoomRefusals } from './table.ts';

const ENDURANCE: EnduranceQuestion = {
  usableL: 40,
  fuelFlowLPerH: 18,
  taxiL: 1,
  climbL: 3,
  legalReserveS: 1800,
  ownReserveS: 900,
};
const endurance = (field: keyof EnduranceQuestion, min: number, max: number): RangeRow => ({
  field,
  min,
  max,
  call: (value) => enduranceOf({ ...ENDURANCE, [field]: value }),
});

const cell = (axis: TableAxis, place: number) => ({ at: { [axis]: place }, value: 200 });
const tableOf = (axis: TableAxis, place: number) => performanceTable([axis], [cell(axis, place)]);
const AXIS_ROWS: [TableAxis, number, number, number][] = [
  ['massKg', 50, 5000, 5000],
  ['pressureAltitudeM', -1500, 7000, 7000],
  ['temperatureC', -60, 65, 65],
  ['headwindMs', -60, 60, -60],
];

const START = { groundRollM: 200, overObstacleM: 400 };
const change = (parts: Partial<DistanceChange>): DistanceChange => ({
  kind: 'manualNote',
  name: 'wind',
  source: 'note 1',
  factorRatio: 1,
  addM: 0,
  ...parts,
});
const note = (parts: Partial<ManualNote>): ManualNote => ({
  name: 'heat',
  per: { of: 'aboveStandardC', amount: 10 },
  changeRatio: 0.1,
  shareOf: 'each',
  ...parts,
});
const FIGURE = { distances: { groundRollM: 160, overObstacleM: 330 }, massKg: 600, liftToDragRatio: 8 };

export const refusals: RoomRefusals = {
  functions: [
    {
      of: enduranceOf,
      ranges: [
        endurance('usableL', 0, 1000),
        endurance('fuelFlowLPerH', 1, 500),
        endurance('taxiL', 0, 100),
        endurance('climbL', 0, 100),
        endurance('legalReserveS', 0, 14400),
        endurance('ownReserveS', 0, 14400),
      ],
    },
    byPosition(trueDirection, [{ field: 'directionDeg', min: 0, max: 360, good: 90 }]),
    byPosition(magneticDirection, [{ field: 'directionDeg', min: 0, max: 360, good: 90 }]),
    {
      of: magneticFromTrue,
      ranges: [
        { field: 'variationEastDeg', min: -60, max: 60, call: (v) => magneticFromTrue(trueDirection(90), v) },
      ],
    },
    {
      of: trueFromMagnetic,
      ranges: [
        {
          field: 'variationEastDeg',
          min: -60,
          max: 60,
          call: (v) => trueFromMagnetic(magneticDirection(90), v),
        },
      ],
    },
    {
      of: windComponents,
      ranges: [
        {
          field: 'speedMs',
          min: 0,
          max: 60,
          call: (v) => windComponents(trueDirection(0), trueDirection(40), v),
        },
      ],
    },
    byPosition(widestAngleForCrosswindDeg, [
      { field: 'speedMs', min: 0, max: 60, good: 15 },
      { field: 'limitMs', min: 0, max: 60, good: 8 },
    ]),
    byPosition(windForHeadwindMs, [
      { field: 'componentMs', min: 0, max: 60, good: 5 },
      { field: 'angleDeg', min: 0, max: 89, good: 30 },
    ]),
    byPosition(windForCrosswindMs, [
      { field: 'componentMs', min: 0, max: 60, good: 5 },
      { field: 'angleDeg', min: 1, max: 90, good: 30 },
    ]),
    {
      of: creditedHeadwindMs,
      ranges: [
        { field: 'headwindMs', min: -60, max: 60, call: (v) => creditedHeadwindMs(v) },
        {
          field: 'headwindRatio',
          min: 0,
          max: 1,
          call: (v) => creditedHeadwindMs(5, { headwindRatio: v, tailwindRatio: 1 }),
        },
        {
          field: 'tailwindRatio',
          min: 1,
          max: 3,
          call: (v) => creditedHeadwindMs(5, { headwindRatio: 1, tailwindRatio: v }),
        },
      ],
    },
    byPosition(groundRollWindRatio, [{ field: 'headwindRatio', min: -0.5, max: 0.5, good: 0.1 }]),
    byPosition(gaggFerrarPowerRatio, [{ field: 'densityRatio', min: 0.3, max: 1.4, good: 0.9 }]),
    byPosition(speedRatioForMass, [{ field: 'massRatio', min: 0.3, max: 3, good: 1.1 }]),
    {
      ...byPosition(climbAngleRad, [
        { field: 'climbRateMs', min: -30, max: 30, good: 3 },
        { field: 'trueAirspeedMs', min: 10, max: 100, good: 40 },
      ]),
      refused: [
        {
          when: 'a climb faster than the flight',
          call: () => climbAngleRad(12, 10),
          sentence: /faster than the aeroplane flies/,
        },
      ],
    },
    {
      ...byPosition(climbGradientRatio, [
        { field: 'climbRateMs', min: -30, max: 30, good: 3 },
        { field: 'trueAirspeedMs', min: 10, max: 100, good: 60 },
        { field: 'headwindMs', min: -40, max: 40, good: 5 },
      ]),
      refused: [
        {
          when: 'a wind as fast as the flight',
          call: () => climbGradientRatio(2, 20, 20),
          sentence: /no speed over the ground/,
        },
      ],
    },
    {
      of: performanceTable,
      ranges: [
        ...AXIS_ROWS.map(([axis, min, max]) => ({
          field: `cells[0].${axis}`,
          min,
          max,
          call: (v: number) => tableOf(axis, v),
        })),
        {
          field: 'cells[0].value',
          min: -1e6,
          max: 1e6,
          call: (v: number) => performanceTable(['massKg'], [{ at: { massKg: 500 }, value: v }]),
        },
      ],
      refused: [
        {
          when: 'no axis',
          call: () => performanceTable([], [cell('massKg', 500)]),
          sentence: /at least one axis/,
        },
        { when: 'no cell', call: () => performanceTable(['massKg'], []), sentence: /at least one cell/ },
        {
          when: 'an axis twice',
          call: () => performanceTable(['massKg', 'massKg'], [cell('massKg', 500)]),
          sentence: /named twice/,
        },
        {
          when: 'a place missing',
          call: () => performanceTable(['massKg'], [cell('temperatureC', 5)]),
          sentence: /massKg: is missing/,
        },
        {
          when: 'a place too many',
          call: () => performanceTable(['massKg'], [{ at: { massKg: 500, temperatureC: 5 }, value: 1 }]),
          sentence: /an axis that the table does not have/,
        },
        {
          when: 'a cell typed twice',
          call: () => performanceTable(['massKg'], [cell('massKg', 500), cell('massKg', 500)]),
          sentence: /the cell at massKg 500 is typed twice/,
        },
      ],
    },
    {
      of: readTable,
      ranges: AXIS_ROWS.map(([axis, min, max, edge]) => ({
        field: axis,
        min,
        max,
        call: (v) => readTable(tableOf(axis, edge), { [axis]: v }),
      })),
      refused: [
        {
          when: 'a place missing',
          call: () => readTable(tableOf('massKg', 500), {}),
          sentence: /massKg: is missing/,
        },
      ],
    },
    {
      of: readTableInto,
      refused: [
        {
          when: 'a column missing',
          call: () => {
            readTableInto(new Float64Array(1), tableOf('massKg', 500), {}, Infinity);
          },
          sentence: /massKg: is missing/,
        },
        {
          when: 'a column of another length',
          call: () => {
            readTableInto(
              new Float64Array(1),
              tableOf('massKg', 500),
              { massKg: new Float64Array(2) },
              Infinity,
            );
          },
          sentence: /massKg: has 2 rows; 1 were expected/,
        },
      ],
    },
    {
      of: distanceSteps,
      ranges: [
        {
          field: 'changes[0].factorRatio',
          min: 0.5,
          max: 10,
          call: (v) => distanceSteps(START, [change({ factorRatio: v })]),
        },
        {
          field: 'changes[0].addM',
          min: 0,
          max: 10000,
          call: (v) => distanceSteps(START, [change({ addM: v })]),
        },
        {
          field: 'groundRollM',
          min: 1,
          max: 10000,
          call: (v) => distanceSteps({ groundRollM: v, overObstacleM: 10000 }, []),
        },
        {
          field: 'overObstacleM',
          min: 1,
          max: 10000,
          call: (v) => distanceSteps({ groundRollM: 1, overObstacleM: v }, []),
        },
      ],
      refused: [
        {
          when: 'an estimate that shortens',
          call: () => distanceSteps(START, [change({ kind: 'estimate', factorRatio: 0.9 })]),
          sentence: /an estimate never shortens/,
        },
        {
          when: 'a roll longer than the whole',
          call: () => distanceSteps({ groundRollM: 500, overObstacleM: 400 }, []),
          sentence: /longer than the 400 m/,
        },
      ],
    },
    {
      of: noteChange,
      ranges: [
        { field: 'amount', min: 0, max: 100, call: (v) => noteChange(note({}), v, START, 'note') },
        {
          field: 'changeRatio',
          min: -0.5,
          max: 2,
          call: (v) => noteChange(note({ changeRatio: v }), 1, START, 'note'),
        },
        {
          field: 'per.amount',
          min: 1e-4,
          max: 100,
          call: (v) => noteChange(note({ per: { of: 'slopeRatio', amount: v } }), 0, START, 'note'),
        },
      ],
      refused: [
        {
          when: 'shortening by more than half',
          call: () => noteChange(note({ changeRatio: -0.1 }), 60, START, 'note'),
          sentence: /would shorten by more than half/,
        },
        {
          when: 'shortening by a share of one distance',
          call: () => noteChange(note({ changeRatio: -0.1, shareOf: 'groundRoll' }), 1, START, 'note'),
          sentence: /a share added to both cannot/,
        },
      ],
    },
    byPosition(aboveStandardC, [
      { field: 'temperatureC', min: -60, max: 65, good: 20 },
      { field: 'pressureAltitudeM', min: -1500, max: 7000, good: 500 },
    ]),
    {
      of: factorChange,
      ranges: [
        { field: 'amount', min: 0, max: 0.5, call: (v) => factorChange('weight', 'takeOff', v, []) },
        { field: 'amount', min: 0, max: 3048, call: (v) => factorChange('elevation', 'takeOff', v, []) },
        { field: 'amount', min: 0, max: 50, call: (v) => factorChange('temperature', 'takeOff', v, []) },
        { field: 'amount', min: 0, max: 0.1, call: (v) => factorChange('slope', 'takeOff', v, []) },
        { field: 'amount', min: 0, max: 0.3, call: (v) => factorChange('tailwind', 'takeOff', v, []) },
        { field: 'amount', min: 1, max: 1, call: (v) => factorChange('wetGrass', 'landing', v, []) },
      ],
      refused: [
        {
          when: 'weight where the table has mass',
          call: () => factorChange('weight', 'takeOff', 0.1, ['massKg']),
          sentence: /the table has this axis already/,
        },
      ],
    },
    byPosition(humidityStep, [
      { field: 'pressureHpa', min: 400, max: 1100, good: 1000 },
      { field: 'temperatureC', min: -45, max: 60, good: 60 },
      { field: 'dewPointC', min: -45, max: 60, good: -45 },
    ]),
    {
      of: estimateTakeOff,
      ranges: [
        { field: 'massKg', min: 50, max: 5000, call: (v) => estimateTakeOff(FIGURE, v, 1) },
        { field: 'densityRatio', min: 0.5, max: 1.4, call: (v) => estimateTakeOff(FIGURE, 600, v) },
        {
          field: 'figure.massKg',
          min: 50,
          max: 5000,
          call: (v) => estimateTakeOff({ ...FIGURE, massKg: v }, 600, 1),
        },
        {
          field: 'liftToDragRatio',
          min: 3,
          max: 30,
          call: (v) => estimateTakeOff({ ...FIGURE, liftToDragRatio: v }, 600, 1),
        },
        {
          field: 'groundRollM',
          min: 1,
          max: 9999,
          call: (v) =>
            estimateTakeOff({ ...FIGURE, distances: { groundRollM: v, overObstacleM: 10000 } }, 600, 1),
        },
        {
          field: 'overObstacleM',
          min: 2,
          max: 10000,
          call: (v) =>
            estimateTakeOff({ ...FIGURE, distances: { groundRollM: 1, overObstacleM: v } }, 600, 1),
        },
      ],
      refused: [
        {
          when: 'a roll as long as the whole',
          call: () =>
            estimateTakeOff({ ...FIGURE, distances: { groundRollM: 330, overObstacleM: 330 } }, 600, 1),
          sentence: /leaves nothing for the climb/,
        },
      ],
    },
  ],
  takeNoNumber: [
    [isSamePlace, 'compares two places that performanceTable and readTable have let through'],
    [tableOddities, 'looks over cells that performanceTable has let through'],
  ],
};
