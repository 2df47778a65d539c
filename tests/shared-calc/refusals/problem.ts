import { requireRange } from '../../../shared-calc/problem.ts';
import type { RoomRefusals } from './table.ts';

export const refusals: RoomRefusals = {
  functions: [
    {
      of: requireRange,
      ranges: [
        {
          field: 'massKg',
          min: 0,
          max: 600,
          call: (value) => {
            requireRange('massKg', value, 0, 600, 'kg');
          },
        },
        {
          field: 'massKg',
          min: 0,
          max: Infinity,
          call: (value) => {
            requireRange('massKg', value, 0, Infinity, 'kg');
          },
        },
      ],
    },
  ],
  takeNoNumber: [],
};
