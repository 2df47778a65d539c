import { bandCurve, bandOfReading, bandOnMark } from '../../../shared-calc/fuel/fit/band.ts';
import { adviseTest } from '../../../shared-calc/fuel/fit/advise-test.ts';
import { bandedCurveOf } from '../../../shared-calc/fuel/fit/banded-curve.ts';
import {
  areAlike,
  calibrate,
  containerIdsOf,
  fillDataOf,
  usualStartSdL,
} from '../../../shared-calc/fuel/fit/calibrate.ts';
import { fitRows, type FillData } from '../../../shared-calc/fuel/fit/fill-data.ts';
import { fitGauge } from '../../../shared-calc/fuel/fit/gauge-fit.ts';
import { logNormalTail } from '../../../shared-calc/fuel/fit/log-normal-tail.ts';
import { defaultCentre, straightState } from '../../../shared-calc/fuel/fit/newton.ts';
import { nextPourAdvice } from '../../../shared-calc/fuel/fit/next-pour.ts';
import { meanOfModesL, modesToFollow, quickCurve } from '../../../shared-calc/fuel/fit/quick-curve.ts';
import { refitMany, weightedModes } from '../../../shared-calc/fuel/fit/refits.ts';
import {
  addGradient,
  fillGradientGrid,
  fillGrid,
  volumeOnGridL,
} from '../../../shared-calc/fuel/fit/slope-curve.ts';
import { refitsToKeep } from '../../../shared-calc/fuel/fit/refits-to-keep.ts';
import { smoothnessShares } from '../../../shared-calc/fuel/fit/smoothness-shares.ts';
import { seededNormals } from '../../../shared-calc/numeric/seeded-normals.ts';
import { exampleFillTest } from '../../main/example-fill-test.ts';
import { byPosition, type RangeRow, type RoomRefusals } from './table.ts';

/** Six pours of 5 L into 40 L, read to the nearest eighth. */
function test({
  capacityL = 40,
  resolutionRatio = 0.125,
  stickingSdRatio = 0.005,
  lagRatio = 0.004,
  lagSdRatio = 0.003,
  scaleSdRatio = 0.01,
  pourSdRatio = 0.01,
  startUsableL = 0,
  startSdL = 0.3,
  volumeL = 5,
  container = 0,
  positionRatio = 0.125,
}: Partial<Record<string, number>> = {}): FillData {
  return {
    capacityL,
    gauge: { resolutionRatio, stickingSdRatio, lagRatio, lagSdRatio },
    containers: [{ scaleSdRatio, pourSdRatio }],
    runs: [
      {
        direction: 'filling',
        startUsableL,
        startSdL,
        rows: [1, 2, 3, 4, 5, 6].map((pour) => ({
          volumeL: pour === 1 ? volumeL : 5,
          container: pour === 1 ? container : 0,
          reading: { at: 'scale', positionRatio: pour === 1 ? positionRatio : pour / 8 },
          setAside: false,
        })),
      },
    ],
  };
}

const dataRanges: [name: string, field: string, min: number, max: number][] = [
  ['capacityL', 'capacityL', 1, 1000],
  ['resolutionRatio', 'gauge.resolutionRatio', 0.001, 0.5],
  ['stickingSdRatio', 'gauge.stickingSdRatio', 0.0005, 0.1],
  ['lagRatio', 'gauge.lagRatio', 0, 0.1],
  ['lagSdRatio', 'gauge.lagSdRatio', 0, 0.1],
  ['scaleSdRatio', 'containers[0].scaleSdRatio', 0, 0.2],
  ['pourSdRatio', 'containers[0].pourSdRatio', 0, 0.2],
  ['startUsableL', 'runs[0].startUsableL', -100, 40],
  ['startSdL', 'runs[0].startSdL', 0, 40],
  ['volumeL', 'runs[0].rows[0].volumeL', 0, 1000],
  ['container', 'runs[0].rows[0].container', 0, 0],
  ['positionRatio', 'runs[0].rows[0].positionRatio', 0, 1],
];

const ranges: RangeRow[] = dataRanges.map(([name, field, min, max]) => ({
  field,
  min,
  max,
  call: (value) => fitRows(test({ [name]: value })),
}));

const exampleTank = { capacityL: 45, unusableL: 1 };
const pouring = (volumeL: number) => {
  const poured = exampleFillTest();
  const pour = poured.runs[0]?.pours[1];
  if (pour !== undefined) pour.volumeL = volumeL;
  return [poured];
};
const measuredBy = (scaleSdRatio: number) => {
  const poured = exampleFillTest();
  for (const run of poured.runs) run.containerId = 'can';
  const container = {
    id: 'can',
    name: 'Can',
    nominalL: 5,
    how: 'marked',
    scaleSdRatio,
    pourSdL: 0.05,
    weighed: null,
  } as const;
  return [[poured], [container]] as const;
};

const fit = fitGauge(test(), 20);
if (!fit.enough) throw new Error('six different readings are enough');
const first = fit.rows.firstPosition;
const last = fit.rows.lastPosition;
const slack = 1e-9;
const can = { index: 0, scaleSdRatio: 0.01, pourSdRatio: 0.01, startSdL: 0.3, pourL: 5 };
const canRange = (name: keyof typeof can, min: number, max: number): RangeRow => ({
  field: `container.${name}`,
  min,
  max,
  call: (value) => nextPourAdvice(fit, [0.5], { ...can, [name]: value }),
});

export const refusals: RoomRefusals = {
  functions: [
    { of: fitRows, ranges },
    {
      of: fitGauge,
      ranges: [{ field: 'refitCount', min: 20, max: 10_000, call: (v) => fitGauge(test(), v) }],
    },
    {
      of: bandOnMark,
      ranges: [
        { field: 'positionRatio', min: first - slack, max: last + slack, call: (v) => bandOnMark(fit, v) },
      ],
    },
    {
      of: bandOfReading,
      ranges: [
        { field: 'positionRatio', min: first - slack, max: last + slack, call: (v) => bandOfReading(fit, v) },
      ],
    },
    { of: bandCurve, ranges: [{ field: 'count', min: 2, max: 2000, call: (v) => bandCurve(fit, v) }] },
    {
      of: nextPourAdvice,
      ranges: [
        { field: 'marks', min: first - slack, max: last + slack, call: (v) => nextPourAdvice(fit, [v], can) },
        canRange('scaleSdRatio', 0, 0.2),
        canRange('pourSdRatio', 0, 0.2),
        canRange('startSdL', 0, 100),
        canRange('pourL', 0.1, 200),
      ],
    },
    {
      of: fillDataOf,
      ranges: [
        {
          field: 'runs[0].rows[1].volumeL',
          min: 0,
          max: 1000,
          call: (v) => fillDataOf(pouring(v), [], exampleTank),
        },
      ],
    },
    {
      of: calibrate,
      ranges: [
        {
          field: 'containers[0].scaleSdRatio',
          min: 0,
          max: 0.2,
          call: (v) => calibrate(...measuredBy(v), exampleTank),
        },
      ],
    },
    byPosition(seededNormals, [{ field: 'seed', min: 0, max: 2 ** 32 - 1, good: 1 }]),
    { of: logNormalTail, ranges: [{ field: 'z', min: -1e150, max: 1e150, call: (v) => logNormalTail(v) }] },
  ],
  takeNoNumber: [
    [areAlike, 'compares records'],
    [containerIdsOf, 'lists what records name'],
    [refitsToKeep, 'takes a fit that fitGauge has made'],
    [smoothnessShares, 'takes data that fitRows refuses'],
    [usualStartSdL, 'an addition; fillDataOf refuses the start'],
    [bandedCurveOf, 'takes a fit that fitGauge has made'],
    [adviseTest, 'takes a fit that fitGauge has made; nextPourAdvice refuses the container'],
    [defaultCentre, 'takes the capacity that fitRows has let through'],
    [straightState, 'takes rows that fitRows has made'],
    [weightedModes, 'takes rows that fitRows has made'],
    [quickCurve, 'takes rows that fitRows has made'],
    [meanOfModesL, 'takes modes that weightedModes has made'],
    [modesToFollow, 'takes modes that weightedModes has made'],
    [refitMany, 'takes modes that weightedModes has made'],
    [fillGrid, 'inner loop: fills arrays that the fit has made'],
    [fillGradientGrid, 'inner loop: fills arrays that the fit has made'],
    [addGradient, 'inner loop: positions that fitRows keeps within 0 to 1'],
    [volumeOnGridL, 'inner loop: positions that fitRows keeps within 0 to 1'],
  ],
};
