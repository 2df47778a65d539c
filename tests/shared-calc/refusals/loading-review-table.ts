import { changeablePlaces } from '../../../shared-calc/loading/changeable-places.ts';
import { changesToPoint } from '../../../shared-calc/loading/changes-to-point.ts';
import { armLimitsAt } from '../../../shared-calc/loading/envelope.ts';
import {
  beginTable,
  doubtOf,
  rowOf,
  seatedRow,
  termsOf,
} from '../../../shared-calc/loading/review-table/begin-table.ts';
import { cellLoading, isSameLoading } from '../../../shared-calc/loading/review-table/cell-loading.ts';
import { cellMarks } from '../../../shared-calc/loading/review-table/cell-marks.ts';
import { columnFuel } from '../../../shared-calc/loading/review-table/column-fuel.ts';
import { hasMargin } from '../../../shared-calc/loading/limits.ts';
import type { RoomRefusals } from './table.ts';

const at = { massKg: 500, armM: 2 };

export const refusals: RoomRefusals = {
  functions: [
    {
      of: changesToPoint,
      ranges: [
        {
          field: 'from.massKg',
          min: 1,
          max: 50_000,
          call: (v) => changesToPoint({ massKg: v, armM: 2 }, at, [], 3),
        },
        {
          field: 'to.massKg',
          min: 1,
          max: 50_000,
          call: (v) => changesToPoint(at, { massKg: v, armM: 2 }, [], 3),
        },
        {
          field: 'from.armM',
          min: -100,
          max: 100,
          call: (v) => changesToPoint({ massKg: 500, armM: v }, at, [], 3),
        },
        {
          field: 'to.armM',
          min: -100,
          max: 100,
          call: (v) => changesToPoint(at, { massKg: 500, armM: v }, [], 3),
        },
        { field: 'mostCount', min: 1, max: 20, call: (v) => changesToPoint(at, at, [], v) },
        {
          field: 'near.massKg',
          min: 0,
          max: 50_000,
          call: (v) => changesToPoint(at, at, [], 3, { massKg: v, armM: 0 }),
        },
        {
          field: 'near.armM',
          min: 0,
          max: 100,
          call: (v) => changesToPoint(at, at, [], 3, { massKg: 0, armM: v }),
        },
      ],
    },
  ],
  takeNoNumber: [
    [armLimitsAt, 'any mass has limits: above and below a checked envelope those at its ends'],
    [hasMargin, 'takes a limit'],
    [columnFuel, 'what does not fit is an answer; ranges of a column are those of its record'],
    [changeablePlaces, 'takes the result of an assessment'],
    [cellLoading, 'takes fuel that fits'],
    [isSameLoading, 'compares'],
    [cellMarks, 'takes a table as the library keeps it'],
    [beginTable, 'takes records'],
    [termsOf, 'takes a record'],
    [doubtOf, 'takes a record'],
    [rowOf, 'takes a record'],
    [seatedRow, 'takes records'],
  ],
};
