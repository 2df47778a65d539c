import { enduranceOf } from '../../../shared-calc/performance/endurance.ts';
import type { EnduranceQuestion } from '../../../shared-calc/performance/endurance.ts';
import type { RangeRow, RoomRefusals } from './table.ts';

const GOOD: EnduranceQuestion = {
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
  call: (value) => enduranceOf({ ...GOOD, [field]: value }),
});

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
  ],
  takeNoNumber: [],
};
