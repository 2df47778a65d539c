import { calibrateStick } from '../../../shared-calc/fuel/dipstick/calibrate-stick.ts';
import { stickDataOf, stickReading } from '../../../shared-calc/fuel/dipstick/stick-data.ts';
import { stickMarks } from '../../../shared-calc/fuel/dipstick/stick-marks.ts';
import { compareTwoMeans } from '../../../shared-calc/fuel/dipstick/two-means.ts';
import type { BandedCurve } from '../../../shared-calc/fuel/gauge-curve.ts';
import { twoMeansAnswer } from '../../../shared-calc/wording/dipstick.ts';
import { exampleFillTest } from '../../main/example-fill-test.ts';
import type { RoomRefusals } from './table.ts';

const tank = { capacityL: 45, unusableL: 1 };
const stick = { id: 'stick', tankId: 'rear', kind: 'dipstick', lengthMm: 100, readToMm: 5 } as const;
const read = (changed: object) => stickDataOf([exampleFillTest()], [], tank, { ...stick, ...changed });
const curve: BandedCurve = {
  method: 'logSlopeRefits',
  knots: [
    { positionRatio: 0.1, lowL: 2, bestL: 3, highL: 4, readLowL: 1.5, readHighL: 4.5 },
    { positionRatio: 0.9, lowL: 42, bestL: 43, highL: 44, readLowL: 41.5, readHighL: 44.5 },
  ],
  resolutionRatio: 0.05,
  usableCapacityL: 45,
  readingCount: 8,
  asideCount: 0,
  fewRows: false,
};
const kept = { positionsRatio: [0.1, 0.9], volumesL: [[1, 40]], containerErrors: {} };
const by = (positionRatio: number) => ({ refits: kept, positionRatio, resolutionRatio: 0.125 });
const slack = 1e-9;

export const refusals: RoomRefusals = {
  functions: [
    {
      of: stickReading,
      ranges: [
        { field: 'stickMm', min: 0, max: 2000, call: (v) => stickReading(v, { lowMm: 10, highMm: 90 }) },
      ],
    },
    {
      of: stickDataOf,
      ranges: [
        { field: 'lengthMm', min: 20, max: 2000, call: (lengthMm) => read({ lengthMm }) },
        { field: 'readToMm', min: 1, max: 50, call: (readToMm) => read({ readToMm }) },
      ],
      refused: [
        {
          when: 'a stick read to most of its length',
          call: () => read({ lengthMm: 20, readToMm: 15 }),
          sentence: /half/,
        },
      ],
    },
    {
      of: calibrateStick,
      ranges: [
        {
          field: 'lengthMm',
          min: 20,
          max: 2000,
          call: (lengthMm) => calibrateStick([exampleFillTest()], [], tank, { ...stick, lengthMm }),
        },
      ],
    },
    {
      of: stickMarks,
      ranges: [
        {
          field: 'highMm',
          min: 11,
          max: 2050,
          call: (v) => stickMarks(curve, { lowMm: 10, highMm: v }, 5),
        },
        { field: 'stepL', min: 0.1, max: 100, call: (v) => stickMarks(curve, { lowMm: 0, highMm: 100 }, v) },
      ],
    },
    {
      of: compareTwoMeans,
      ranges: [
        {
          field: 'positionRatio',
          min: 0.1 - slack,
          max: 0.9 + slack,
          call: (v) => compareTwoMeans(by(v), by(0.5)),
        },
      ],
      refused: [
        {
          when: 'curves of different number',
          call: () => compareTwoMeans(by(0.5), { ...by(0.5), refits: { ...kept, volumesL: [] } }),
          sentence: /length is 0/,
        },
      ],
    },
  ],
  takeNoNumber: [[twoMeansAnswer, 'takes checked results']],
};
