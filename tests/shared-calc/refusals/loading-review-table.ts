import { armLimitsAt } from '../../../shared-calc/loading/envelope.ts';
import {
  beginTable,
  doubtOf,
  rowOf,
  seatedRow,
  termsOf,
} from '../../../shared-calc/loading/review-table/begin-table.ts';
import { cellLoading, isSameLoading } from '../../../shared-calc/loading/review-table/cell-loading.ts';
import { columnFuel } from '../../../shared-calc/loading/review-table/column-fuel.ts';
import type { RoomRefusals } from './table.ts';

export const refusals: RoomRefusals = {
  functions: [],
  takeNoNumber: [
    [armLimitsAt, 'any mass has limits: above and below a checked envelope those at its ends'],
    [columnFuel, 'what does not fit is an answer; ranges of a column are those of its record'],
    [cellLoading, 'takes fuel that fits'],
    [isSameLoading, 'compares'],
    [beginTable, 'takes records'],
    [termsOf, 'takes a record'],
    [doubtOf, 'takes a record'],
    [rowOf, 'takes a record'],
    [seatedRow, 'takes records'],
  ],
};
